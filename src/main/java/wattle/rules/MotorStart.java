package wattle.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Impedance;
import wattle.library.Limit;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.motors.LockedRotor;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * What is left of its voltage at a motor while it does not turn yet: the motor is the impedance of its locked rotor, in series with
 * the wires of its branch and of the feeders before it at 75 °C (common practice). The service run and the transformer, which the
 * supplier answers for, are left out; a trial of the start has them.
 *
 * @param amperes with its rotor locked, at its rated voltage
 * @param sum how that is known, for a message
 * @param fall of the nominal voltage, as a part of it
 */
record MotorStart(double amperes, String sum, double fall) {
  private static final double HOT_CELSIUS = 75;

  /** Where a motor is and what feeds it. */
  private record Fed(Device motor, Branch branch, LockedRotor start, double powerFactor, double hertz) {
    boolean threePhase() {
      return motor.kind().isThreePhase();
    }

    boolean toNeutral() {
      return motor.loads().stream().allMatch(l -> l.connection() instanceof Load.Connection.HotToNeutral);
    }
  }

  /** Absent for what is no motor, what nothing is known of, and where a length or a table is missing. */
  static Optional<MotorStart> of(Facts facts, Device device) {
    return fed(facts, device).flatMap(
        f -> fall(facts, f, Optional.empty())
            .map(fall -> new MotorStart(f.start.amperes().si(), sum(f), fall)));
  }

  /** The thinnest size of the same metal for the whole branch, with which the fall is at most a limit. */
  static Optional<WireSize> sizeWithin(Facts facts, Device device, double most) {
    return fed(facts, device).flatMap(f -> {
      Wire hot = f.branch.wiring().hot();
      return facts.conductors().ampacities().sizes(hot.metal()).stream()
          .filter(s -> s.compareTo(hot.size()) > 0)
          .filter(s -> fall(facts, f, Optional.of(s)).filter(d -> d <= most).isPresent())
          .findFirst();
    });
  }

  private static String sum(Fed fed) {
    String amperes = CircuitLoad.amperes(fed.start.amperes().si());
    if (fed.motor.facts().containsKey(LockedRotor.FIGURE)) {
      return amperes + " by its nameplate";
    }
    return LockedRotor.letter(fed.motor).filter(l -> LockedRotor.horsepower(fed.motor).isPresent())
        .map(l -> amperes + ": code letter " + l + " at " + LockedRotor.horsepower(fed.motor).get())
        .orElse(amperes + ", six times its current, since the plan states neither its LRA nor its code letter");
  }

  private static Optional<Fed> fed(Facts facts, Device device) {
    Optional<Branch> branch = facts.branchOf(device).filter(b -> !b.hots().isEmpty());
    Optional<SupplySystem> system = branch.flatMap(facts::systemOf);
    if (!CircuitLoad.isMotor(device) || system.isEmpty()) {
      return Optional.empty();
    }
    boolean across = device.loads().stream().anyMatch(l -> l.connection() instanceof Load.Connection.HotToHot);
    double nominal = across ? system.get().legToLegVolts() : system.get().legToNeutralVolts();
    double running = 0;
    for (Complex each : CircuitLoad.currents(device, branch.get(), system.get(), Math.max(3, branch.get().hots().size()))) {
      running = Math.max(running, each.magnitude());
    }
    double fullLoad = running;
    double hertz = facts.panelOf(branch.get()).flatMap(facts.house()::serviceOf).map(Service::hertz).orElse(60.0);
    return facts.library().limit("start-power-factor").map(Limit::value).map(Quantity::si)
        .filter(p -> fullLoad > 0)
        .flatMap(
            p -> LockedRotor.stated(facts.library(), device, nominal)
                .or(() -> facts.takesUsual("locked-rotor", device)
                    ? LockedRotor.usual(facts.library(), device, fullLoad, nominal)
                    : Optional.empty())
                .map(start -> new Fed(device, branch.get(), start, p, hertz)));
  }

  /** @param instead size of the whole branch, where it is thicker than what is there */
  private static Optional<Double> fall(Facts facts, Fed fed, Optional<WireSize> instead) {
    Optional<Complex> branch = ofBranch(facts, fed, instead);
    Optional<Complex> before = facts.panelOf(fed.branch).flatMap(p -> ofFeeders(facts, fed, p));
    if (branch.isEmpty() || before.isEmpty()) {
      return Optional.empty();
    }
    double phases = fed.threePhase() ? Math.sqrt(3) : 1;
    Complex rotor = new Complex(fed.powerFactor, Math.sqrt(1 - fed.powerFactor * fed.powerFactor))
        .times(fed.start.ratedVolts() / (phases * fed.start.amperes().si()));
    Complex wires = branch.get().plus(before.get());
    return Optional.of(1 - rotor.magnitude() / rotor.plus(wires).magnitude());
  }

  private static Optional<Complex> ofBranch(Facts facts, Fed fed, Optional<WireSize> instead) {
    Complex sum = Complex.ZERO;
    for (Section section : Facts.wayTo(fed.branch, facts.pointIndexOf(fed.motor))) {
      Optional<Complex> each = section.length().flatMap(l -> loop(facts, fed, section.wiring(), l.si(), instead));
      if (each.isEmpty()) {
        return Optional.empty();
      }
      sum = sum.plus(each.get());
    }
    return Optional.of(sum);
  }

  private static Optional<Complex> ofFeeders(Facts facts, Fed fed, Panel panel) {
    Complex sum = Complex.ZERO;
    Set<String> seen = new HashSet<>();
    for (Panel at = panel; at.supply() instanceof PanelSupply.FromBreaker from && seen.add(at.name());) {
      Optional<Stretch> stretch = at.feeder();
      Optional<Complex> each = stretch.flatMap(Stretch::length)
          .flatMap(l -> loop(facts, fed, stretch.get().wiring(), l.si(), Optional.empty()));
      Panel before = facts.house().panels().get(from.breaker().panel());
      if (each.isEmpty() || before == null) {
        return Optional.empty();
      }
      sum = sum.plus(each.get());
      at = before;
    }
    return Optional.of(sum);
  }

  /** Out and back; in a three-phase run one way alone, since the currents of its hots are each other's way back. */
  private static Optional<Complex> loop(Facts facts, Fed fed, Wiring wiring, double meters, Optional<WireSize> instead) {
    Wire hot = wiring.hot();
    List<Wire> wires = fed.threePhase()
        ? List.of(hot)
        : List.of(hot, fed.toNeutral() ? wiring.neutral().orElse(hot) : hot);
    Complex sum = Complex.ZERO;
    for (Wire wire : wires) {
      Wire used = instead.filter(s -> s.compareTo(wire.size()) > 0).map(s -> new Wire(wire.purpose(), s, wire.metal(), wire.color()))
          .orElse(wire);
      Optional<Impedance> impedance = facts.conductors().impedances().of(used, wiring);
      if (impedance.isEmpty()) {
        return Optional.empty();
      }
      sum = sum.plus(
          new Complex(impedance.get().ohmsPerMeter(HOT_CELSIUS), impedance.get().reactanceOhmsPerMeter(fed.hertz)).times(meters));
    }
    return Optional.of(sum);
  }

  /** In percent. */
  Quantity percent() {
    return Quantity.of(100 * fall, Units.PERCENT);
  }
}
