package wattle.loads;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.network.Complex;

/**
 * What is connected between the legs, and from each to the neutral; and what the legs and the neutral carry of it. This is the one
 * place where the current of a leg is calculated: tables, pictures, rules, balance and schedules ask here.
 *
 * @param flows one entry for each pair of conductors between which something is connected
 * @param unplaced volt-amperes that could not be given to a leg, because the plan does not say which breaker feeds them
 */
public record LegLoads(Map<Ends, Flow> flows, double unplaced) {
  public static final LegLoads NONE = new LegLoads(Map.of(), 0);

  public LegLoads {
    Map<Ends, Flow> copy = new EnumMap<>(Ends.class);
    copy.putAll(flows);
    flows = Collections.unmodifiableMap(copy);
  }

  /** Loads of power factor 1, each from its leg to the neutral. */
  public static LegLoads toNeutral(Map<Leg, Double> voltAmperes) {
    Map<Ends, Flow> flows = new EnumMap<>(Ends.class);
    voltAmperes.forEach((leg, load) -> flows.put(Ends.toNeutral(leg), Flow.of(load, 1)));
    return new LegLoads(flows, 0);
  }

  /** Volt-amperes on one leg, 0 where nothing is; a load between two legs counts half on each, so that legs add up to the whole. */
  public double on(Leg leg) {
    double sum = 0;
    for (Map.Entry<Ends, Flow> flow : flows.entrySet()) {
      if (flow.getKey().legs().contains(leg)) {
        sum += flow.getValue().voltAmperes() / flow.getKey().legs().size();
      }
    }
    return sum;
  }

  /** All legs and what is on none. */
  public double total() {
    return unplaced + flows.values().stream().mapToDouble(Flow::voltAmperes).sum();
  }

  /** The current of a leg at nominal voltage, as a phasor in amperes; leg A has its voltage at zero degrees. */
  public Complex current(Leg leg, SupplySystem system) {
    Complex sum = Complex.ZERO;
    for (Map.Entry<Ends, Flow> flow : flows.entrySet()) {
      int end = flow.getKey().legs().indexOf(leg);
      if (end >= 0) {
        Complex current = flow.getValue().current(flow.getKey().volts(system));
        sum = end == 0 ? sum.plus(current) : sum.minus(current);
      }
    }
    return sum;
  }

  /** Amperes of one leg at nominal voltage. */
  public double amperes(Leg leg, SupplySystem system) {
    return current(leg, system).magnitude();
  }

  /** Amperes of the leg of a supply that carries most. */
  public double heaviestAmperes(SupplySystem system) {
    return system.legs().stream().mapToDouble(l -> amperes(l, system)).max().orElse(0);
  }

  /** Amperes of the heaviest leg less those of the lightest. */
  public double differenceAmperes(SupplySystem system) {
    return heaviestAmperes(system) - system.legs().stream().mapToDouble(l -> amperes(l, system)).min().orElse(0);
  }

  /** Amperes of the neutral at nominal voltage: what the currents of the legs leave when they are added as phasors. */
  public double neutralAmperes(SupplySystem system) {
    Complex sum = Complex.ZERO;
    for (Map.Entry<Ends, Flow> flow : flows.entrySet()) {
      if (flow.getKey().legs().size() == 1) {
        sum = sum.plus(flow.getValue().current(flow.getKey().volts(system)));
      }
    }
    return sum.magnitude();
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

  /** Both together. */
  public LegLoads plus(LegLoads other) {
    Map<Ends, Flow> sum = new EnumMap<>(Ends.class);
    sum.putAll(flows);
    other.flows.forEach((ends, flow) -> sum.merge(ends, flow, Flow::plus));
    return new LegLoads(sum, unplaced + other.unplaced);
  }

  /** This without a part of it. */
  public LegLoads minus(LegLoads part) {
    Map<Ends, Flow> sum = new EnumMap<>(Ends.class);
    sum.putAll(flows);
    part.flows.forEach((ends, flow) -> sum.merge(ends, flow.times(-1), Flow::plus));
    return new LegLoads(sum, unplaced - part.unplaced);
  }

  /** The same with each leg in the place of another. */
  public LegLoads moved(UnaryOperator<Leg> to) {
    Map<Ends, Flow> moved = new EnumMap<>(Ends.class);
    flows.forEach((ends, flow) -> moved.merge(ends.moved(to), flow, Flow::plus));
    return new LegLoads(moved, unplaced);
  }

  /** What is on one leg alone. */
  LegLoads only(Leg leg) {
    Map<Ends, Flow> own = new EnumMap<>(Ends.class);
    flows.forEach((ends, flow) -> {
      if (ends.legs().contains(leg)) {
        own.put(ends, flow);
      }
    });
    return new LegLoads(own, 0);
  }
}
