package wattle.worksheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.loads.Ends;
import wattle.loads.Flow;
import wattle.loads.LegLoads;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * Loads of a feeder or service that last three hours or more: those that the plan calls continuous, and vehicle chargers (NFPA 70 625.42).
 * Conductors and overcurrent devices have 125 % of them (215.2(A)(1), 215.3, 230.42(A), 625.41). The optional methods for whole dwellings
 * rest on measured demand and have no such addition; there only what is outside the dwellings counts.
 */
final class ContinuousLoads {
  private static final double QUARTER = 0.25;

  private final Inputs inputs;
  private final List<ConnectedLoad> loads = new ArrayList<>();

  /** @param inDwellings whether those of the dwellings count too */
  ContinuousLoads(Inputs inputs, boolean inDwellings) {
    this.inputs = inputs;
    add(inputs.common(), 1);
    if (inDwellings) {
      inputs.dwellings().forEach(u -> {
        add(u.loads(), u.alike());
        add(u.outlets(), u.alike());
      });
    }
  }

  private void add(List<ConnectedLoad> candidates, int alike) {
    candidates.stream()
        .filter(l -> l.total() > 0)
        .filter(l -> l.loadClass() == LoadClass.VEHICLE_CHARGING || inputs.placement().isContinuous(l))
        .forEach(l -> loads.add(alike == 1 ? l : l.times(alike)));
  }

  /** Amperes of a leg that last; 0 where nothing does. What is placed on no leg counts on each. */
  Derivation onLeg(Leg leg) {
    LegLoads all = LegLoads.NONE;
    for (ConnectedLoad load : loads) {
      all = all.plus(new LegLoads(flows(load, load.total()), 0));
    }
    return amperes("continuous load of leg " + leg, "I_c", all.amperes(leg, inputs.system()));
  }

  /**
   * What a leg has on top for them.
   *
   * @param leastCharger volt-amperes that the calculated load counts for a charger at least, which may be more than 125 % of its nameplate
   */
  Derivation quarterOnLeg(Leg leg, double leastCharger) {
    LegLoads all = LegLoads.NONE;
    for (ConnectedLoad load : loads) {
      double counted = load.loadClass() == LoadClass.VEHICLE_CHARGING ? Math.max(load.voltAmperes(), leastCharger) : load.voltAmperes();
      double more = Math.max(0, (1 + QUARTER) * load.voltAmperes() - counted) * load.count();
      all = all.plus(new LegLoads(flows(load, more), 0));
    }
    return amperes("a quarter of the continuous loads of leg " + leg, "I_q", all.amperes(leg, inputs.system()));
  }

  private Derivation amperes(String name, String symbol, double value) {
    return Derivation.computed(
        name, symbol, "", value, Units.AMPERE,
        loads.isEmpty()
            ? Derivation.stated("continuous loads", "P", Quantity.of(0, Units.VOLT_AMPERE))
            : Sums.ofLoads("continuous loads", loads).named("continuous loads", "P"));
  }

  private Map<Ends, Flow> flows(ConnectedLoad load, double voltAmperes) {
    SupplySystem system = inputs.system();
    Optional<Ends> ends = inputs.placement().of(load);
    if (ends.isPresent() && system.legs().containsAll(ends.get().legs())) {
      return Map.of(ends.get(), Flow.of(voltAmperes, 1));
    }
    Map<Ends, Flow> evenly = new EnumMap<>(Ends.class);
    boolean across = !load.neutral() && system.legs().size() == 2;
    if (across) {
      return Map.of(Ends.between(system.legs().get(0), system.legs().get(1)), Flow.of(voltAmperes, 1));
    }
    system.legs().forEach(l -> evenly.put(Ends.toNeutral(l), Flow.of(voltAmperes / system.legs().size(), 1)));
    return evenly;
  }
}
