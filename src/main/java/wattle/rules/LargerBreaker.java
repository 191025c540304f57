package wattle.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.LoadClass;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.motors.WelderCurrents;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The breaker that the article of a load allows although it is above the ampacity of the conductors (NFPA 70 240.4(G), CSA C22.1 14-104 1)
 * c)): their overload protection is in the load, or the load cannot grow. It guards against short circuits and ground faults alone.
 */
final class LargerBreaker {
  private static final Set<Family> PASSIVE = Set.of(Family.JUNCTION, Family.SWITCH);

  private LargerBreaker() {}

  /** Absent where no such article applies. */
  static Optional<Quantity> of(Facts facts, RunOf run) {
    List<Device> devices = facts.devicesOf(run.branch()).stream()
        .filter(d -> d.status() != Status.TO_REMOVE && !PASSIVE.contains(d.kind().family())).toList();
    Optional<Quantity> heating = heating(facts, run, devices);
    if (heating.isPresent()) {
      return heating;
    }
    if (devices.size() != 1) {
      return tap(facts, run);
    }
    Device load = devices.get(0);
    Quantity marked = load.facts().get("maximum-breaker");
    return marked != null ? Optional.of(marked) : forLoad(facts, run, load).or(() -> tap(facts, run));
  }

  /**
   * Fixed resistance heating alone (CSA C22.1 62-114 7) and 8)): the breaker may be so much above the ampacity, and the next standard
   * rating above that. A small conductor counts with no more than the breaker that it may have otherwise, as the trade's guides do.
   */
  private static Optional<Quantity> heating(Facts facts, RunOf run, List<Device> devices) {
    Optional<Limit> times = facts.library().limit("heating-breaker");
    Optional<Quantity> rating = CircuitCheck.rating(facts, run);
    if (times.isEmpty() || rating.isEmpty() || devices.isEmpty() || !devices.stream().allMatch(CircuitLoad::isHeating)) {
      return Optional.empty();
    }
    Wire hot = run.section().wiring().hot();
    var breakers = facts.conductors().breakers();
    double small = breakers.ceiling(hot.size(), hot.metal()).map(Derivation::si).orElse(Double.MAX_VALUE);
    return CircuitCheck.conditions(facts, run)
        .flatMap(c -> facts.conductors().ampacities()
            .between(c, Derivation.stated("rating", "I", rating.get()), CircuitCheck.marked(facts, run, rating.get())))
        .map(a -> times.get().value().si() * Math.min(a.si(), small))
        .flatMap(most -> breakers.notBelow(Derivation.stated("current", "I", Quantity.of(most, Units.AMPERE))))
        .flatMap(Derivation::quantity);
  }

  private static Optional<Quantity> forLoad(Facts facts, RunOf run, Device load) {
    Optional<SupplySystem> system = facts.systemOf(run.branch());
    if (system.isEmpty() || load.voltAmperes() == 0) {
      return Optional.empty();
    }
    double amperes = 0;
    for (Complex current : CircuitLoad.currents(load, run.branch(), system.get(), Math.max(2, run.branch().hots().size()))) {
      amperes = Math.max(amperes, current.magnitude());
    }
    LoadClass loadClass = load.kind().loadClass().orElseThrow();
    boolean hermetic = loadClass == LoadClass.COOLING || loadClass == LoadClass.HEAT_PUMP;
    if (new WelderCurrents(facts.library()).effective(load, amperes).isPresent()) {
      // 630.12(A) and (B): the same part of either.
      double primary = amperes;
      return ampacity(facts, run).flatMap(a -> rated(facts, "welder-breaker", Math.min(primary, a), true));
    } else if (CircuitLoad.isMotor(load)) {
      return rated(facts, hermetic ? "hermetic-breaker" : "motor-breaker", amperes, !hermetic);
    }
    return Optional.empty();
  }

  private static Optional<Double> ampacity(Facts facts, RunOf run) {
    return CircuitCheck.conditions(facts, run).flatMap(c -> facts.conductors().ampacities().of(c)).map(a -> a.amperes());
  }

  /** The standard rating at so many times the current: the next above for motors, not above for compressors. */
  static Optional<Quantity> rated(Facts facts, String limit, double amperes, boolean nextAbove) {
    return facts.library().limit(limit).map(Limit::value).flatMap(times -> {
      Derivation most = Derivation.stated("current", "I", Quantity.of(times.si() * amperes, Units.AMPERE));
      var breakers = facts.conductors().breakers();
      // No breaker below 15 A is asked for anything (440.22(A)).
      return (nextAbove ? breakers.notBelow(most) : breakers.notAbove(most)).flatMap(Derivation::quantity)
          .map(q -> q.si() < 15 ? Quantity.of(15, Units.AMPERE) : q);
    });
  }

  /** A tap to one cooking appliance on the circuit of a range (NFPA 70 210.19(C), exception 1). */
  private static Optional<Quantity> tap(Facts facts, RunOf run) {
    Library library = facts.library();
    Optional<Limit> circuit = library.limit("range-tap-circuit");
    Optional<Limit> least = library.limit("range-tap-least");
    Optional<Quantity> rating = facts.breakersOf(run.branch()).stream().findFirst().flatMap(Breaker::rating);
    Optional<Double> ampacity = ampacity(facts, run);
    boolean cooking = CircuitLoad.beyond(facts, run.branch(), run.section()).stream()
        .filter(d -> !PASSIVE.contains(d.kind().family()))
        .allMatch(d -> d.kind().loadClass().filter(c -> c == LoadClass.COOKING).isPresent());
    boolean fromThicker = run.branch().sections().stream().anyMatch(
        s -> s.to() == run.section().from() && s.wiring().hot().size().compareTo(run.section().wiring().hot().size()) > 0);
    boolean taps = circuit.isPresent() && least.isPresent() && rating.isPresent() && ampacity.isPresent() && cooking && fromThicker
        && rating.get().si() <= circuit.get().value().si() && ampacity.get() >= least.get().value().si();
    return taps ? rating : Optional.empty();
  }
}
