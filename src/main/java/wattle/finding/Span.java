package wattle.finding;

/**
 * A half-open range of UTF-16 units in one source, never a bare point in thought: an empty range marks the place where
 * something is missing.
 */
public record Span(Source source, int start, int end) {
  public Span {
    if (start < 0 || end < start || end > source.text().length()) {
      throw new IllegalArgumentException("span " + start + ".." + end + " outside " + source);
    }
  }

  public String text() {
    return source.text().substring(start, end);
  }

  /** The same range in the text as it was read. */
  public Span written() {
    return source.written() == source ? this : new Span(source.written(), start, end);
  }

  /** 1-based line of the start. */
  public int line() {
    return source.lineOf(start);
  }

  /** 1-based column of the start, in code points. */
  public int column() {
    return source.columnOf(start);
  }

  /** The smallest span that holds this one and another of the same source. */
  public Span to(Span other) {
    return new Span(source, Math.min(start, other.start), Math.max(end, other.end));
  }

  /** The empty span at the end of this one. */
  public Span after() {
    return new Span(source, end, end);
  }

  @Override
  public String toString() {
    return source.name() + ":" + line() + ":" + column();
  }
}
