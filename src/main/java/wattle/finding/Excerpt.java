package wattle.finding;

/**
 * A part of a text that is read by itself, because the rest has not changed. Its spans are offsets within the part: they have no
 * line until {@link Placement#whole(Span)} puts them in place, and asking for one is a mistake of the program that shows itself
 * at once.
 */
public final class Excerpt extends Source {
  /**
   * @param name of the whole text, as a reader is shown it
   * @param text of the part
   */
  public Excerpt(String name, String text) {
    super(name, text);
  }

  @Override
  int[] starts() {
    throw new IllegalStateException("a span of an excerpt of " + name() + " has no line until it is placed");
  }
}
