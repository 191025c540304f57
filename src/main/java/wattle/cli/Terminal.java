package wattle.cli;

import java.util.OptionalInt;

/** What the terminal can show. */
final class Terminal {
  private static final int LEAST_COLUMNS = 40;
  private static final int MOST_COLUMNS = 500;

  private Terminal() {}

  /** How many columns it has, where a person reads it and {@code COLUMNS} says so, as the launcher does. */
  static OptionalInt columns() {
    return System.console() == null ? OptionalInt.empty() : columns(System.getenv("COLUMNS"));
  }

  /** Absent where a figure is missing or makes no sense. */
  static OptionalInt columns(String stated) {
    if (stated == null || !stated.matches("[0-9]{1,4}")) {
      return OptionalInt.empty();
    }
    int columns = Integer.parseInt(stated);
    return columns >= LEAST_COLUMNS && columns <= MOST_COLUMNS ? OptionalInt.of(columns) : OptionalInt.empty();
  }

  /** Color only where a person reads it, and never where {@code NO_COLOR} asks for none. */
  static boolean wantsColor() {
    String unwanted = System.getenv("NO_COLOR");
    return System.console() != null && (unwanted == null || unwanted.isEmpty());
  }
}
