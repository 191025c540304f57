package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import wattle.derivation.Derivation;
import wattle.faults.ClearingTime;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Role;
import wattle.network.Network;
import wattle.network.Solution;
import wattle.words.Caution;

/** The figures of one trial, worst first in every list; of conductors those that are open come first. */
public final class TrialResult {
  /** Volts from which a reading could be taken for a real one. */
  private static final double FLOATS = 1;

  private final House house;
  private final Scenario scenario;
  private final HouseNetwork network;
  private final Solution solution;
  private final Optional<Touched> touched;
  private final EarthFigures earth;
  private final Figures figures;
  private final Once<List<OutletReading>> outlets = new Once<>(this::readOutlets);
  private final Once<List<ConductorReading>> conductors = new Once<>(this::readConductors);
  private final Once<List<JointReading>> joints = new Once<>(this::readJoints);
  private final Once<List<MetalReading>> metals = new Once<>(this::readMetals);
  private final Once<List<OvercurrentReading>> overcurrents;
  private final Once<List<SourceReading>> sources;
  private final Once<List<BusReading>> buses;
  private final Once<List<ProtectionReading>> protections;
  private final Once<List<Danger>> dangers;
  private final Optional<Double> highest;
  private final Once<List<NeutralReading>> neutrals;
  private final Once<List<FeederReading>> feeders = new Once<>(() -> FeederReadings.list(this));

  /** The same with a person's hand on what is off its ground. */
  record Touched(HouseNetwork network, Solution solution) {}

  TrialResult(
      House house, Library library, Scenario scenario, HouseNetwork network, Solution solution, Optional<Touched> touched,
      EarthFigures earth, CarriedLimits limits) {
    this.house = house;
    this.scenario = scenario;
    this.network = network;
    this.solution = solution;
    this.touched = touched;
    this.earth = earth;
    figures = new Figures(network, solution);
    overcurrents = new Once<>(() -> new Overcurrents(house, library, network, figures).list());
    sources = new Once<>(() -> new SourceReadings(house, scenario, network, solution, figures).list());
    protections = new Once<>(() -> new Protections(house, library, scenario, network, solution, touched).list());
    neutrals = new Once<>(() -> NeutralReading.of(house, library, scenario));
    buses = new Once<>(() -> new BusReadings(house, network, solution).list());
    dangers = new Once<>(() -> Dangers.of(this, library, limits));
    highest = library.limit("voltage-above").map(l -> l.derivation("a").si());
  }

  /**
   * Voltage at a part of a device.
   *
   * @param fall from nominal, in per cent of it; below zero where the voltage is above
   * @param current that it draws; absent where it draws nothing
   * @param floating whether one of its conductors floats, as behind an open neutral with no load on; its voltage
   *     is then whatever a meter makes of it, and the figure means nothing
   */
  public record OutletReading(
      String device, String part, String branch, Derivation nominal, Derivation volts, Derivation fall,
      Optional<Derivation> current, boolean floating) {
    public String name() {
      return part.isEmpty() ? device : device + "." + part;
    }

    /** What the voltage is above nominal, in per cent of it; below zero where it is below. */
    public Derivation rise() {
      return Figures.rise(nominal, volts);
    }
  }

  /**
   * The feeder of a panel.
   *
   * @param from the breaker or service that it comes from
   * @param amps of the hot that carries most
   * @param neutral of its neutral; absent where it has none
   * @param nominal between its hots; to the neutral where it has one
   * @param volts there at the panel, the least of its pairs
   * @param fall from nominal up to the panel; below zero where the voltage is above
   * @param lost of nominal, on the feeder itself
   */
  public record FeederReading(
      String panel, String from, Derivation amps, Optional<Derivation> neutral, Derivation nominal, Derivation volts, Derivation fall,
      Derivation lost) {}

  /** Feeders of panels that the plan gives a run, in its order. */
  public List<FeederReading> feeders() {
    return feeders.get();
  }

  /** What is dangerous in it, or that nothing of what is looked for was found, in a line. */
  public String verdict() {
    return Verdict.of(this);
  }

  /**
   * One conductor of one run.
   *
   * @param run between what, such as {@code P to kitchen.c1}
   * @param branch empty for feeders and the service
   * @param point of the branch that the run ends at; 0 where there is no branch
   * @param role what it does on the branch; absent for feeders and the service
   * @param conductor such as {@code hot A}
   * @param color of its insulation, as an electrician names it; empty for a feeder and the service
   * @param watts lost in the run alone, its joint left out
   */
  public record ConductorReading(
      String run, String branch, int point, Optional<Role> role, String conductor, String color, boolean neutral, boolean open,
      Derivation amps, Derivation watts) {}

  /**
   * A joint with added resistance.
   *
   * @param watts in this trial
   * @param wattsAtFullLoad with the whole rating of the branch's breaker in it; absent where that is not known
   */
  public record JointReading(
      String at, String branch, String conductor, Derivation amps, Derivation watts, Optional<Derivation> wattsAtFullLoad) {}

  /**
   * Metal that may be touched.
   *
   * @param grounded whether a ground conductor comes to it at all
   * @param volts to far earth, with nobody touching
   * @param bodyAmps through a person who touches, for metal off its ground
   */
  public record MetalReading(String name, boolean lifted, boolean grounded, Derivation volts, Optional<Derivation> bodyAmps) {}

  /** A fault and what flows through it. */
  public record FaultReading(String at, String between, Derivation amps) {}

  /** A device at which hot and neutral are exchanged, and what its neutral contact stands at. */
  public record ReversedReading(String device, Derivation volts) {}

  /**
   * A breaker, fuse or main that carries more than its rating, and so opens sooner or later.
   *
   * @param name such as {@code breaker P/4}
   * @param feeds the branch or panel behind it
   * @param amps of the pole that carries most, as long as it is closed
   * @param share of the rating
   * @param opens within what time; absent for a fuse, which has a curve of its own make
   */
  public record OvercurrentReading(
      String name, String feeds, Derivation rating, Derivation amps, Derivation share, Optional<ClearingTime> opens) {}

  /** Name of the trial; empty for none. */
  public String name() {
    return scenario.name();
  }

  /** Whether a switch is off, or a device said to be. */
  public boolean isOff(String device) {
    return scenario.off().contains(device);
  }

  /** Whether a breaker is off. */
  public boolean isOpen(BreakerId breaker) {
    return scenario.openBreakers().contains(breaker);
  }

  /** Whether a panel is cut from its supply, by its main or by a transfer. */
  public boolean isMainOpen(String panel) {
    return scenario.supplies().openMains().contains(panel);
  }

  /** The branch that the events of the trial are about, else the one that is heated most; absent where nothing flows. */
  public Optional<String> mainBranch() {
    return scenario.branches().stream().findFirst()
        .or(() -> conductors().stream().filter(c -> !c.branch().isEmpty() && c.watts().si() > 0).map(ConductorReading::branch).findFirst());
  }

  /** The branches that the events are about; where there are none, {@link #mainBranch}. */
  public List<String> mainBranches() {
    List<String> named = scenario.branches();
    return named.isEmpty() ? mainBranch().stream().toList() : named;
  }

  /** What can hurt somebody, start a fire or ruin what is plugged in, the deadliest first. */
  public List<Danger> dangers() {
    return dangers.get();
  }

  /** What opens by itself on the way to a box, device or panel, and when; {@code nothing opens} where none does. */
  public String opens(String at) {
    return new Guards(this).opens(at);
  }

  Figures figures() {
    return figures;
  }

  House house() {
    return house;
  }

  Scenario scenario() {
    return scenario;
  }

  HouseNetwork network() {
    return network;
  }

  Solution solution() {
    return solution;
  }

  /** Names of what draws, in order. */
  public List<String> drawing() {
    return network.loads().stream().map(l -> l.outlet().name()).distinct().toList();
  }

  public List<OutletReading> outlets() {
    return outlets.get();
  }

  private List<OutletReading> readOutlets() {
    List<OutletReading> readings = new ArrayList<>();
    Map<HouseNetwork.Outlet, HouseNetwork.Drawing> drawing = new IdentityHashMap<>();
    network.loads().forEach(l -> drawing.putIfAbsent(l.outlet(), l));
    for (HouseNetwork.Outlet outlet : network.outlets()) {
      Derivation volts = figures.volts(outlet);
      Derivation nominal = figures.nominal(outlet);
      Optional<Derivation> current = Optional.ofNullable(drawing.get(outlet)).map(figures::loadAmps);
      readings.add(
          new OutletReading(
              outlet.device(), outlet.part(), outlet.branch(), nominal, volts, figures.fall(nominal, volts), current,
              volts.si() > FLOATS && (hangsOnNothing(outlet.box(), outlet.a()) || hangsOnNothing(outlet.box(), outlet.b()))));
    }
    // A voltage that is too high burns what is plugged in; one that is low does not.
    readings.sort(
        Comparator.comparing((OutletReading r) -> highest.filter(h -> -r.fall().si() > h).isEmpty())
            .thenComparing((OutletReading r) -> !r.floating()).thenComparingDouble(r -> -Math.abs(r.fall().si())));
    return List.copyOf(readings);
  }

  /** Whether a terminal, followed toward the source, ends at one that nothing holds. */
  private boolean hangsOnNothing(int box, int terminal) {
    int at = terminal;
    for (int b = box;; b = network.network().feeding(b)) {
      if (solution.isFloating(b, at)) {
        return true;
      }
      OptionalInt up = network.network().upstream(b, at);
      if (up.isEmpty()) {
        return false;
      }
      at = up.getAsInt();
    }
  }

  public List<ConductorReading> conductors() {
    return conductors.get();
  }

  private List<ConductorReading> readConductors() {
    List<ConductorReading> readings = new ArrayList<>();
    for (HouseNetwork.Conductor c : network.conductors()) {
      readings.add(
          new ConductorReading(
              c.run(), c.branch().orElse(""), c.point(), c.role(), c.name(), c.branch().isPresent() ? c.impedance().wire().color() : "",
              c.kind() == HouseNetwork.Kind.NEUTRAL, c.open(),
              figures.amps(c),
              figures.watts(c)));
    }
    readings.sort(
        Comparator.comparing((ConductorReading r) -> !r.open()).thenComparingDouble(r -> -r.watts().si()));
    return List.copyOf(readings);
  }

  public List<JointReading> joints() {
    return joints.get();
  }

  private List<JointReading> readJoints() {
    List<JointReading> readings = new ArrayList<>();
    for (HouseNetwork.Conductor c : network.conductors()) {
      if (c.joint() > 0) {
        String at = c.branch().isEmpty() ? c.panel().orElse("") : new Place(house.branches().get(c.branch().get()), c.point()).name();
        readings.add(
            new JointReading(
                at, c.branch().orElse(""), c.name(), figures.amps(c), figures.jointWatts(c, figures.amps(c)),
                fullLoad(c).map(full -> figures.jointWatts(c, full))));
      }
    }
    readings.sort(Comparator.comparingDouble(r -> -r.watts().si()));
    return List.copyOf(readings);
  }

  private Optional<Derivation> fullLoad(HouseNetwork.Conductor conductor) {
    return conductor
        .branch()
        .map(house.branches()::get)
        .flatMap(b -> Ratings.of(b, house))
        .map(r -> Derivation.stated("rating of the breaker", "I", r));
  }

  public List<MetalReading> metals() {
    return metals.get();
  }

  private List<MetalReading> readMetals() {
    List<MetalReading> readings = new ArrayList<>();
    for (HouseNetwork.Metal metal : network.metals()) {
      Optional<Derivation> body = metal.lifted() ? bodyAmps(metal) : Optional.empty();
      readings.add(new MetalReading(metal.name(), metal.lifted(), isGrounded(metal), figures.toEarth(metal), body));
    }
    readings.sort(Comparator.comparingDouble(r -> -r.volts().si()));
    return List.copyOf(readings);
  }

  private boolean isGrounded(HouseNetwork.Metal metal) {
    return !metal.lifted() || Place.of(house, metal.name()).flatMap(p -> p.role(wattle.model.Event.Conductor.GROUND)).isPresent();
  }

  private Optional<Derivation> bodyAmps(HouseNetwork.Metal metal) {
    return touched.flatMap(
        t -> t.network().metals().stream()
            .filter(m -> m.lifted() && m.name().equals(metal.name()))
            .findFirst()
            .map(m -> figures.bodyAmps(m.name(), t.solution().volts(m.box(), m.terminal(), Network.EARTH).magnitude(), earth.body())));
  }

  /** What carries more than its rating, the greatest share of it first. */
  public List<OvercurrentReading> overcurrents() {
    return overcurrents.get();
  }

  /** What feeds the house, where that is not the supplier's network alone; empty else. */
  public List<SourceReading> sources() {
    return scenario.supplies().isUsual() ? List.of() : sources.get();
  }

  /** Bus bars of panels that a back-fed way is in; empty where the supplier's network alone feeds the house. */
  public List<BusReading> buses() {
    return scenario.supplies().isUsual() ? List.of() : buses.get();
  }

  /** Ground-fault and arc-fault protection that trips, may trip, or guards a branch on which something is wrong. */
  public List<ProtectionReading> protections() {
    List<String> about = new ArrayList<>(scenario.branches());
    scenario.reversed().forEach(d -> Place.of(house, d).ifPresent(p -> about.add(p.branch().name())));
    return allProtections().stream().filter(p -> p.verdict() != ProtectionReading.Verdict.HOLDS || guardsOneOf(p, about)).toList();
  }

  private boolean guardsOneOf(ProtectionReading reading, List<String> branches) {
    return branches.contains(reading.guards())
        || Place.of(house, reading.name()).filter(p -> branches.contains(p.branch().name())).isPresent();
  }

  /** Shared neutrals that loads up to the breakers can give more than the hots carry, on the legs of this trial; the warmest first. */
  public List<NeutralReading> neutrals() {
    return neutrals.get();
  }

  /** All of it. */
  List<ProtectionReading> allProtections() {
    return protections.get();
  }

  List<SourceReading> allSources() {
    return sources.get();
  }

  List<BusReading> allBuses() {
    return buses.get();
  }

  public List<FaultReading> faults() {
    return network.faults().stream()
        .map(
            f -> new FaultReading(
                f.fault().at(), word(f.fault().from()) + " to " + word(f.fault().to()), figures.faultAmps(f)))
        .sorted(Comparator.comparingDouble(r -> -r.amps().si()))
        .toList();
  }

  private static String word(wattle.model.Event.Conductor conductor) {
    return switch (conductor) {
      case HOT -> "hot";
      case HOT_2 -> "other-hot";
      case HOT_3 -> "third hot";
      case NEUTRAL -> "neutral";
      case GROUND -> "ground";
    };
  }

  public List<ReversedReading> reversed() {
    List<ReversedReading> readings = new ArrayList<>();
    for (HouseNetwork.Outlet outlet : network.outlets()) {
      if (scenario.reversed().contains(outlet.device())) {
        readings.add(new ReversedReading(outlet.name(), figures.hotToEarth(outlet)));
      }
    }
    return readings;
  }

  /** Watts lost in all runs and joints. */
  public double wattsLost() {
    return network.conductors().stream().mapToDouble(c -> solution.wattsLost(c.box(), c.local())).sum();
  }

  /** What a reader must know to judge the figures. */
  public List<String> notes() {
    List<String> notes = new ArrayList<>();
    notes.add("Conductors at " + WireImpedance.temperature(house.units())
        + ". Switches are on unless an event says otherwise; the figures are those before any breaker opens.");
    long open = house.branches().values().stream().map(Branch::sections).flatMap(List::stream).filter(s -> s.length().isEmpty()).count();
    if (open > 0) {
      notes.add(
          open + (open == 1 ? " run has" : " runs have") + " no length yet and " + (open == 1 ? "counts" : "count") + " as having none.");
    }
    if (house.services().values().stream().anyMatch(s -> s.source().isEmpty())) {
      notes.add("A service states no source: its voltage is assumed to be steady where the service run begins.");
    }
    if (!scenario.lifted().isEmpty() || scenario.serviceNeutralOpen()) {
      notes.add("Earth: the transformer's neutral by " + earth.supply().value().text() + ", a person by " + earth.body().value().text()
          + ", electrodes without a stated resistance at the usual figure for their kind; soils differ tenfold.");
    }
    if (scenario.supplies().has(Supplies.Part.HOLDS)) {
      notes.add("A source of the house that sets the voltage: " + (scenario.faults().isEmpty()
          ? "its regulator is assumed to keep it steady at the terminals."
          : "as in the first cycles of a fault, a generator through its subtransient reactance, an inverter within the current that it "
              + "lets into a fault."));
    }
    if (scenario.supplies().has(Supplies.Part.FOLLOWS) || scenario.supplies().has(Supplies.Part.STOPPED)) {
      notes.add(
          "A grid-following inverter stops when nothing sets the voltage. Do not rely on that: switch off and lock every source.");
    }
    notes.add(
        Caution.LONG);
    return notes;
  }
}
