package wattle.cli;

import java.util.OptionalInt;

/** What the terminal can show. */
final class Terminal {
  private static final String STATED = "WATTLE_TERMINAL";
  private static final String PROGRESS = "WATTLE_PROGRESS";
  private static final int LEAST_COLUMNS = 40;
  private static final int MOST_COLUMNS = 500;

  private Terminal() {}

  /** Whether the output goes to one. The launcher knows, also where the input comes from a file. */
  static boolean isThere() {
    return System.getenv(STATED) != null || System.console() != null;
  }

  /** Whether standard error goes to one, which the launcher alone can know. */
  static boolean showsProgress() {
    return System.getenv(PROGRESS) != null;
  }

  /** How many columns it has, where a person reads it and the launcher says so, or else {@code COLUMNS}. */
  static OptionalInt columns() {
    String stated = System.getenv(STATED);
    return stated != null ? columns(stated) : System.console() == null ? OptionalInt.empty() : columns(System.getenv("COLUMNS"));
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
    return isThere() && (unwanted == null || unwanted.isEmpty());
  }
}
