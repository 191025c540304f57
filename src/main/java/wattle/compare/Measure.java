package wattle.compare;

import java.util.Comparator;
import wattle.quantity.Unit;
import wattle.quantity.UnitSystem;

/**
 * Something of a house that has a figure.
 *
 * @param thing what it is measured of; the plan itself for what is of the whole house
 * @param order its place among the measures of one thing
 * @param words what is measured, in the trade's words
 * @param unit in which it is shown
 * @param decimals with which it is shown, and beyond which two figures do not differ
 */
public record Measure(Topic topic, Thing thing, int order, String words, Unit unit, int decimals) implements Comparable<Measure> {
  /** What figures are about, in the order in which a reader meets them. */
  public enum Topic {
    LOAD("calculated load"), BALANCE("connected load and balance of the legs"), NEUTRAL("shared neutrals"), VOLTAGE("voltage drop"), FAULT(
        "fault current"), MATERIALS("materials to buy");

    private final String words;

    Topic(String words) {
      this.words = words;
    }

    /** As headings have it. */
    public String words() {
      return words;
    }

    /** As programs read it. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  private static final Comparator<Measure> ORDER = Comparator.comparing(Measure::topic)
      .thenComparing(Measure::thing)
      .thenComparing(Measure::order)
      .thenComparing(Measure::words)
      .thenComparing(m -> m.unit().symbol());

  Measure of(Thing other) {
    return new Measure(topic, other, order, words, unit, decimals);
  }

  Measure shownIn(UnitSystem units) {
    return new Measure(topic, thing, order, words, units.shown(unit), decimals);
  }

  @Override
  public int compareTo(Measure other) {
    return ORDER.compare(this, other);
  }

  /** What is measured and of what, such as {@code imbalance of panel P}; of the house alone only what. */
  @Override
  public String toString() {
    return thing.name().isEmpty() ? words : words + " of " + thing;
  }
}
