package wattle.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.LoadClass;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.motors.WelderCurrents;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The largest breaker behind which a load may be alone by its own article, however thick the wire is: beyond it a fault within the
 * load may burn on. What a nameplate says goes before it.
 */
final class MostBreaker {
  private static final Set<Family> PASSIVE = Set.of(Family.JUNCTION, Family.SWITCH);
  private static final Set<LoadClass> WATER = Set.of(LoadClass.WATER_HEATING, LoadClass.INSTANT_WATER_HEATING);

  private MostBreaker() {}

  /**
   * Absent for a load whose article names none, one that shares its circuit, a motor behind a fuse, one without a rating, and where
   * its nameplate states it.
   */
  static Optional<Quantity> of(Facts facts, Device load) {
    Optional<Branch> branch = facts.branchOf(load);
    Optional<SupplySystem> system = branch.flatMap(facts::systemOf);
    if (system.isEmpty() || load.voltAmperes() == 0 || load.facts().containsKey("maximum-breaker")
        || !isAlone(facts, branch.get(), load)) {
      return Optional.empty();
    }
    double amperes = 0;
    for (Complex current : CircuitLoad.currents(load, branch.get(), system.get(), Math.max(2, branch.get().hots().size()))) {
      amperes = Math.max(amperes, current.magnitude());
    }
    LoadClass loadClass = load.kind().loadClass().orElse(LoadClass.GENERAL_OUTLET);
    if (WATER.contains(loadClass)) {
      // Of its rated current: on a lower voltage than it is made for a heater draws less, by the same part.
      double rated = amperes * Math.max(1, Math.sqrt(load.nameplateVoltAmperes() / load.voltAmperes()));
      return most(facts, "appliance-breaker", "appliance-breaker-least", rated, true);
    } else if (new WelderCurrents(facts.library()).effective(load, amperes).isPresent()) {
      return most(facts, "welder-breaker", "appliance-breaker-least", amperes, true);
    } else if (CircuitLoad.isMotor(load)
        && facts.breakersOf(branch.get()).stream().allMatch(b -> b.device() == Breaker.Device.BREAKER)) {
      boolean hermetic = loadClass == LoadClass.COOLING || loadClass == LoadClass.HEAT_PUMP;
      return most(facts, hermetic ? "hermetic-breaker" : "motor-breaker", "motor-circuit-least", amperes, !hermetic);
    }
    return Optional.empty();
  }

  private static boolean isAlone(Facts facts, Branch branch, Device load) {
    List<Device> others = facts.devicesOf(branch).stream()
        .filter(d -> d != load && d.status() != Status.TO_REMOVE && !PASSIVE.contains(d.kind().family())).toList();
    return others.isEmpty();
  }

  /** So much of the current to a standard rating, and what is allowed of any load at least. */
  private static Optional<Quantity> most(Facts facts, String limit, String least, double amperes, boolean nextAbove) {
    return LargerBreaker.rated(facts, limit, amperes, nextAbove)
        .map(most -> facts.library().limit(least).map(l -> Quantity.of(Math.max(most.si(), l.value().si()), Units.AMPERE)).orElse(most));
  }
}
