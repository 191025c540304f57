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

  public static Fix offered(String order, Span span, String text) {
    return new Fix(order, List.of(new Edit(span, text)), Safety.OFFERED);
  }
}
