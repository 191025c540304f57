package wattle.conductors;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Resistance of one conductor for each length of it.
 *
 * @param at75 at 75 °C
 * @param perKelvin how much of that it gains for each kelvin, a plain number
 */
public record Resistance(Derivation at75, Derivation perKelvin) {
  /** Temperature of the tables, in °C. */
  public static final double TABLE_CELSIUS = 75;

  /** R(T) = R75 × (1 + α (T − 75 °C)), NFPA 70 chapter 9 table 8, note 2. */
  public double ohmsPerMetre(double celsius) {
    return at75.si() * factor(celsius);
  }

  /** The resistance relative to that at 75 °C. */
  public double factor(double celsius) {
    return 1 + perKelvin.si() * (celsius - TABLE_CELSIUS);
  }

  /** The resistance at a temperature whose symbol is {@code T}. */
  public Derivation at(Derivation temperature) {
    double celsius = temperature.quantity().orElseThrow().in(Units.CELSIUS);
    return Derivation.computed(
        "resistance at " + temperature.value().text(), "R", "R_75 × (1 + α × (T − 75 °C))",
        new Value.Amount(new Quantity(ohmsPerMetre(celsius), Units.OHM_PER_KILOMETRE)),
        List.of(at75, perKelvin, temperature.named(temperature.name(), "T")));
  }
}
