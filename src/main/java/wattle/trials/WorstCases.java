package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.conductors.NeutralHeat;
import wattle.library.Library;
import wattle.model.BranchHot;
import wattle.conductors.RunningTemperature;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The worst that a house can come to without anything being wrong in it: no trial, only loads up to the breakers.
 */
public final class WorstCases {
  private static final String FOR_HOURS = "The full rating in every hot, for hours.";

  private final House house;
  private final Library library;
  private final SolvedTrials trials;
  private final Supplier<Conductors> conductors;

  /** @param conductors of the house, asked for when a run is */
  public WorstCases(House house, Library library, SolvedTrials trials, Supplier<Conductors> conductors) {
    this.house = house;
    this.library = library;
    this.trials = trials;
    this.conductors = conductors;
  }

  /** That of the conductors where the voltage is worked out, in words. */
  public String temperature() {
    return WireImpedance.temperature(house.units());
  }

  /**
   * The neutral that two or more hots return on.
   *
   * @param legs of the hots, in order
   * @param worst the largest current that loads up to the breakers can put in it
   * @param stated with every stated load on
   */
  public record NeutralCase(String branch, List<String> legs, Derivation worst, Derivation stated) {}

  /**
   * Voltage at a part of a device.
   *
   * @param atFullLoad with the whole rating of the breaker drawn at this outlet and nothing else on; absent where the
   *     rating is not known
   * @param stated with every stated load on
   */
  public record VoltageCase(
      String outlet, String branch, Derivation nominal, Optional<Derivation> atFullLoad, Optional<Derivation> fall,
      Derivation stated, Derivation statedFall) {}

  /**
   * A run with the whole rating of its breaker in its hots, or the most that several hots can put in their shared neutral.
   *
   * @param branch empty for a feeder and the run of a service
   * @param temperature absent where no steady one exists, or a table lacks the conductor
   * @param heat of one conductor, for each meter
   */
  public record HeatCase(
      String branch, String run, String wiring, Derivation current, double ratedCelsius, Optional<Derivation> temperature,
      Optional<Derivation> heat) {}

  // ---- Neutrals

  /** Worst first. */
  public List<NeutralCase> neutrals() {
    TrialResult stated = trials.stated();
    Figures figures = new Figures(stated.network(), stated.solution());
    List<NeutralCase> cases = new ArrayList<>();
    for (Branch branch : house.branches().values()) {
      Optional<SupplySystem> system = branch.panel().map(house.panels()::get).map(Panel::system);
      if (branch.sharesNeutral() && system.isPresent()) {
        Optional<HouseNetwork.Conductor> first = stated.network().conductors().stream()
            .filter(c -> c.kind() == HouseNetwork.Kind.NEUTRAL && c.branch().equals(Optional.of(branch.name())))
            .max(Comparator.comparingDouble(c -> stated.solution().amps(c.box(), c.local()).magnitude()));
        Optional<Derivation> worst = worst(branch, system.get());
        if (first.isPresent() && worst.isPresent()) {
          cases.add(new NeutralCase(branch.name(), legs(branch), worst.get(), figures.amps(first.get())));
        }
      }
    }
    cases.sort(Comparator.comparingDouble(c -> -c.worst().si()));
    return cases;
  }

  private static List<String> legs(Branch branch) {
    return branch.hots().stream().map(h -> h.leg().map(Leg::name).orElse("?")).toList();
  }

  private Optional<Derivation> worst(Branch branch, SupplySystem system) {
    return GreatestNeutral.of(house, branch, branch.hots().stream().map(BranchHot::leg).toList(), system);
  }

  // ---- Voltages

  /** Largest fall first. */
  public List<VoltageCase> voltages() {
    TrialResult stated = trials.stated();
    Figures figures = new Figures(stated.network(), stated.solution());
    List<VoltageCase> cases = new ArrayList<>();
    for (HouseNetwork.Outlet outlet : stated.network().outlets()) {
      Derivation nominal = figures.nominal(outlet);
      Derivation now = figures.volts(outlet);
      Optional<Derivation> full = atFullLoad(outlet, nominal, figures);
      cases.add(
          new VoltageCase(
              outlet.name(), outlet.branch(), nominal, full, full.map(f -> figures.fall(nominal, f)), now,
              figures.fall(nominal, now)));
    }
    cases.sort(Comparator.comparingDouble(c -> -Math.max(c.fall().map(Derivation::si).orElse(0.0), c.statedFall().si())));
    return cases;
  }

  private Optional<Derivation> atFullLoad(HouseNetwork.Outlet outlet, Derivation nominal, Figures figures) {
    Branch branch = house.branches().get(outlet.branch());
    Optional<Quantity> rating = Ratings.of(branch, house);
    if (rating.isEmpty()) {
      return Optional.empty();
    }
    Derivation current = Derivation.stated("rating of the breaker", "I", rating.get());
    List<Derivation> inputs = new ArrayList<>();
    Complex loop = Complex.ZERO;
    for (HouseNetwork.Conductor c : figures.onTheWay(outlet)) {
      if (c.role().isPresent() && c.role().get() instanceof Role.Traveler t && t.number() == 2) {
        continue; // one of two carries at a time
      }
      loop = loop.plus(c.impedance().ohms());
      inputs.add(figures.impedance(c).named(figures.impedance(c).name(), "Z_k"));
    }
    Derivation impedance = Derivation.computed(
        "impedance there and back", "Z", "|Σ Z_k|", new Value.Amount(Quantity.of(loop.magnitude(), Units.OHM)), inputs);
    double volts = FullLoad.voltsLeft(nominal.si(), loop, current.si());
    return Optional.of(
        Derivation.computed(
            "voltage at " + outlet.name() + " at full load", "U", "|U_n − I × Z|", volts, Units.VOLT, nominal, current, impedance)
            .remarking(
                (volts > 0 ? "" : "The drop would exceed the voltage: not even a short circuit here draws the full rating. ")
                    + "The full rating of the breaker is drawn here, at a power factor of 1, with nothing else on; nominal voltage "
                    + "where the service run begins. Impedances add as complex figures."));
  }

  // ---- Heat

  /** Nearest to the rating of its insulation first. */
  public List<HeatCase> heat() {
    Conductors conductors = this.conductors.get();
    List<HeatCase> cases = new ArrayList<>();
    for (Service service : house.services().values()) {
      service.run().ifPresent(
          run -> Ratings.ofService(service, house)
              .map(r -> rating("rating of the mains on the service", r, "The full rating of the mains in every hot, for hours."))
              .ifPresent(r -> cases.add(heat(run, service.system(), "", "service " + service.name(), r, conductors))));
    }
    for (Panel panel : house.panels().values()) {
      panel.feeder().ifPresent(
          run -> Ratings.ofFeeder(panel, house)
              .map(r -> rating("rating of the breaker of the feeder", r, FOR_HOURS))
              .ifPresent(r -> cases.add(heat(run, panel.system(), "", "feeder of " + panel.name(), r, conductors))));
    }
    for (Branch branch : house.branches().values()) {
      Optional<Derivation> rating = Ratings.of(branch, house).map(r -> rating("rating of the breaker", r, FOR_HOURS));
      for (Section section : branch.sections()) {
        rating.flatMap(r -> heat(branch, section, r, conductors)).ifPresent(cases::add);
      }
      sharedNeutral(branch).ifPresent(cases::add);
    }
    cases.sort(Comparator.comparingDouble(WorstCases::margin));
    return cases;
  }

  /** A neutral that the hots of its branch can give more than any of them carries, where it gets warmest. */
  private Optional<HeatCase> sharedNeutral(Branch branch) {
    Optional<SupplySystem> system = branch.panel().map(house.panels()::get).map(Panel::system);
    double rating = Ratings.of(branch, house).map(Quantity::si).orElse(Double.MAX_VALUE);
    return branch.sharesNeutral()
        ? system.flatMap(s -> worst(branch, s)).filter(w -> w.si() > rating * (1 + Overcurrents.ROUNDING))
            .flatMap(w -> NeutralHeat.of(house, library, branch, w).map(h -> new HeatCase(
                branch.name(), new Place(branch, h.section().from()).name() + " to " + new Place(branch, h.section().to()).name()
                    + ", its neutral",
                h.section().wiring().text(), w, h.ratedCelsius(), h.temperature(), h.heat())))
        : Optional.empty();
  }

  /** Kelvins left to the rating of the insulation; none where there is no steady temperature. */
  private static double margin(HeatCase heat) {
    return heat.temperature().map(t -> heat.ratedCelsius() - t.quantity().orElseThrow().in(Units.CELSIUS)).orElse(-1000.0);
  }

  private static Derivation rating(String name, Quantity rating, String remark) {
    return Derivation.stated(name, "I", rating).remarking(remark);
  }

  private static HeatCase heat(
      Stretch run, SupplySystem system, String branch, String name, Derivation current, Conductors conductors) {
    Wire hot = run.wiring().hot();
    return heat(branch, name, run.wiring(), hot, current, conductors.runs().of(run, system, hot), conductors);
  }

  private static Optional<HeatCase> heat(Branch branch, Section section, Derivation current, Conductors conductors) {
    Optional<ConductorUse> hot = section.conductors().stream()
        .filter(u -> u.role() instanceof Role.Hot || u.role() instanceof Role.SwitchLeg).findFirst();
    Optional<Conditions> conditions = hot.flatMap(h -> conductors.runs().of(branch, section, h.wire()));
    String run = new Place(branch, section.from()).name() + " to " + new Place(branch, section.to()).name();
    return conditions.map(c -> heat(branch.name(), run, section.wiring(), hot.get().wire(), current, c, conductors));
  }

  private static HeatCase heat(
      String branch, String run, Wiring wiring, Wire hot, Derivation current, Conditions conditions, Conductors conductors) {
    var ampacity = conductors.ampacities().of(conditions);
    var impedance = conductors.impedances().of(hot, wiring);
    Optional<Derivation> temperature = ampacity.flatMap(
        a -> impedance.flatMap(i -> RunningTemperature.derive(current, a, conditions, i.resistance())));
    Optional<Derivation> heat = ampacity.flatMap(
        a -> impedance.flatMap(
            i -> RunningTemperature.of(
                current.si(), a.base().si() * a.bundlingFactor().si(), conditions.insulationCelsius(),
                conditions.ambient().quantity().orElseThrow().in(Units.CELSIUS), i.resistance())
                .map(t -> t.heat(current, i.resistance()))));
    return new HeatCase(branch, run, wiring.text(), current, conditions.insulationCelsius(), temperature, heat);
  }
}
