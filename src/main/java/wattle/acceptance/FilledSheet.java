package wattle.acceptance;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.DuplicateHeaderMode;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.SheetBounds;
import wattle.finding.SheetProblem;
import wattle.finding.Source;
import wattle.finding.Span;

/**
 * A test sheet that somebody has filled in, read back. Rows may be in any order and columns may have been added; what
 * counts is the column {@code test}, which names the measurement, and the column {@code reading}. A comma or a semicolon
 * may part the cells, and a figure may have a decimal comma, its unit, and {@code >} before it.
 */
public final class FilledSheet {
  private static final Pattern FIGURE = Pattern.compile("([<>≥≤]?)\\s*([+-]?\\d{1,15}(?:[.,]\\d+)?)\\s*(\\S*)");
  private static final Set<String> YES = Set.of("yes", "y", "ok", "pass", "trips", "trip", "tripped", "x", "✓");
  private static final Set<String> NO = Set.of("no", "n", "fail", "does not trip", "failed");

  private final Source source;
  private final Map<String, Measurement> expected = new LinkedHashMap<>();
  private final KnownNames tests = new KnownNames(expected.keySet());
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, String> readings = new LinkedHashMap<>();

  private FilledSheet(Source source, List<Measurement> measurements) {
    this.source = source;
    measurements.forEach(m -> expected.put(m.key(), m));
  }

  /**
   * Reads a sheet and holds each reading against what was expected.
   *
   * @return the readings by the key of their measurement, and what deviates, cannot be read or was not measured
   */
  public static Checked<Map<String, String>> read(Source csv, List<Measurement> measurements) {
    FilledSheet sheet = new FilledSheet(csv, measurements);
    sheet.read();
    sheet.findings.sort(Finding.BY_PLACE);
    return new Checked<>(Map.copyOf(sheet.readings), sheet.findings);
  }

  private void read() {
    String text = source.text();
    String head = text.lines().findFirst().orElse("");
    char separator = head.chars().filter(c -> c == ';').count() > head.chars().filter(c -> c == ',').count() ? ';' : ',';
    Optional<Finding> exceeded = SheetBounds.exceeded(source, "sheet-unreadable", separator);
    if (exceeded.isPresent()) {
      findings.add(exceeded.get());
      return;
    }
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(separator).setHeader().setSkipHeaderRecord(true)
        .setAllowMissingColumnNames(true).setDuplicateHeaderMode(DuplicateHeaderMode.ALLOW_EMPTY).setIgnoreSurroundingSpaces(true)
        .setIgnoreEmptyLines(true).get();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
      List<String> columns = parser.getHeaderNames();
      if (!columns.contains("test") || !columns.contains("reading")) {
        findings.add(
            Finding.error("sheet-head", "this is not a test sheet: its first line has no column 'test' or no column 'reading'")
                .at(source.span(0, Math.max(0, Math.min(text.length(), head.length()))),
                    "the heads of a sheet made by test-sheet are expected here")
                .fix("fill in a sheet made with wattle test-sheet --format csv")
                .build());
        return;
      }
      Map<String, Span> seen = new HashMap<>();
      for (CSVRecord record : parser) {
        row(record, seen);
      }
      notMeasured();
    } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
      findings.add(
          Finding.error("sheet-unreadable", "the sheet cannot be read as CSV")
              .at(source.span(0, Math.min(text.length(), head.length())),
                  "comma-separated cells, quoted where they hold a comma, are expected")
              .because("In it " + SheetProblem.why(e) + ".")
              .build());
    }
  }

  private void row(CSVRecord record, Map<String, Span> seen) {
    Span line = lineOf(record);
    String key = record.isSet("test") ? record.get("test").strip() : "";
    if (key.isEmpty()) {
      return;
    }
    Measurement measurement = expected.get(key);
    if (measurement == null) {
      Finding.Builder finding = Finding.warning("test-unknown", "the plan has no measurement '" + key + "'").at(cell(line, key),
          "not in this revision of the plan");
      tests.near(key).forEach(n -> finding.fix(Fix.of("write " + n)));
      findings.add(finding.build());
      return;
    }
    String reading = record.isSet("reading") ? record.get("reading").strip() : "";
    if (reading.isEmpty()) {
      return;
    }
    Span first = seen.putIfAbsent(key, line);
    if (first != null) {
      findings.add(Finding.error("reading-twice", "'" + key + "' is in the sheet twice").at(line, "the second").with(first, "the first")
          .fix("leave one of them").build());
      return;
    }
    readings.put(key, reading);
    Span at = cell(line, reading);
    if (measurement.isFigure()) {
      figure(measurement, reading, at);
    } else {
      answer(measurement, reading, at);
    }
  }

  private void figure(Measurement measurement, String reading, Span at) {
    Matcher matcher = FIGURE.matcher(reading);
    if (!matcher.matches() || !matcher.group(3).isEmpty() && !isUnit(matcher.group(3), measurement.unit())) {
      findings.add(
          Finding.error("reading-unreadable", "the reading of '" + measurement.key() + "' is not a figure in " + measurement.unit())
              .at(at, "a figure such as " + example(measurement) + " is expected here").build());
      return;
    }
    double value = Double.parseDouble(matcher.group(2).replace(',', '.'));
    boolean above = matcher.group(1).equals(">") || matcher.group(1).equals("≥");
    boolean below = matcher.group(1).equals("<") || matcher.group(1).equals("≤");
    boolean tooLow = measurement.least().filter(l -> value < l && !above || below && l > 0).isPresent();
    boolean tooHigh = measurement.most().filter(m -> value > m && !below || above).isPresent();
    if (tooLow || tooHigh) {
      findings.add(
          Finding
              .error("reading-out-of-range",
                  measurement.kind().word() + " at " + measurement.at() + " reads " + reading + suffix(reading, measurement))
              .at(at, range(measurement) + " is expected")
              .because("Expected: " + measurement.expected() + ", " + measurement.between() + ", " + measurement.subject() + ".")
              .figure("reading", reading)
              .figure("expected", measurement.expected())
              .fix("find the cause before it is used, then measure again")
              .build());
    }
  }

  private static String suffix(String reading, Measurement measurement) {
    return Character.isDigit(reading.charAt(reading.length() - 1)) ? " " + measurement.unit() : "";
  }

  private static boolean isUnit(String written, String unit) {
    String plain = written.replace("Ω", "ohm").toLowerCase(Locale.ROOT);
    return plain.equals(unit.replace("Ω", "ohm").toLowerCase(Locale.ROOT));
  }

  private static String example(Measurement measurement) {
    return Measurement.plain(measurement.least().filter(l -> l > 0).or(measurement::most).orElse(1.0)) + " " + measurement.unit();
  }

  private static String range(Measurement m) {
    Optional<String> least = m.least().map(Measurement::plain);
    Optional<String> most = m.most().map(Measurement::plain);
    if (least.isPresent() && most.isPresent()) {
      return least.get() + " to " + most.get() + " " + m.unit();
    }
    return least.map(l -> "at least " + l).orElseGet(() -> "at most " + most.orElse("")) + " " + m.unit();
  }

  private void answer(Measurement measurement, String reading, Span at) {
    String word = reading.toLowerCase(Locale.ROOT);
    if (NO.contains(word)) {
      findings.add(
          Finding.error("reading-out-of-range", measurement.kind().word() + " at " + measurement.at() + " failed")
              .at(at, measurement.expected() + " is expected")
              .because(measurement.between() + ", " + measurement.subject() + ".")
              .fix("find the cause before it is used, then test again")
              .build());
    } else if (!YES.contains(word)) {
      findings.add(
          Finding.error("reading-unreadable", "the answer for '" + measurement.key() + "' is neither yes nor no")
              .at(at, "yes or no is expected here").build());
    }
  }

  private void notMeasured() {
    List<String> missing = expected.keySet().stream().filter(k -> !readings.containsKey(k)).toList();
    if (!missing.isEmpty()) {
      findings.add(
          Finding.warning("not-measured", missing.size() + " of " + expected.size() + " measurements have no reading")
              .at(source.span(0, 0), "such as " + missing.get(0))
              .because("Not measured, so not known: " + String.join(", ", missing.stream().limit(5).toList())
                  + (missing.size() > 5 ? " and " + (missing.size() - 5) + " more." : "."))
              .build());
    }
  }

  /** The lines that a record stands on, without the line end. */
  private Span lineOf(CSVRecord record) {
    int start = (int) Math.min(source.text().length(), record.getCharacterPosition());
    int end = source.text().indexOf('\n', start);
    end = end < 0 ? source.text().length() : end;
    if (end > start && source.text().charAt(end - 1) == '\r') {
      end--;
    }
    return source.span(start, end);
  }

  /** A cell within its line, the last of those that read alike, since readings stand to the right. */
  private Span cell(Span line, String value) {
    int at = line.text().lastIndexOf(value);
    return at < 0 || value.isEmpty() ? line : source.span(line.start() + at, line.start() + at + value.length());
  }
}
