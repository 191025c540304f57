package wattle.server;

import wattle.finding.Span;

/**
 * A place where a name stands.
 *
 * @param declares whether the thing is made here; elsewhere it is spoken of
 * @param whole of a declaration, all that is written of the thing; elsewhere the same as the name's own span
 */
record Occurrence(Named thing, Span span, boolean declares, Span whole) {
  static Occurrence of(Named thing, Span span) {
    return new Occurrence(thing, span, false, span);
  }
}
