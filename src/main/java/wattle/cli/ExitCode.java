package wattle.cli;

/** Exit codes of every command. */
final class ExitCode {
  /** No error was found. */
  static final int FINE = 0;

  /** A finding of severity error, or a difference where two things were compared. */
  static final int FOUND = 1;

  /** Bad usage, or a file that cannot be read or written. */
  static final int USAGE = 2;

  /** An internal error. */
  static final int BUG = 3;

  private ExitCode() {}
}
