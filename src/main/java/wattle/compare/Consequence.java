package wattle.compare;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import wattle.quantity.UnitSystem;

/**
 * A figure that is not the same in two revisions, or is known in only one of them.
 *
 * @param measure of the thing as the later revision names it
 * @param formerly the thing as the earlier revision names it
 */
public record Consequence(Measure measure, Thing formerly, Figure before, Figure after) {
  /** Whether two figures of a measure differ where they are shown. */
  static boolean differ(Measure measure, Figure before, Figure after) {
    if (before instanceof Figure.Known && after instanceof Figure.Known) {
      return shown(measure, before).getAsDouble() != shown(measure, after).getAsDouble();
    }
    return !before.getClass().equals(after.getClass());
  }

  /** As it is shown, in the unit of the measure and rounded; absent where it is not known. */
  private static OptionalDouble shown(Measure measure, Figure figure) {
    if (!(figure instanceof Figure.Known known)) {
      return OptionalDouble.empty();
    }
    double value = known.derivation().quantity().orElseThrow().in(measure.unit());
    return Double.isFinite(value) ? OptionalDouble.of(rounded(value, measure.decimals())) : OptionalDouble.of(value);
  }

  private static double rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue() + 0.0; // + 0.0: no minus zero
  }

  /** The earlier figure as it is shown, in the unit of the measure; absent where it is not known. */
  public OptionalDouble shownBefore() {
    return shown(measure, before);
  }

  /** Likewise the later one. */
  public OptionalDouble shownAfter() {
    return shown(measure, after);
  }

  /** Later less earlier, of the figures as shown, so that a reader's sum comes out; absent where either is not known. */
  public OptionalDouble difference() {
    return shownBefore().isPresent() && shownAfter().isPresent()
        ? OptionalDouble.of(rounded(shownAfter().getAsDouble() - shownBefore().getAsDouble(), measure.decimals()))
        : OptionalDouble.empty();
  }

  Consequence shownIn(UnitSystem units) {
    return new Consequence(measure.shownIn(units), formerly, before, after);
  }

  /** Whether the two figures differ where they are shown. */
  boolean differs() {
    return differ(measure, before, after);
  }

  /** The same read from the later revision to the earlier. */
  public Consequence mirrored() {
    return new Consequence(measure.of(formerly), measure.thing(), after, before);
  }
}
