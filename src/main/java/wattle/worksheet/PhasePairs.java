package wattle.worksheet;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.loads.Ends;
import wattle.model.SupplySystem;
import wattle.quantity.Units;

/**
 * Single-phase appliances on a three-phase feeder or service, counted by twice the most that are connected between any two phases:
 * NFPA 70 220.54 and 220.55. The load for these, by three halves, is that of the heaviest phase taken on all three. What the plan
 * does not place counts as spread as evenly as can be.
 */
final class PhasePairs {
  private PhasePairs() {}

  /** Whether they are counted so: where there are two or more, on three phases. */
  static boolean applies(Inputs inputs, List<ConnectedLoad> loads) {
    return inputs.system().kind() == SupplySystem.Kind.THREE_PHASE_WYE && Sums.count(loads) >= 2;
  }

  /** Twice the most between any two phases. */
  static Derivation entered(Inputs inputs, List<ConnectedLoad> loads) {
    Map<Ends, Integer> placed = new EnumMap<>(Ends.class);
    for (ConnectedLoad load : loads) {
      Optional<Ends> ends = inputs.placement().of(load).filter(e -> e.legs().size() == 2);
      ends.ifPresent(e -> placed.merge(e, 1, Integer::sum));
    }
    int even = (Sums.count(loads) + 2) / 3;
    int most = placed.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    boolean wired = most > even;
    Derivation count = Sums.counted("appliances", loads);
    return wired
        ? Derivation.computed(
            "twice the most between two phases, as wired", "n", "2 × n_max", 2 * most, Units.ONE,
            Sums.number("the most between two phases", most).named("the most between two phases", "n_max"), count)
        : Derivation.computed("twice the most between two phases", "n", "2 × n / 3, whole ones", 2 * even, Units.ONE, count);
  }

  /** The load of all three phases. */
  static Derivation onThree(Derivation demand) {
    return Derivation.computed("on three phases", "P", "3 × P_d / 2", 1.5 * demand.si(), Units.VOLT_AMPERE,
        demand.named(demand.name(), "P_d"));
  }
}
