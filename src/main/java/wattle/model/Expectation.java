package wattle.model;

import java.util.Optional;
import wattle.finding.Span;
import wattle.quantity.Quantity;

/**
 * What must hold.
 *
 * @param measure what is measured, as words joined by hyphens, such as {@code neutral} or {@code touch-voltage}
 * @param subject of what; absent where the measure needs none
 * @param value absent where it is said that protection trips or holds
 * @param within tolerance; absent where none was said
 * @param trial in which scenario; absent for the house as stated
 * @param measured the words measured, for the caret
 */
public record Expectation(
    String measure,
    Optional<String> subject,
    Bound bound,
    Optional<Quantity> value,
    Optional<Quantity> within,
    Optional<String> trial,
    Span measured,
    Origin origin) {
  /** How the figure must stand to the value. */
  public enum Bound {
    EQUAL, AT_MOST, AT_LEAST,
    /** Protection opens; there is no value. */
    TRIPS,
    /** Protection does not open; there is no value. */
    HOLDS
  }
}
