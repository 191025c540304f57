package wattle.begin;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.SheetBounds;
import wattle.finding.SheetProblem;
import wattle.finding.Source;

/**
 * Reads a panel schedule as people keep it in a spreadsheet: columns in any order under the usual headings, once or, for the two sides of
 * a panel, twice; separated by commas, semicolons or tabs; rows above the headings and sums beneath are passed over and told.
 */
final class ScheduleReader {
  private static final String UNREADABLE = "schedule-unreadable";
  private static final int HEADINGS_WITHIN = 30;
  private static final int MOST_FINDINGS = 200;
  private static final int MOST_SLOTS = 84;
  private static final int MOST_AMPERES = 6000;
  private static final Pattern SLOTS = Pattern.compile("(\\d{1,3})((?:\\s*(?:[-–+,/&]|and)\\s*\\d{1,3}){0,11})\\s*([aAbB]?)");
  private static final Pattern RATING = Pattern.compile("(?:([123])\\s*-?\\s*[pP](?:ole)?[\\s/-]*)?(\\d{1,4})(?:[.,]0+)?\\s*"
      + "(?:[aA](?:mps?|MPS?)?)?(?:[\\s/-]*([123])\\s*-?\\s*(?:[pP](?:ole)?)?)?");
  private static final Set<String> EMPTY = Set.of("", "-", "--", "space", "blank", "empty", "open", "unused", "n/a", "none");
  private static final Set<String> SPARE = Set.of("spare", "spares", "not used");
  private static final Set<String> DITTO = Set.of("", "\"", "''", "-", "--", "\"\"", "same", "ditto", "\u2193", "|");

  private final Source csv;
  private final int legs;
  private final List<Finding> findings = new ArrayList<>();
  private final List<String> told = new ArrayList<>();
  private final Map<Integer, Way> bySlot = new TreeMap<>();
  private final Map<Integer, Way> lower = new TreeMap<>();
  private final List<Row> loose = new ArrayList<>();
  private int mainAmperes;

  private ScheduleReader(Source csv, int legs) {
    this.csv = csv;
    this.legs = legs;
  }

  /** A cell with its place. */
  private record Cell(String text, int start, int end) {}

  /** One breaker's cells. */
  private record Row(int line, Map<ScheduleColumn, Cell> cells) {
    String text(ScheduleColumn column) {
      Cell cell = cells.get(column);
      return cell == null ? "" : cell.text.replace('\u00a0', ' ').strip();
    }
  }

  /** @param legs of the supply, which a breaker may have as poles */
  static Checked<PanelSchedule> read(Source csv, int legs) {
    return new ScheduleReader(csv, legs).read();
  }

  private Checked<PanelSchedule> read() {
    Optional<Finding> exceeded = SheetBounds.exceeded(csv, UNREADABLE, separator());
    if (exceeded.isPresent()) {
      return new Checked<>(new PanelSchedule(List.of(), 0, told), List.of(exceeded.get()));
    }
    try {
      List<List<Cell>> rows = cells();
      int head = IntStream.range(0, Math.min(HEADINGS_WITHIN, rows.size())).filter(i -> isHead(rows.get(i))).findFirst().orElse(-1);
      if (head < 0) {
        add(new Cell("", 0, csv.line(1).length()), "no line has the headings of a panel schedule",
            "a heading for the slot, such as slot or circuit, and one for the rating or the description are expected",
            "name the columns slot, rating, poles, description in the first line");
        return new Checked<>(new PanelSchedule(List.of(), 0, told), findings);
      }
      if (head > 0) {
        told.add("the first " + (head == 1 ? "line" : head + " lines") + " of the schedule " + (head == 1 ? "is" : "are")
            + " above its headings and left out");
      }
      List<Map<ScheduleColumn, Integer>> sides = sides(rows.get(head));
      for (List<Cell> cells : rows.subList(head + 1, rows.size())) {
        sides.forEach(side -> row(row(cells, side)));
        if (findings.size() >= MOST_FINDINGS) {
          add(cells.get(0), "reading stopped here, after " + findings.size() + " errors", "the next row is expected here",
              "fix the errors above, then read the schedule again");
          return new Checked<>(new PanelSchedule(List.of(), mainAmperes, told), findings);
        }
      }
      loose.stream().limit(MOST_FINDINGS).forEach(this::withoutSlot);
    } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
      add(new Cell("", 0, csv.line(1).length()),
          "the schedule cannot be read as CSV",
          SheetProblem.why(e), "save the sheet as CSV again");
    }
    List<Way> ways = new ArrayList<>(new LinkedHashSet<>(bySlot.values()));
    lower.values().forEach(ways::add);
    ways.sort(Comparator.comparing((Way w) -> w.slots().get(0)).thenComparing(w -> w.half()));
    if (ways.isEmpty() && findings.isEmpty()) {
      add(new Cell("", 0, csv.line(1).length()), "no row of the schedule has a breaker", "a slot with a rating is expected",
          "fill the columns slot and rating");
    }
    return new Checked<>(new PanelSchedule(ways, mainAmperes, told), findings);
  }

  // ---- Cells

  private List<List<Cell>> cells() throws IOException {
    char separator = separator();
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(separator).setIgnoreEmptyLines(true).get();
    List<List<Cell>> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(new StringReader(csv.text()), format)) {
      for (CSVRecord record : parser) {
        rows.add(placed(record, separator));
      }
    }
    return rows;
  }

  /** Where the cells of a record stand: the library tells where the record begins. */
  private List<Cell> placed(CSVRecord record, char separator) {
    List<Cell> cells = new ArrayList<>();
    String text = csv.text();
    int at = (int) record.getCharacterPosition();
    for (String value : record) {
      int end = at;
      boolean quoted = false;
      while (end < text.length() && (quoted || text.charAt(end) != separator && text.charAt(end) != '\n' && text.charAt(end) != '\r')) {
        quoted ^= text.charAt(end) == '"';
        end++;
      }
      cells.add(new Cell(value, at, end));
      at = Math.min(end + 1, text.length());
    }
    return cells;
  }

  private char separator() {
    char best = ',';
    long most = 0;
    List<String> lines = csv.text().lines().limit(HEADINGS_WITHIN).toList();
    for (char candidate : new char[]{',', ';', '\t'}) {
      long headings = lines.stream()
          .mapToLong(l -> Arrays.stream(l.split(Pattern.quote(String.valueOf(candidate)))).map(c -> c.replace("\"", ""))
              .flatMap(c -> ScheduleColumn.of(c).stream()).distinct().count())
          .max().orElse(0);
      if (headings > most) {
        most = headings;
        best = candidate;
      }
    }
    return best;
  }

  private static boolean isHead(List<Cell> row) {
    List<ScheduleColumn> named = row.stream().flatMap(c -> ScheduleColumn.of(c.text).stream()).distinct().toList();
    return named.contains(ScheduleColumn.SLOT) && (named.contains(ScheduleColumn.RATING) || named.contains(ScheduleColumn.DESCRIPTION));
  }

  /** The columns of each side: the second time a heading stands in the line it is of the second side. */
  private static List<Map<ScheduleColumn, Integer>> sides(List<Cell> head) {
    List<Map<ScheduleColumn, Integer>> sides = new ArrayList<>();
    Map<ScheduleColumn, Integer> seen = new EnumMap<>(ScheduleColumn.class);
    for (int i = 0; i < head.size(); i++) {
      Optional<ScheduleColumn> column = ScheduleColumn.of(head.get(i).text);
      if (column.isPresent()) {
        int side = seen.merge(column.get(), 1, Integer::sum) - 1;
        while (sides.size() <= side) {
          sides.add(new EnumMap<>(ScheduleColumn.class));
        }
        sides.get(side).put(column.get(), i);
      }
    }
    return sides.stream().filter(s -> s.containsKey(ScheduleColumn.SLOT)).toList();
  }

  private Row row(List<Cell> cells, Map<ScheduleColumn, Integer> side) {
    Map<ScheduleColumn, Cell> named = new LinkedHashMap<>();
    side.forEach((column, index) -> {
      if (index < cells.size()) {
        named.put(column, cells.get(index));
      }
    });
    return new Row(csv.lineOf(cells.get(0).start), named);
  }

  // ---- Rows

  private void row(Row row) {
    String slot = row.text(ScheduleColumn.SLOT);
    String rating = row.text(ScheduleColumn.RATING);
    String description = row.text(ScheduleColumn.DESCRIPTION);
    if (slot.isEmpty() && rating.isEmpty() && description.isEmpty()) {
      return;
    }
    if (isMain(slot) || slot.isEmpty() && isMain(description)) {
      main(row, rating);
      return;
    }
    Matcher slots = SLOTS.matcher(slot);
    if (!slots.matches()) {
      loose.add(row);
      return;
    }
    way(row, slots);
  }

  private static boolean isMain(String text) {
    return text.toLowerCase(Locale.ROOT).matches("main( breaker| disconnect| switch)?|mcb|service disconnect");
  }

  private void main(Row row, String rating) {
    Matcher amperes = RATING.matcher(rating);
    if (amperes.matches()) {
      mainAmperes = Integer.parseInt(amperes.group(2));
    } else {
      told.add("line " + row.line + " names the main and no rating that can be read");
    }
  }

  /** A row without a slot is a sum or a remark, unless it has a rating. */
  private void withoutSlot(Row row) {
    String slot = row.text(ScheduleColumn.SLOT);
    if (RATING.matcher(row.text(ScheduleColumn.RATING)).matches() && !slot.toLowerCase(Locale.ROOT).matches("(sub)?totals?.*|")) {
      add(row.cells.get(ScheduleColumn.SLOT), "'" + slot + "' is not a slot", "a number such as 7, 2+4, 1-3 or 5a is expected here",
          "write the slots of this breaker, or clear its rating");
    } else {
      String words = slot.isEmpty() ? row.text(ScheduleColumn.DESCRIPTION) : slot;
      told.add("line " + row.line + " is left out: " + (words.isEmpty() ? "it has no slot" : "'" + words + "' is not a slot"));
    }
  }

  private void way(Row row, Matcher slots) {
    Cell rating = row.cells.get(ScheduleColumn.RATING);
    String text = row.text(ScheduleColumn.RATING);
    String description = row.text(ScheduleColumn.DESCRIPTION);
    String bare = description.toLowerCase(Locale.ROOT);
    Matcher amperes = RATING.matcher(text);
    boolean rated = amperes.matches();
    int first = Integer.parseInt(slots.group(1));
    boolean continues = bySlot.containsKey(first) && bySlot.get(first).slots().indexOf(first) > 0 && slots.group(2).isEmpty();
    if (continues && (!rated || Integer.parseInt(amperes.group(2)) == bySlot.get(first).amperes())
        && (DITTO.contains(description) || bare.equals(bySlot.get(first).description().toLowerCase(Locale.ROOT)))) {
      return; // the second row of a breaker that takes two
    }
    if (!rated && (EMPTY.contains(text.toLowerCase(Locale.ROOT)) || SPARE.contains(text.toLowerCase(Locale.ROOT)))) {
      if (!EMPTY.contains(bare) && !SPARE.contains(bare) && !DITTO.contains(description)) {
        told.add("slot " + first + " (" + description + ") has no rating and is left out");
      }
      return; // an empty slot
    }
    if (!rated || Integer.parseInt(amperes.group(2)) == 0 || Integer.parseInt(amperes.group(2)) > MOST_AMPERES) {
      add(rating, "'" + text + "' is not a rating", "amperes such as 20 or 20 A are expected here", "write the rating, or clear the cell");
      return;
    }
    int poles = poles(row, slots, amperes);
    if (poles == 0) {
      return;
    }
    List<Integer> numbers = numbers(slots, poles);
    String half = slots.group(3).toLowerCase(Locale.ROOT);
    Way way = new Way(numbers, half, Integer.parseInt(amperes.group(2)), traits(row), SPARE.contains(bare) ? "" : description,
        SPARE.contains(bare) || EMPTY.contains(bare) && SPARE.contains(text.toLowerCase(Locale.ROOT)));
    if (poles > 1 && numbers.size() == 1) {
      way = way.withPoles(poles, legs == 1 ? 1 : 2);
      told.add("the " + poles + "-pole breaker in slot " + first + " is assumed to be in " + way.slotText());
    }
    put(row, way);
  }

  /** How many poles a breaker has; 0 where that is wrong, which was told then. */
  private int poles(Row row, Matcher slots, Matcher amperes) {
    int named = 1 + (int) slots.group(2).chars().filter(c -> "-–+,/&n".indexOf(c) >= 0).count();
    boolean range = slots.group(2).matches("\\s*[-–].*");
    int from = Integer.parseInt(slots.group(1));
    int to = Integer.parseInt(slots.group(2).isEmpty() ? slots.group(1) : slots.group(2).replaceAll(".*\\D", ""));
    int counted = range && to > from && (to - from) % 2 == 0 && named == 2 ? 1 + (to - from) / 2 : named;
    String stated = row.text(ScheduleColumn.POLES).toLowerCase(Locale.ROOT);
    int poles = stated.matches("(1|sp|single)\\D*")
        ? 1
        : stated.matches("(2|dp|double|two)\\D*") ? 2 : stated.matches("(3|tp|triple|three)\\D*") ? 3 : 0;
    String behind = amperes.group(1) != null ? amperes.group(1) : amperes.group(3);
    poles = poles > 0 ? poles : behind != null ? Integer.parseInt(behind) : counted;
    Cell at = row.cells.getOrDefault(ScheduleColumn.POLES, row.cells.get(ScheduleColumn.SLOT));
    if (!stated.isEmpty() && poles != counted && counted > 1) {
      add(at, "'" + row.text(ScheduleColumn.POLES) + "' does not fit slots " + row.text(ScheduleColumn.SLOT),
          counted + (counted == 1 ? " pole" : " poles") + " or other slots are expected", "write one slot for each pole");
      return 0;
    }
    if (poles > legs) {
      add(at, "a breaker of " + poles + " poles has no place on a supply of " + legs + (legs == 1 ? " leg" : " legs"),
          "at most " + legs + (legs == 1 ? " pole is" : " poles are") + " expected here",
          poles == 3 ? "use --system 208Y/120 for a three-phase panel" : "use --system 120/240");
      return 0;
    }
    return poles;
  }

  private static List<Integer> numbers(Matcher slots, int poles) {
    int first = Integer.parseInt(slots.group(1));
    List<Integer> rest = Pattern.compile("\\d+").matcher(slots.group(2)).results().map(r -> Integer.parseInt(r.group())).toList();
    if (rest.isEmpty()) {
      return List.of(first);
    }
    if (rest.size() == 1 && poles > 2) {
      return IntStream.range(0, poles).mapToObj(i -> first + 2 * i).toList(); // 1-5 is 1+3+5
    }
    List<Integer> all = new ArrayList<>(List.of(first));
    all.addAll(rest);
    return all;
  }

  private static Set<String> traits(Row row) {
    String words = (row.text(ScheduleColumn.PROTECTION) + " " + row.text(ScheduleColumn.DESCRIPTION) + " "
        + row.text(ScheduleColumn.RATING))
        .toLowerCase(Locale.ROOT);
    Set<String> traits = new LinkedHashSet<>();
    boolean dual = words.matches(".*\\b(dual function|df|cafci/gfci)\\b.*");
    if (dual || words.matches(".*\\b(c?afci?|arc.?fault)\\b.*")) {
      traits.add("arc-fault");
    }
    if (dual || words.matches(".*\\b(gfci?|ground.?fault)\\b.*")) {
      traits.add("ground-fault");
    }
    return traits;
  }

  private void put(Row row, Way way) {
    Cell at = row.cells.get(ScheduleColumn.SLOT);
    if (way.slots().stream().anyMatch(s -> s < 1 || s > MOST_SLOTS)) {
      add(at, "slot " + way.slotText() + " is not in any panel", "a number from 1 to " + MOST_SLOTS + " is expected here", "write the "
          + "slot");
      return;
    }
    if (legs > 1 && way.slots().size() > 1 && IntStream.range(1, way.slots().size())
        .anyMatch(i -> way.slots().get(i) - way.slots().get(i - 1) != 2)) {
      add(at, "slots " + way.slotText() + " are not one below the other", "slots of one side, such as 1+3 or 2+4, are expected here",
          "write the slots that the breaker takes");
      return;
    }
    Way there = way.slots().stream().map(bySlot::get).filter(w -> w != null).findFirst().orElse(null);
    int first = way.slots().get(0);
    if (there == null) {
      way.slots().forEach(s -> bySlot.put(s, way));
    } else if (way.slots().size() == 1 && there.slots().size() == 1 && !lower.containsKey(first)
        && (there.half().isEmpty() && way.half().isEmpty() || !there.half().equals(way.half()) && !way.half().isEmpty())) {
      // Two rows for one slot are the halves of a tandem breaker.
      if (there.half().isEmpty()) {
        told.add("slot " + first + " is in the schedule twice and read as a tandem breaker, " + first + "a and " + first + "b");
        bySlot.put(first, there.half("a"));
        lower.put(first, way.half("b"));
      } else {
        lower.put(first, way);
      }
    } else {
      add(at, "slot " + way.slotText() + " is taken by '" + there.description() + "' in " + there.slotText(),
          "another slot is expected here", "write the slot that this breaker is in");
    }
  }

  private void add(Cell at, String headline, String expected, String fix) {
    int line = csv.lineOf(Math.min(at.start, csv.text().length()));
    int start = Math.min(at.start, csv.text().length());
    int end = Math.min(Math.max(at.end, start), csv.startOfLine(line) + csv.line(line).length());
    findings.add(Finding.error(UNREADABLE, headline).at(csv.span(start, Math.max(start, end)), expected).fix(Fix.of(fix)).build());
  }
}
