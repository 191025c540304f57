package wattle.cli;

/** What the terminal can show. */
final class Terminal {
  private Terminal() {}

  /** Color only where a person reads it, and never where {@code NO_COLOR} asks for none. */
  static boolean wantsColor() {
    String unwanted = System.getenv("NO_COLOR");
    return System.console() != null && (unwanted == null || unwanted.isEmpty());
  }
}
