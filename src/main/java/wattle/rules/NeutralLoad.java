package wattle.rules;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Device;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.network.Complex;
import wattle.quantity.Quantity;

/**
 * The neutral of a run held against what the stated loads beyond it return over it. Currents of several hots add as phasors. Two hots on
 * one leg, and a hot that carries more than its breaker, are other faults, and not judged here; nor is a neutral as thick as the hots.
 *
 * @param amperes with all stated loads beyond it on
 * @param ampacity after factors, and in the column of the terminals
 */
record NeutralLoad(double amperes, double ampacity) {
  /** Fractions of an ampere below a half are dropped (NFPA 70 220.5(B)). */
  private static final double ROUNDING = 0.5;

  boolean carries() {
    return amperes - ampacity < ROUNDING;
  }

  static Optional<NeutralLoad> of(Facts facts, RunOf run) {
    Optional<Wire> wire = run.section().conductors().stream().filter(u -> u.role() instanceof Role.Neutral).findFirst().map(u -> u.wire());
    Optional<SupplySystem> system = facts.systemOf(run.branch());
    Optional<Quantity> rating = CircuitCheck.rating(facts, run);
    Optional<Conditions> conditions = wire.flatMap(w -> facts.conductors().runs().of(run.branch(), run.section(), w));
    // As thick as the hots it carries no more than they do, each on a leg of its own: what is wrong then is wrong with them.
    if (wire.filter(w -> w.size().compareTo(run.section().wiring().hot().size()) < 0).isEmpty()) {
      return Optional.empty();
    }
    if (system.isEmpty() || rating.isEmpty() || conditions.isEmpty() || run.section().status() == Status.TO_REMOVE
        || !onOwnLegs(run.branch())) {
      return Optional.empty();
    }
    Optional<Double> amperes = amperes(facts, run.branch(), run.section(), system.get(), rating.get().si());
    Optional<Derivation> ends = facts.conductors().ampacities().atTerminals(conditions.get().size(), conditions.get().metal(),
        Derivation.stated("rating", "I", rating.get()), CircuitCheck.marked(facts, run, rating.get()));
    Optional<Ampacity> ampacity = facts.conductors().ampacities().of(conditions.get());
    return amperes.flatMap(a -> ampacity.flatMap(z -> ends.map(e -> new NeutralLoad(a, Math.min(z.amperes(), e.si())))));
  }

  private static boolean onOwnLegs(Branch branch) {
    Set<Leg> seen = EnumSet.noneOf(Leg.class);
    for (BranchHot hot : branch.hots()) {
      if (hot.leg().isEmpty() || !seen.add(hot.leg().get())) {
        return false;
      }
    }
    return true;
  }

  private static Optional<Double> amperes(Facts facts, Branch branch, Section section, SupplySystem system, double rating) {
    int hots = branch.hots().size();
    Complex sum = Complex.ZERO;
    double[] each = new double[hots];
    List<Device> devices = CircuitLoad.beyond(facts, branch, section);
    for (Device device : devices) {
      if (device.status() == Status.TO_REMOVE) {
        continue;
      }
      for (Load load : device.loads()) {
        if (load.connection() instanceof Load.Connection.HotToNeutral to && to.hot() < hots && load.voltAmperes() > 0) {
          Complex current = CircuitLoad.current(load, CircuitLoad.volts(branch, system, to.hot()));
          sum = sum.plus(current);
          each[to.hot()] += current.magnitude();
        }
      }
    }
    for (double hot : each) {
      if (hot > rating + ROUNDING) {
        return Optional.empty();
      }
    }
    return Optional.of(sum.magnitude());
  }
}
