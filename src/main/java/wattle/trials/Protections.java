package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import wattle.derivation.Derivation;
import wattle.faults.TripCurves;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Protection;
import wattle.quantity.Units;
import wattle.trials.ProtectionReading.Verdict;

/**
 * Ground-fault and arc-fault protection in a trial. Ground-fault protection is computed: it compares what goes out with what
 * comes back. Arc-fault protection listens for the noise of an arc, which no network of impedances has; only the currents
 * that its product standard tries it with can be told.
 */
final class Protections {
  /** Residual amperes that are rounding alone. */
  private static final double ROUNDING = 1e-6;

  private final House house;
  private final Library library;
  private final Scenario scenario;
  private final HouseNetwork network;
  private final wattle.network.Solution solution;
  private final Residuals quiet;
  private final Optional<Residuals> hand;
  private final List<ProtectionReading> readings = new ArrayList<>();

  Protections(House house, Library library, Scenario scenario, HouseNetwork network, wattle.network.Solution solution,
      Optional<TrialResult.Touched> touched) {
    this.house = house;
    this.library = library;
    this.scenario = scenario;
    this.network = network;
    this.solution = solution;
    quiet = new Residuals(house, network, solution);
    hand = touched.map(t -> new Residuals(house, t.network(), t.solution()));
  }

  /** What trips first, then what may, in the order of the plan; what holds last. */
  List<ProtectionReading> list() {
    for (Branch branch : house.branches().values()) {
      for (Breaker breaker : breakersOf(branch)) {
        branch(branch, breaker);
      }
      for (int p = 0; p < branch.points().size(); p++) {
        for (String name : branch.points().get(p).devices()) {
          device(house.devices().get(name), new Place(branch, p, Optional.of(name)));
        }
      }
    }
    for (Panel panel : house.panels().values()) {
      feeder(panel);
    }
    readings.sort(Comparator.comparing(ProtectionReading::verdict));
    return List.copyOf(readings);
  }

  private List<Breaker> breakersOf(Branch branch) {
    return branch.hots().stream().map(h -> h.breaker()).distinct().flatMap(b -> house.breaker(b).stream()).toList();
  }

  private void branch(Branch branch, Breaker breaker) {
    if (breaker.protections().contains(Protection.GROUND_FAULT)) {
      boolean iec = breaker.trip().isPresent() || TripCurves.isOfIec(house.panels().get(breaker.id().panel()).system());
      residual("breaker " + breaker.id(), branch.name(), r -> r.ofBreaker(branch, breaker.id()),
          new ResidualTrip(library, iec, breaker.residual()), groundedNeutral(branch, Residuals.beyond(branch, 0)));
    }
    if (breaker.protections().contains(Protection.ARC_FAULT)) {
      arc("breaker " + breaker.id(), branch, Residuals.beyond(branch, 0));
    }
  }

  private void device(Device device, Place place) {
    if (device == null) {
      return;
    }
    boolean onward = device.traits().contains("protects-onward");
    Set<Integer> guarded = onward ? Residuals.beyond(place.branch(), place.point()) : Set.of(place.point());
    if (device.kind().protections().contains(Protection.GROUND_FAULT)) {
      boolean iec = place.branch().panel().map(house.panels()::get).filter(p -> TripCurves.isOfIec(p.system())).isPresent();
      residual(device.name(), onward ? "itself and what is wired downstream" : "itself",
          r -> Optional.of(r.ofDevice(device.name(), place, onward)), new ResidualTrip(library, iec, Optional.empty()),
          groundedNeutral(place.branch(), guarded));
    }
    if (device.kind().protections().contains(Protection.ARC_FAULT)) {
      arc(device.name(), place.branch(), guarded);
    }
  }

  private void feeder(Panel panel) {
    if (panel.supply() instanceof wattle.model.PanelSupply.FromBreaker from) {
      house.breaker(from.breaker())
          .filter(b -> b.protections().contains(Protection.GROUND_FAULT))
          .ifPresent(b -> residual("breaker " + b.id(), "panel " + panel.name(), r -> r.ofFeeder(b, panel),
              new ResidualTrip(library, b.trip().isPresent() || TripCurves.isOfIec(panel.system()), b.residual()), false));
    }
  }

  /** Whether neutral and ground touch behind protection closely enough for its own test of the neutral to sense it. */
  private boolean groundedNeutral(Branch branch, Set<Integer> points) {
    double most = library.limit("grounded-neutral").map(Limit::value).map(q -> q.si()).orElse(2.0);
    return scenario.faults().stream()
        .anyMatch(f -> f.branch().equals(Optional.of(branch.name())) && points.contains(f.point()) && f.ohms() <= most
            && Set.of(f.from(), f.to()).equals(Set.of(Event.Conductor.NEUTRAL, Event.Conductor.GROUND)));
  }

  private void residual(String name, String guards, Function<Residuals, Optional<Double>> reader, ResidualTrip trip,
      boolean groundedNeutral) {
    Optional<Double> amps = reader.apply(quiet);
    if (amps.isEmpty()) {
      return;
    }
    Derivation residual = derivation(name, amps.get(), "Hots and neutral together, with nobody touching.");
    Optional<Derivation> touched = hand.flatMap(reader).filter(a -> Math.abs(a - amps.get()) > ROUNDING)
        .map(a -> derivation(name, a, "With a person's hand on metal that has lost its ground."));
    Verdict untouched = verdict(residual, trip, Verdict.TRIPS, Verdict.MAY);
    Verdict verdict = untouched;
    Derivation by = residual;
    if (untouched == Verdict.HOLDS && touched.isPresent()) {
      verdict = verdict(touched.get(), trip, Verdict.TRIPS_ON_TOUCH, Verdict.MAY_ON_TOUCH);
      by = touched.get();
    }
    String because = trip.words();
    if (verdict == Verdict.HOLDS && groundedNeutral) {
      verdict = Verdict.MAY;
      because = trip.standard()
          + " requires it to detect a grounded neutral by its own signal, which is not calculated; the residual current alone does "
          + "not trip it";
    }
    readings.add(new ProtectionReading(name, Protection.GROUND_FAULT.word(), guards, Optional.of(residual), touched, verdict,
        trip.within(by), because));
  }

  private static Verdict verdict(Derivation residual, ResidualTrip trip, Verdict must, Verdict may) {
    return residual.si() >= trip.must().si() * (1 - 1e-9) ? must : residual.si() < trip.holdsBelow() ? Verdict.HOLDS : may;
  }

  private static Derivation derivation(String name, double amps, String remark) {
    return Figures.solved("residual current of " + name, amps < ROUNDING ? 0 : amps, Units.AMPERE, remark);
  }

  /** Only where a joint or a fault of the trial lies behind it. */
  private void arc(String name, Branch branch, Set<Integer> points) {
    double series = library.limit("arc-fault-series").map(Limit::value).map(q -> q.si()).orElse(5.0);
    double parallel = library.limit("arc-fault-parallel").map(Limit::value).map(q -> q.si()).orElse(75.0);
    for (HouseNetwork.Conductor c : network.conductors()) {
      if (c.joint() > 0 && c.branch().equals(Optional.of(branch.name())) && points.contains(c.point())) {
        double amps = solution.amps(c.box(), c.local()).magnitude();
        arc(name, branch, "a glowing joint makes no arc and is not detected; arcing in series at " + amperes(amps)
            + (amps < series ? " is below the " : " is above the ") + amperes(series) + " where its standard begins");
      }
    }
    for (HouseNetwork.Faulting f : network.faults()) {
      if (f.fault().branch().equals(Optional.of(branch.name())) && points.contains(f.fault().point())) {
        double amps = solution.elementAmps(f.element()).magnitude();
        if (amps < series) {
          continue; // a leakage, and no arc that anything is tried with
        }
        arc(name, branch, "whether the fault arcs is not calculated; " + amperes(amps)
            + (amps < parallel ? " is below the " : " is above the ") + amperes(parallel) + " where its standard begins");
      }
    }
  }

  private static String amperes(double amps) {
    return wattle.quantity.Quantity.plain(amps, 3) + " A";
  }

  private void arc(String name, Branch branch, String because) {
    readings.add(new ProtectionReading(name, Protection.ARC_FAULT.word(), branch.name(), Optional.empty(), Optional.empty(),
        Verdict.UNKNOWN, Optional.empty(), because));
  }
}
