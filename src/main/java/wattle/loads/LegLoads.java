package wattle.loads;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import wattle.model.Leg;
import wattle.model.SupplySystem;

/**
 * Volt-amperes on each leg.
 *
 * @param voltAmperes one entry for each leg that carries something or could
 * @param unplaced volt-amperes that could not be given to a leg, because the plan does not say which breaker feeds them
 */
public record LegLoads(Map<Leg, Double> voltAmperes, double unplaced) {
  public static final LegLoads NONE = new LegLoads(Map.of(), 0);

  public LegLoads {
    Map<Leg, Double> copy = new EnumMap<>(Leg.class);
    copy.putAll(voltAmperes);
    voltAmperes = Collections.unmodifiableMap(copy);
  }

  /** Volt-amperes on one leg, 0 where nothing is. */
  public double on(Leg leg) {
    return voltAmperes.getOrDefault(leg, 0.0);
  }

  /** All legs and what is on none. */
  public double total() {
    return unplaced + voltAmperes.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** The heaviest leg less the lightest, of the legs of a supply, in volt-amperes. */
  public double difference(SupplySystem system) {
    double most = system.legs().stream().mapToDouble(this::on).max().orElse(0);
    return most - system.legs().stream().mapToDouble(this::on).min().orElse(0);
  }

  /**
   * How far the leg that strays most lies from the mean of the legs, as a part of that mean; 0 where nothing is connected.
   * The measure is that of the motor standards for unbalanced voltages (NEMA MG 1), applied to loads.
   */
  public double imbalance(SupplySystem system) {
    double mean = system.legs().stream().mapToDouble(this::on).average().orElse(0);
    double farthest = system.legs().stream().mapToDouble(l -> Math.abs(on(l) - mean)).max().orElse(0);
    return mean == 0 ? 0 : farthest / mean;
  }

  /**
   * The current in the neutral, in amperes, if every load were from leg to neutral and of power factor 1: the sum of the
   * leg currents as phasors. Loads between two legs put equal shares on both and, on a split-phase supply, cancel.
   */
  public double neutralAmperes(SupplySystem system) {
    double real = 0;
    double imaginary = 0;
    for (Leg leg : system.legs()) {
      double amperes = on(leg) / system.legToNeutralVolts();
      double angle = Math.toRadians(system.degreesOf(leg));
      real += amperes * Math.cos(angle);
      imaginary += amperes * Math.sin(angle);
    }
    return Math.hypot(real, imaginary);
  }

  LegLoads plus(LegLoads other) {
    Map<Leg, Double> sum = new EnumMap<>(Leg.class);
    sum.putAll(voltAmperes);
    other.voltAmperes.forEach((leg, load) -> sum.merge(leg, load, Double::sum));
    return new LegLoads(sum, unplaced + other.unplaced);
  }

  LegLoads plus(Leg leg, double load) {
    return plus(new LegLoads(Map.of(leg, load), 0));
  }
}
