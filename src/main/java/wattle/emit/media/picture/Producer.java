package wattle.emit.media.picture;

/** How a file says what made it. */
final class Producer {
  static final String NAME = "Wattle";

  private Producer() {}
}
