package wattle.model;

import wattle.finding.Span;

/**
 * Where a thing was written.
 *
 * @param name its name, for the caret
 * @param whole all of it, for folding, hover and deletion
 */
public record Origin(Span name, Span whole) {
  public static Origin of(Span span) {
    return new Origin(span, span);
  }
}
