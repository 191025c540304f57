package wattle.conductors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * How warm a conductor runs in the long term, and the heat it gives off.
 *
 * <p>At its base ampacity and 30 °C it just reaches the rating of its insulation; that sets how well it sheds heat. The
 * rise over the ambient is in proportion to the heat, and the heat to I² and to the resistance, which grows with the
 * temperature: {@code T = T_a + (T_r − 30 °C) × (I / I_b)² × R(T) / R(T_r)}. The equation is linear in T and is solved
 * exactly. NFPA 70 310.14(B) and the ambient factors of its tables rest on the same balance.
 *
 * @param celsius temperature of the metal
 * @param wattsPerMeter heat of this one conductor
 */
public record RunningTemperature(double celsius, double wattsPerMeter) {
  private static final double TABLE_AMBIENT = 30;

  /**
   * Absent where no steady temperature exists: each degree then adds more heat than it sheds, until something melts.
   *
   * @param amperes through the conductor
   * @param baseAmperes its ampacity at 30 °C for the rating of its insulation, times the bundling factor
   * @param ratedCelsius rating of the insulation
   */
  public static Optional<RunningTemperature> of(
      double amperes, double baseAmperes, double ratedCelsius, double ambientCelsius, Resistance resistance) {
    double alpha = resistance.alpha();
    double load = amperes / baseAmperes;
    double rise = (ratedCelsius - TABLE_AMBIENT) * load * load / resistance.factor(ratedCelsius);
    double balance = 1 - rise * alpha;
    if (!(balance > 0)) {
      return Optional.empty();
    }
    double celsius = (ambientCelsius + rise * (1 - alpha * Resistance.TABLE_CELSIUS)) / balance;
    return Optional.of(new RunningTemperature(celsius, amperes * amperes * resistance.ohmsPerMeter(celsius)));
  }

  /**
   * The temperature, for a reader; absent where there is no steady one.
   *
   * @param current through the conductor
   */
  public static Optional<Derivation> derive(
      Derivation current, Ampacity ampacity, Conditions conditions, Resistance resistance) {
    double base = conditions.sets() * ampacity.base().si() * ampacity.bundlingFactor().si();
    double ambient = conditions.ambient().quantity().orElseThrow().in(Units.CELSIUS);
    return of(current.si(), base, conditions.insulationCelsius(), ambient, resistance)
        .map(running -> running.derivation(current, ampacity, conditions, resistance, base));
  }

  private Derivation derivation(
      Derivation current, Ampacity ampacity, Conditions conditions, Resistance resistance, double base) {
    Quantity temperature = Quantity.of(celsius, Units.CELSIUS);
    Derivation sets = Derivation.stated("sets in parallel", "n_s", Quantity.of(conditions.sets(), Units.ONE));
    String name = "ampacity for its share of heat";
    Derivation shed = conditions.sets() == 1
        ? Derivation.computed(name, "I_b", "I_t × k_n", base, Units.AMPERE, ampacity.base(), ampacity.bundlingFactor())
        : Derivation.computed(name, "I_b", "n_s × I_t × k_n", base, Units.AMPERE, sets, ampacity.base(), ampacity.bundlingFactor());
    Derivation rated = Insulation.rating("T_r", conditions.insulationCelsius());
    Derivation hot = resistance.at(solved(temperature));
    Derivation atRating = resistance.at(rated);
    return Derivation.computed(
        "running temperature of " + conditions.conductor(), "T",
        "T_a + (T_r − 30 °C) × (I / I_b)² × R / R_r",
        new Value.Amount(temperature),
        List.of(
            conditions.ambient().named(conditions.ambient().name(), "T_a"), rated,
            current.named(current.name(), "I"), shed, hot, atRating.named(atRating.name(), "R_r")))
        .remarking("The resistance is taken at the temperature that results; both are solved together.");
  }

  private static Derivation solved(Quantity temperature) {
    return Derivation.computed("running temperature", "T", "", new Value.Amount(temperature), List.of())
        .remarking("Solved together with the resistance.");
  }

  /** The heat that the conductor gives off, for a reader. */
  public Derivation heat(Derivation current, Resistance resistance) {
    Derivation hot = resistance.at(solved(Quantity.of(celsius, Units.CELSIUS)));
    return Derivation.computed(
        "heat", "P", "I² × R", new Value.Amount(new Quantity(wattsPerMeter, Units.WATT_PER_METER)),
        List.of(current.named(current.name(), "I"), hot));
  }
}
