package wattle.finding;

import java.util.List;

/**
 * What a person can do about a finding.
 *
 * @param order an order that can be followed as it is written
 * @param edits the same as text edits, in no overlap; empty where no edit can be made
 * @param safety whether the house stays the same once the edits are made
 */
public record Fix(String order, List<Edit> edits, Safety safety) {
  public Fix {
    edits = List.copyOf(edits);
  }

  /** Whether a fix may be applied unasked. */
  public enum Safety {
    /** The house stays the same: a unit spelled out, a name corrected. */
    SAFE,
    /** The house changes: another slot, a thicker cable. */
    OFFERED
  }

  public static Fix of(String order) {
    return new Fix(order, List.of(), Safety.OFFERED);
  }

  public static Fix safe(String order, Span span, String text) {
    return new Fix(order, List.of(new Edit(span, text)), Safety.SAFE);
  }

  /** Takes something out, with the blanks before it; a line on which nothing else stands goes with it. */
  public static Fix takenOut(String order, Span span) {
    String text = span.source().text();
    int start = span.start();
    while (start > 0 && (text.charAt(start - 1) == ' ' || text.charAt(start - 1) == '\t')) {
      start--;
    }
    boolean opensLine = start == 0 || text.charAt(start - 1) == '\n';
    int end = span.end();
    while (opensLine && end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t' || text.charAt(end) == '\r')) {
      end++;
    }
    if (opensLine && end < text.length() && text.charAt(end) == '\n') {
      return offered(order, new Span(span.source(), start, end + 1), "");
    }
    return offered(order, new Span(span.source(), opensLine ? span.start() : start, span.end()), "");
  }

  public static Fix offered(String order, Span span, String text) {
    return new Fix(order, List.of(new Edit(span, text)), Safety.OFFERED);
  }
}
