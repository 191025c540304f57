package wattle.finding;

import java.util.Optional;

/**
 * How much a sheet of comma-separated cells may have: many times what the panels, tests or prices of a large house take, and so little
 * that each of its lines may have a finding.
 */
public final class SheetBounds {
  /** The largest file, in bytes. */
  public static final int MOST_BYTES = 4 << 20;

  private static final int MOST_LINES = 20_000;
  private static final int LONGEST_LINE = 10_000;
  private static final int MOST_CELLS = 200;

  private SheetBounds() {}

  /**
   * The first bound that a sheet exceeds.
   *
   * @param rule the name of the finding
   * @param separator between cells
   * @return absent for a sheet within all bounds
   */
  public static Optional<Finding> exceeded(Source csv, String rule, char separator) {
    String text = csv.text();
    if (text.length() > MOST_BYTES) {
      return Optional.of(beyond(csv, rule, 0, "the sheet has " + text.length() + " characters", MOST_BYTES + " characters"));
    }
    int start = 0;
    for (int line = 1; start < text.length(); line++) {
      int end = text.indexOf('\n', start);
      end = end < 0 ? text.length() : end;
      if (line > MOST_LINES) {
        return Optional.of(beyond(csv, rule, start, "the sheet has more lines than are read", MOST_LINES + " lines"));
      }
      if (end - start > LONGEST_LINE) {
        return Optional.of(beyond(csv, rule, start, "a line of the sheet has " + (end - start) + " characters",
            LONGEST_LINE + " characters in a line"));
      }
      long cells = 1 + text.substring(start, end).chars().filter(c -> c == separator).count();
      if (cells > MOST_CELLS) {
        return Optional.of(beyond(csv, rule, start, "a line of the sheet has " + cells + " cells", MOST_CELLS + " cells in a line"));
      }
      start = end + 1;
    }
    return Optional.empty();
  }

  private static Finding beyond(Source csv, String rule, int at, String headline, String most) {
    return Finding.error(rule, headline).at(csv.span(at, at), "at most " + most + " are read")
        .fix("split the sheet, or remove what is not of its table").build();
  }
}
