package wattle.cli;

/** A command that cannot be carried out: bad usage, or a file that cannot be read or written. One line says why. */
final class Failure extends RuntimeException {
  private static final long serialVersionUID = 1;

  Failure(String message) {
    super(message, null, false, false);
  }
}
