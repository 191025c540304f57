package wattle.network;

/** A figure that breaks a law of circuits: an internal error, never a mistake in a plan. */
public final class NetworkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  NetworkException(String message) {
    super(message);
  }
}
