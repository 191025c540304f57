package wattle.network;

/** A figure that breaks a law of circuits: a mistake of ours, never of a plan. */
public final class NetworkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  NetworkException(String message) {
    super(message);
  }
}
