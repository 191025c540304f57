package wattle.conductors;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Resistance of one conductor for each length of it. No record: its figures are asked for in the innermost loops. */
public final class Resistance {
  /** Temperature of the tables, in °C. */
  public static final double TABLE_CELSIUS = 75;

  private final Derivation at75;
  private final Derivation perKelvin;
  private final double ohmsPerMeterAt75;
  private final double alpha;

  /**
   * @param at75 at 75 °C
   * @param perKelvin how much of that it gains for each kelvin, a plain number
   */
  public Resistance(Derivation at75, Derivation perKelvin) {
    this.at75 = at75;
    this.perKelvin = perKelvin;
    this.ohmsPerMeterAt75 = at75.si();
    this.alpha = perKelvin.si();
  }

  public Derivation at75() {
    return at75;
  }

  public Derivation perKelvin() {
    return perKelvin;
  }

  /** Rise for each kelvin, referred to 75 °C. */
  public double alpha() {
    return alpha;
  }

  /** R(T) = R75 × (1 + α (T − 75 °C)), NFPA 70 chapter 9 table 8, note 2. */
  public double ohmsPerMeter(double celsius) {
    return ohmsPerMeterAt75 * factor(celsius);
  }

  /** The resistance relative to that at 75 °C. */
  public double factor(double celsius) {
    return 1 + alpha * (celsius - TABLE_CELSIUS);
  }

  /** The resistance at a temperature whose symbol is {@code T}. */
  public Derivation at(Derivation temperature) {
    double celsius = temperature.quantity().orElseThrow().in(Units.CELSIUS);
    return Derivation.computed(
        "resistance at " + temperature.value().text(), "R", "R_75 × (1 + α × (T − 75 °C))",
        new Value.Amount(new Quantity(ohmsPerMeter(celsius), Units.OHM_PER_KILOMETER)),
        List.of(at75, perKelvin, temperature.named(temperature.name(), "T")));
  }
}
