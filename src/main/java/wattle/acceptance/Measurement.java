package wattle.acceptance;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.quantity.Quantity;

/**
 * One measurement.
 *
 * @param key by which a filled sheet is read back: branch, feeder or service, place, kind and conductor, unique in a house
 * @param branch name of the branch, or {@code feeder of G}, {@code panel P}, {@code service main}
 * @param breakers that feed it, as in {@code P/2+4}; the panel or service itself where none does
 * @param at the box, device or panel where it is taken
 * @param between which conductors, or what to do
 * @param expected in words, with its unit
 * @param unit of the reading; empty for a yes or no
 * @param least the smallest reading that is accepted, in that unit; absent for none
 * @param most the greatest one
 * @param derivation of the expected figure; absent for a yes or no
 */
public record Measurement(
    String key,
    Kind kind,
    String branch,
    String breakers,
    String at,
    String between,
    String expected,
    String unit,
    Optional<Double> least,
    Optional<Double> most,
    Optional<Derivation> derivation) {
  /** In the order in which they are made: first all that is done dead. */
  public enum Kind {
    CONTINUITY("continuity"), BOND("bond"), INSULATION("insulation"), TORQUE("torque"), VOLTAGE("voltage"), ROTATION("rotation"), POLARITY(
        "polarity"), GROUND_FAULT("ground-fault trip"), ARC_FAULT("arc-fault trip");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** What it is of, in words: {@code branch counter on P/2+4}, {@code feeder of G on P/8}, {@code service main}. */
  public String subject() {
    boolean supply = branch.contains(" ");
    String name = supply ? branch : "branch " + branch;
    return branch.endsWith(" " + breakers) ? name : name + " on " + breakers;
  }

  /** Whether the reading is a figure. */
  public boolean isFigure() {
    return !unit.isEmpty();
  }

  /** A figure as sheets show it. */
  static String plain(double value) {
    return Quantity.plain(value, 4);
  }
}
