package wattle.materials;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.SheetBounds;
import wattle.finding.SheetProblem;
import wattle.finding.Source;

/**
 * Prices and hours of a user's own, by item as the list of materials names it. Columns are {@code item}, {@code price} and, where wanted,
 * {@code hours} and {@code unit}: {@code each}, {@code m} or {@code ft}, of which the last two are for lengths.
 *
 * @param prices by item in lower case
 */
public record PriceList(Map<String, Price> prices) {
  private static final double METERS_PER_FOOT = 0.3048;

  public PriceList {
    prices = Map.copyOf(prices);
  }

  /**
   * Of one item.
   *
   * @param price for one, or for a meter; absent where the cell is empty
   * @param hours of work for one, or for a meter; absent where the cell is empty
   */
  public record Price(Optional<Double> price, Optional<Double> hours, boolean perLength) {}

  /** Reads a list; findings tell of lines that cannot be read, and of a unit that does not fit. */
  public static Checked<PriceList> read(Source csv) {
    Map<String, Price> prices = new HashMap<>();
    List<Finding> findings = new ArrayList<>();
    String head = csv.text().lines().findFirst().orElse("");
    char separator = head.chars().filter(c -> c == ';').count() > head.chars().filter(c -> c == ',').count() ? ';' : ',';
    Optional<Finding> exceeded = SheetBounds.exceeded(csv, "price-unreadable", separator);
    if (exceeded.isPresent()) {
      return new Checked<>(new PriceList(prices), List.of(exceeded.get()));
    }
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(separator).setHeader().setSkipHeaderRecord(true)
        .setAllowMissingColumnNames(true).setIgnoreSurroundingSpaces(true).setIgnoreEmptyLines(true).get();
    try (CSVParser parser = CSVParser.parse(new StringReader(csv.text()), format)) {
      if (!parser.getHeaderNames().contains("item") || !parser.getHeaderNames().contains("price")) {
        findings.add(at(csv, 0, "the price list has no column 'item' or no column 'price'",
            "its first line must be item,unit,price,hours"));
        return new Checked<>(new PriceList(prices), findings);
      }
      for (CSVRecord record : parser) {
        row(csv, record, (int) record.getCharacterPosition(), prices, findings);
      }
    } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
      findings.add(at(csv, 0, "the price list cannot be read as CSV: " + SheetProblem.why(e),
          "write comma-separated cells, quoted where they hold a comma"));
    }
    return new Checked<>(new PriceList(prices), findings);
  }

  private static void row(Source csv, CSVRecord record, int from, Map<String, Price> prices, List<Finding> findings) {
    String item = cell(record, "item");
    String unit = cell(record, "unit").isEmpty() ? "each" : cell(record, "unit");
    Optional<Double> price = number(cell(record, "price"));
    Optional<Double> hours = number(cell(record, "hours"));
    if (!cell(record, "price").isEmpty() && price.isEmpty() || !cell(record, "hours").isEmpty() && hours.isEmpty()) {
      findings.add(at(csv, from, "the price or the hours of '" + item + "' are not a figure",
          "write a figure such as 12.50, 0 or more, of at most 12 digits before the point"));
    } else if (!List.of("each", "m", "ft").contains(unit)) {
      findings.add(at(csv, from, "'" + unit + "' is not a unit of price", "write each, m or ft"));
    } else if (prices.containsKey(key(item))) {
      findings.add(at(csv, from, "'" + item + "' is in the list twice", "leave one of the two"));
    } else {
      double per = unit.equals("ft") ? 1 / METERS_PER_FOOT : 1;
      prices.put(key(item), new Price(price.map(p -> p * per), hours.map(h -> h * per), !unit.equals("each")));
    }
  }

  private static String cell(CSVRecord record, String column) {
    return record.isMapped(column) && record.isSet(column) ? record.get(column).strip() : "";
  }

  private static Optional<Double> number(String text) {
    String plain = text.replaceFirst("^[$€£]", "").replaceFirst("^(\\d+),(\\d{1,2})$", "$1.$2");
    return plain.matches("\\d{1,12}(\\.\\d+)?") ? Optional.of(Double.parseDouble(plain)) : Optional.empty();
  }

  /** @param from where a line begins; the library for such sheets ends one at a carriage return too */
  private static Finding at(Source csv, int from, String headline, String fix) {
    String text = csv.text();
    int start = Math.min(from, text.length());
    while (start < text.length() && isLineEnd(text.charAt(start))) {
      start++;
    }
    int end = start;
    while (end < text.length() && !isLineEnd(text.charAt(end))) {
      end++;
    }
    return Finding.error("price-unreadable", headline).at(csv.span(start, end), "this line").fix(fix).build();
  }

  private static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }

  private static String key(String item) {
    return item.strip().toLowerCase(Locale.ROOT);
  }

  /** Of an item that is sold as this one is counted; absent where the list has none. */
  public Optional<Price> of(Material item) {
    return Optional.ofNullable(prices.get(key(item.what()))).filter(p -> p.perLength() == item.inMeters());
  }
}
