package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import wattle.conductors.Impedance;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.network.Complex;
import wattle.network.Network;
import wattle.network.Solution;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/**
 * The figures of a solution, each with what it rests on: a voltage on the source and on the falls in the conductors on the
 * way, a current on the loads it serves, heat on current and resistance. Magnitudes are shown; they add as phasors.
 */
final class Figures {
  private static final String PHASORS = "Magnitudes are shown; they add as phasors, with their angles.";

  private static final Unit HERTZ = Units.find("Hz").orElseThrow();

  private final HouseNetwork network;
  private final Solution solution;
  private final Map<Integer, List<HouseNetwork.Conductor>> conductorsOf = new HashMap<>();
  private final Map<HouseNetwork.Conductor, List<HouseNetwork.Drawing>> loadsOf = new IdentityHashMap<>();

  // Figures that many others rest on, each made once; keys are conductors and loads as such, whatever they hold.
  private final Map<Object, Derivation> amps = new IdentityHashMap<>();
  private final Map<Object, Derivation> falls = new IdentityHashMap<>();
  private final Map<Object, Derivation> impedances = new IdentityHashMap<>();

  Figures(HouseNetwork network, Solution solution) {
    this.network = network;
    this.solution = solution;
    network.conductors().forEach(c -> conductorsOf.computeIfAbsent(c.box(), b -> new ArrayList<>()).add(c));
    for (HouseNetwork.Drawing load : network.loads()) {
      for (HouseNetwork.Conductor c : onTheWay(load.outlet())) {
        loadsOf.computeIfAbsent(c, k -> new ArrayList<>()).add(load);
      }
    }
  }

  private static Derivation once(Map<Object, Derivation> kept, Object key, Supplier<Derivation> maker) {
    synchronized (kept) {
      Derivation known = kept.get(key);
      if (known == null) {
        known = maker.get();
        kept.put(key, known);
      }
      return known;
    }
  }

  Derivation nominal(HouseNetwork.Outlet outlet) {
    return Derivation.stated("nominal voltage", "U_n", Quantity.of(outlet.nominalVolts(), Units.VOLT));
  }

  Derivation volts(HouseNetwork.Outlet outlet) {
    double volts = solution.volts(outlet.box(), outlet.a(), outlet.b()).magnitude();
    List<Derivation> inputs = new ArrayList<>(List.of(nominal(outlet)));
    for (HouseNetwork.Conductor c : onTheWay(outlet)) {
      inputs.add(fall(c));
    }
    fallInSource(outlet).ifPresent(inputs::add);
    return new Derivation(
        "voltage at " + outlet.name(), "U", amount(volts, Units.VOLT), Derivation.Basis.COMPUTED, "|U_n − Σ ΔU|", inputs,
        List.of(), PHASORS);
  }

  /** What of the nominal voltage is lost before the service run begins; absent where that is nothing. */
  private Optional<Derivation> fallInSource(HouseNetwork.Outlet outlet) {
    int root = outlet.box();
    while (network.network().feeding(root) >= 0) {
      root = network.network().feeding(root);
    }
    HouseNetwork.Winding winding = network.windings().get(root);
    List<Integer> legs = winding == null ? List.of() : outlet.legs().stream().map(winding.names()::indexOf).toList();
    if (legs.isEmpty() || legs.contains(-1)) {
      return Optional.empty();
    }
    int from = legs.get(0);
    int to = legs.size() > 1 ? winding.legs()[legs.get(1)] : winding.star();
    Complex driven = legs.size() > 1 ? winding.emf()[from].minus(winding.emf()[legs.get(1)]) : winding.emf()[from];
    double lost = driven.minus(solution.volts(root, winding.legs()[from], to)).magnitude();
    return lost < 1e-9
        ? Optional.empty()
        : Optional.of(solved("voltage drop in the source", lost, Units.VOLT, "By its impedance in the plan.")
            .named("voltage drop in the source", "ΔU"));
  }

  /** Fall from nominal as a part of it. */
  Derivation fall(Derivation nominal, Derivation volts) {
    double share = (nominal.si() - volts.si()) / nominal.si();
    return Derivation.computed(
        "voltage drop", "", "(U_n − U) / U_n", new Value.Amount(new Quantity(share, Units.PERCENT)),
        List.of(nominal, volts));
  }

  /** Rise above nominal as a part of it. */
  static Derivation rise(Derivation nominal, Derivation volts) {
    double share = (volts.si() - nominal.si()) / nominal.si();
    return Derivation.computed(
        "voltage rise", "", "(U − U_n) / U_n", new Value.Amount(new Quantity(share, Units.PERCENT)),
        List.of(nominal, volts));
  }

  /** The conductors that carry the current of an outlet there and back, from the outlet to the source. */
  List<HouseNetwork.Conductor> onTheWay(HouseNetwork.Outlet outlet) {
    List<HouseNetwork.Conductor> way = new ArrayList<>();
    for (int box = outlet.box(); box >= 0; box = network.network().feeding(box)) {
      for (HouseNetwork.Conductor c : conductorsOf.getOrDefault(box, List.of())) {
        boolean carries = c.role().map(r -> serves(r, outlet)).orElse(c.kind() != HouseNetwork.Kind.GROUND && servesFeeder(c, outlet));
        if (carries) {
          way.add(c);
        }
      }
    }
    return way;
  }

  /** Of a feeder: the legs that the outlet's hots are on, and the neutral where it returns there. */
  private static boolean servesFeeder(HouseNetwork.Conductor c, HouseNetwork.Outlet outlet) {
    return c.kind() == HouseNetwork.Kind.NEUTRAL
        ? outlet.connection() instanceof Load.Connection.HotToNeutral
        : outlet.legs().stream().anyMatch(l -> c.name().equals("hot " + l));
  }

  private static boolean serves(Role role, HouseNetwork.Outlet outlet) {
    if (role instanceof Role.Neutral) {
      return outlet.connection() instanceof Load.Connection.HotToNeutral;
    }
    int hot = role instanceof Role.Hot h
        ? h.hot()
        : role instanceof Role.SwitchLeg leg ? leg.hot() : role instanceof Role.Traveler t ? t.hot() : -1;
    if (outlet.connection() instanceof Load.Connection.HotToHot across) {
      return hot == across.hot() || hot == across.otherHot();
    }
    return outlet.connection() instanceof Load.Connection.HotToNeutral to && to.hot() == hot;
  }

  private Derivation fall(HouseNetwork.Conductor c) {
    return once(falls, c, () -> makeFall(c));
  }

  private Derivation makeFall(HouseNetwork.Conductor c) {
    double amps = solution.amps(c.box(), c.local()).magnitude();
    double ohms = Math.hypot(c.impedance().ohms().re() + c.joint(), c.impedance().ohms().im());
    List<Derivation> inputs = new ArrayList<>(List.of(amps(c), impedance(c)));
    return Derivation.computed("drop in " + c.name() + ", " + c.run(), "ΔU", "I × Z", amount(amps * ohms, Units.VOLT), inputs);
  }

  Derivation impedance(HouseNetwork.Conductor c) {
    return once(impedances, c, () -> makeImpedance(c));
  }

  private Derivation makeImpedance(HouseNetwork.Conductor c) {
    double ohms = Math.hypot(c.impedance().ohms().re() + c.joint(), c.impedance().ohms().im());
    Derivation resistance = resistance(c);
    List<Derivation> inputs = new ArrayList<>(List.of(resistance));
    c.impedance().each().ifPresent(e -> inputs.add(reactance(e, c.impedance().hertz())));
    inputs.add(length(c));
    if (c.joint() > 0) {
      inputs.add(joint(c));
    }
    return Derivation.computed("impedance of " + c.name() + ", " + c.run(), "Z",
        c.joint() > 0 ? "√((R + R_j)² + (X × l)²)" : "√(R² + (X × l)²)", amount(ohms, Units.OHM), inputs);
  }

  /** Of each meter at the frequency of the supply; the tables are for 60 Hz. */
  private static Derivation reactance(Impedance each, double hertz) {
    double found = each.reactanceOhmsPerMeter(hertz);
    if (found == each.reactance().si()) {
      return each.reactance();
    }
    Derivation frequency = Derivation.assumed("frequency of the supply", "f", new Quantity(hertz, HERTZ));
    return Derivation.computed(
        "reactance at " + Quantity.plain(hertz, 3) + " Hz", "X", "X_60 × f / 60 Hz",
        new Value.Amount(new Quantity(found, each.reactance().quantity().orElseThrow().unit())),
        List.of(each.reactance().named(each.reactance().name(), "X_60"), frequency));
  }

  private static Derivation length(HouseNetwork.Conductor c) {
    return Derivation.stated("length", "l", Quantity.of(c.impedance().meters(), Units.METER));
  }

  private static Derivation joint(HouseNetwork.Conductor c) {
    return Derivation.stated("resistance added to the joint", "R_j", Quantity.of(c.joint(), Units.OHM));
  }

  private Derivation resistance(HouseNetwork.Conductor c) {
    Derivation length = length(c);
    Derivation celsius = Derivation.assumed("temperature of the conductor", "T", Quantity.of(WireImpedance.CELSIUS, Units.CELSIUS));
    List<Derivation> inputs = new ArrayList<>();
    c.impedance().each().ifPresent(e -> inputs.add(e.resistance().at(celsius).named("resistance for its length", "r")));
    inputs.add(length);
    return Derivation.computed("resistance of " + c.impedance().wire().size() + " " + c.impedance().wire().metal().word(), "R", "r × l",
        amount(c.impedance().ohms().re(), Units.OHM), inputs);
  }

  Derivation amps(HouseNetwork.Conductor c) {
    return once(amps, c, () -> makeAmps(c));
  }

  private Derivation makeAmps(HouseNetwork.Conductor c) {
    double amps = solution.amps(c.box(), c.local()).magnitude();
    List<Derivation> inputs = new ArrayList<>();
    loadsOf.getOrDefault(c, List.of()).forEach(l -> inputs.add(loadAmps(l)));
    network.feedings().stream().filter(f -> onTheWay(f.outlet()).contains(c)).forEach(f -> inputs.add(sourceAmps(f)));
    if (c.branch().isEmpty()) {
      network.panelLoads().stream().filter(l -> c.panel().isEmpty() || l.through().contains(c.panel().get()))
          .filter(l -> c.kind() == HouseNetwork.Kind.NEUTRAL || c.name().equals("hot " + l.leg()))
          .forEach(l -> inputs.add(solved("current of everything downstream of panel " + l.panel() + " on leg " + l.leg(),
              solution.elementAmps(l.element()).magnitude(), Units.AMPERE, "As the trial says.")
              .named("current of everything downstream of panel " + l.panel() + " on leg " + l.leg(), "I_k")));
    }
    return new Derivation(
        "current in " + c.name() + ", " + c.run(), "I", amount(amps, Units.AMPERE), Derivation.Basis.COMPUTED,
        "|Σ I_k|", inputs, List.of(),
        "The sum of what the loads beyond take" + (network.feedings().isEmpty() ? "" : " and what sources give")
            + ", by Kirchhoff's law, from the solution of the whole network. " + PHASORS);
  }

  private Derivation sourceAmps(HouseNetwork.Feeding feeding) {
    double amps = feeding.holds() ? solution.mostSourceAmps(feeding.index()) : solution.elementAmps(feeding.index()).magnitude();
    return solved("current of " + feeding.device(), amps, Units.AMPERE,
        feeding.holds() ? "What is taken of it." : "Its power at the voltage there.")
        .named("current of " + feeding.device(), "I_k");
  }

  /** Current of conductors side by side: what one pole of a breaker carries. */
  Derivation together(List<HouseNetwork.Conductor> conductors) {
    if (conductors.size() == 1) {
      return amps(conductors.get(0));
    }
    Complex sum = conductors.stream().map(c -> solution.amps(c.box(), c.local())).reduce(Complex.ZERO, Complex::plus);
    return new Derivation(
        "current in " + conductors.get(0).name() + " of all runs from the panel", "I", amount(sum.magnitude(), Units.AMPERE),
        Derivation.Basis.COMPUTED, "|Σ I|", conductors.stream().map(this::amps).toList(), List.of(), PHASORS);
  }

  /** Current that comes to a panel on one leg. */
  Derivation intoPanel(Panel panel, HouseNetwork.PanelBox box, int leg) {
    return solved(
        "current into panel " + panel.name() + " on leg " + panel.legs().get(leg), solution.amps(box.box(), box.legs()[leg]).magnitude(),
        Units.AMPERE, "");
  }

  Derivation loadAmps(HouseNetwork.Drawing load) {
    return once(amps, load, () -> makeLoadAmps(load));
  }

  private Derivation makeLoadAmps(HouseNetwork.Drawing load) {
    String name = load.outlet().name();
    double amps = solution.elementAmps(load.element()).magnitude();
    Derivation volts = solved("voltage at " + name, solution.elementVolts(load.element()).magnitude(), Units.VOLT, "")
        .named("voltage at " + name, "U");
    Optional<HouseNetwork.Drawing> before = threePhaseBefore(load);
    if (before.isPresent()) {
      Complex line = solution.elementAmps(load.element()).minus(solution.elementAmps(before.get().element()));
      return new Derivation(
          "current of " + name, "I_k", amount(line.magnitude(), Units.AMPERE), Derivation.Basis.COMPUTED, "|I_1 − I_2|",
          List.of(
              solved("current between two hots of " + name, amps, Units.AMPERE, "").named("current between two hots", "I_1"),
              solved("current between the next two", solution.elementAmps(before.get().element()).magnitude(), Units.AMPERE, "")
                  .named("current between the next two", "I_2"),
              loadPower(load, volts), volts),
          List.of(), "In one hot of the three. " + PHASORS);
    }
    return Derivation.computed("current of " + name, "I_k", "S / U", amount(amps, Units.AMPERE), List.of(loadPower(load, volts), volts));
  }

  /** Of a three-phase device, what lies between the hot before and the first hot of this part. */
  private Optional<HouseNetwork.Drawing> threePhaseBefore(HouseNetwork.Drawing load) {
    if (!(load.outlet().connection() instanceof Load.Connection.HotToHot own) || own.otherHot() != (own.hot() + 1) % 3) {
      return Optional.empty();
    }
    Load.Connection before = new Load.Connection.HotToHot((own.hot() + 2) % 3, own.hot());
    return network.loads().stream()
        .filter(l -> l.outlet().device().equals(load.outlet().device()) && l.outlet().connection().equals(before))
        .findFirst();
  }

  /** What a load takes at the voltage that it gets, by the way in which it follows the voltage. */
  private Derivation loadPower(HouseNetwork.Drawing load, Derivation volts) {
    Scenario.Drawn drawn = load.drawn();
    Derivation stated = Derivation.computed("power of " + load.outlet().name() + " at nominal voltage", "S_n", "",
        new Value.Amount(Quantity.of(drawn.voltAmperes().magnitude(), Units.VOLT_AMPERE)), List.of())
        .remarking("What the plan or the trial states, in volt-amperes at its power factor.");
    Derivation nominal = Derivation.stated("nominal voltage", "U_n", Quantity.of(drawn.nominalVolts(), Units.VOLT));
    boolean starved = solution.isStarved(load.element());
    String formula = switch (drawn.behavior()) {
      case IMPEDANCE -> "S_n × (U / U_n)²";
      case CURRENT -> starved ? "2 × S_n × (U / U_n)²" : "S_n × U / U_n";
      case POWER -> starved ? "4 × S_n × (U / U_n)²" : "S_n";
    };
    String remark = switch (drawn.behavior()) {
      case IMPEDANCE -> "A load of constant impedance.";
      case CURRENT -> "A load of constant current.";
      case POWER -> "A load of constant power.";
    };
    return new Derivation(
        "power of " + load.outlet().name(), "S", amount(solution.elementPower(load.element()).magnitude(), Units.VOLT_AMPERE),
        Derivation.Basis.COMPUTED, formula, formula.equals("S_n") ? List.of(stated) : List.of(stated, volts, nominal), List.of(),
        remark + (starved ? " Below half its voltage it is figured as a resistance." : ""));
  }

  Derivation watts(HouseNetwork.Conductor c) {
    Derivation current = amps(c);
    Derivation resistance = resistance(c);
    return Derivation.computed(
        "heat in " + c.name() + ", " + c.run(), "P", "I² × R", current.si() * current.si() * resistance.si(), Units.WATT,
        current, resistance);
  }

  Derivation jointWatts(HouseNetwork.Conductor c, Derivation current) {
    Derivation joint = joint(c);
    return Derivation.computed(
        "heat in the joint of " + c.name(), "P", "I² × R_j", current.si() * current.si() * joint.si(), Units.WATT,
        current.named(current.name(), "I"), joint);
  }

  Derivation toEarth(HouseNetwork.Metal metal) {
    return solved(
        "voltage of the metal of " + metal.name() + " to remote earth",
        solution.volts(metal.box(), metal.terminal(), Network.EARTH).magnitude(), Units.VOLT,
        "With nobody touching it.");
  }

  Derivation bodyAmps(String metal, double volts, Derivation body) {
    Derivation touched = solved("voltage of the metal of " + metal + " under a hand", volts, Units.VOLT, "").named("voltage under a hand",
        "U_t");
    return Derivation.computed(
        "current through a person at " + metal, "I_p", "U_t / R_p", volts / body.si(), Units.AMPERE, touched, body);
  }

  Derivation hotToEarth(HouseNetwork.Outlet outlet) {
    return solved(
        "voltage of the neutral contact of " + outlet.name() + " to remote earth",
        solution.volts(outlet.box(), outlet.a(), Network.EARTH).magnitude(), Units.VOLT,
        "Hot and neutral are exchanged at the device: the contact that should be near ground voltage is on the hot.");
  }

  /** Of the contact for the hot. */
  Derivation contactToEarth(HouseNetwork.Outlet outlet) {
    return solved(
        "voltage of a contact of " + outlet.name() + " to remote earth",
        solution.volts(outlet.box(), outlet.a(), Network.EARTH).magnitude(), Units.VOLT, "");
  }

  Derivation faultAmps(HouseNetwork.Faulting fault) {
    return solved(
        "fault current at " + fault.fault().at(), solution.elementAmps(fault.element()).magnitude(), Units.AMPERE,
        fault.fault().ohms() > 0 ? "Through " + Quantity.of(fault.fault().ohms(), Units.OHM) + "." : "Bolted.");
  }

  static Derivation solved(String name, double value, Unit unit, String remark) {
    return new Derivation(
        name, "", amount(value, unit), Derivation.Basis.COMPUTED, "", List.of(), List.of(),
        (remark + " From the solution of the whole network, checked by Kirchhoff's current law at every node.").strip());
  }

  private static Value amount(double value, Unit unit) {
    return new Value.Amount(new Quantity(value * unit.factor(), unit));
  }

}
