package wattle.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.DeviceKind.Grid;
import wattle.model.Load;
import wattle.model.RoomKind;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The figures of a trial that are dangerous, by the limits of the library. Where the library lacks a limit, what it would
 * judge is left out: no figure of a code or standard stands here.
 */
public final class Dangers {
  /** Volts that a tester may take for nothing. */
  private static final double DEAD = 1;

  private final TrialResult result;
  private final Library library;
  private final Guards guards;
  private final CarriedLimits limits;
  private final List<Danger> dangers = new ArrayList<>();
  private final Set<String> starting;
  private final Set<String> branchesOfStarts;

  private Dangers(TrialResult result, Library library, CarriedLimits limits) {
    this.limits = limits;
    this.result = result;
    this.library = library;
    guards = new Guards(result);
    starting = result.scenario().starting();
    branchesOfStarts = starting.stream().flatMap(d -> Place.of(result.house(), d).stream()).map(p -> p.branch().name())
        .collect(Collectors.toSet());
  }

  /** What can kill at once first, and of one kind the worst first. */
  static List<Danger> of(TrialResult result, Library library, CarriedLimits limits) {
    Dangers found = new Dangers(result, library, limits);
    found.sources();
    found.metals();
    found.reversed();
    found.faults();
    found.outlets();
    found.conductors();
    found.overcurrents();
    found.buses();
    found.protections();
    found.joints();
    found.animals();
    found.unserved();
    found.dangers.sort(Comparator.comparing(Danger::kind)); // stable: the readings come worst first
    return List.copyOf(found.dangers);
  }

  private Optional<Derivation> limit(String name, String symbol) {
    return library.limit(name).map((Limit l) -> l.derivation(symbol));
  }

  private void add(Danger.Kind kind, String at, String branch, String words, Derivation figure, Optional<Derivation> limit) {
    dangers.add(new Danger(kind, at, branch, words, Optional.of(figure), limit));
  }

  /**
   * Whoever works on the street believes it dead where the house feeds it. A generator cannot take power that an inverter gives: it
   * races, and its voltage rises until something burns.
   */
  private void sources() {
    for (SourceReading s : result.sources()) {
      if (s.state() == SourceReading.State.BACK_FED) {
        add(Danger.Kind.BACK_FED, s.name(), "",
            "the service " + s.name() + " delivers nothing and is at " + figure(s.volts()) + " from the house", s.volts(),
            Optional.empty());
      } else if (s.state() == SourceReading.State.TAKES && forms(s.name())) {
        add(Danger.Kind.POWER_INTO_GENERATOR, s.name(), "",
            Quantity.plain(-s.watts().si(), 3) + " W flow into " + s.name() + ", which cannot take power: it overspeeds, and its "
                + "voltage rises",
            s.watts(), Optional.empty());
      } else if (s.state() == SourceReading.State.HOLDS && !result.house().services().containsKey(s.name())
          && s.rating().filter(r -> s.amps().si() > r.si() * (1 + Overcurrents.ROUNDING)).isPresent()) {
        add(Danger.Kind.SOURCE_OVER, s.name(), "", s.name() + " gives " + figure(s.amps()) + ", " + percent(s.share().orElseThrow().si())
            + " of its rating: it stalls or trips", s.amps(), s.rating());
      }
    }
  }

  private boolean forms(String source) {
    return Optional.ofNullable(result.house().devices().get(source)).flatMap(d -> d.kind().grid()).filter(g -> g == Grid.FORMS).isPresent();
  }

  private void metals() {
    Optional<Derivation> volts = limit("touch-voltage", "U_L");
    Optional<Derivation> amps = limit("touch-current", "I_L");
    // What nothing opens is deadlier than the same for a tenth of a second.
    List<TrialResult.MetalReading> metals = result.metals().stream()
        .sorted(Comparator.comparing((TrialResult.MetalReading m) -> guards.opensUntouched(m.name()))).toList();
    for (TrialResult.MetalReading m : metals) {
      Optional<Derivation> through = m.bodyAmps().filter(a -> amps.filter(l -> a.si() >= l.si()).isPresent());
      boolean high = volts.filter(l -> m.volts().si() >= l.si()).isPresent();
      if (high || through.isPresent()) {
        String person = m.bodyAmps().map(a -> ", and would push " + milliamperes(a) + " through a person").orElse("");
        add(
            Danger.Kind.TOUCH, m.name(), "",
            "the metal of " + m.name() + (m.lifted()
                ? m.grounded()
                    ? ", with its ground lifted,"
                    : ", which has no "
                        + "ground,"
                : "") + " is at "
                + figure(m.volts()) + " to earth" + person + "; " + guards.opens(m.name()),
            high ? m.volts() : through.get(), high ? volts : amps);
      }
    }
  }

  private void reversed() {
    Optional<Derivation> limit = limit("touch-voltage", "U_L");
    for (TrialResult.ReversedReading r : result.reversed()) {
      if (limit.filter(l -> r.volts().si() >= l.si()).isPresent()) {
        add(Danger.Kind.REVERSED, r.device(), "",
            "the contact of " + r.device() + " that should be neutral is at " + figure(r.volts()) + " to earth", r.volts(), limit);
      }
    }
  }

  private void faults() {
    for (TrialResult.FaultReading f : result.faults()) {
      add(Danger.Kind.FAULT, f.at(), "", "the fault from " + f.between() + " at " + f.at() + " carries " + figure(f.amps()) + "; "
          + guards.opens(f.at()), f.amps(),
          Optional.empty());
    }
  }

  private void outlets() {
    Optional<Derivation> rise = limit("voltage-above", "a");
    // A start is over in a few seconds: what counts is whether the motor comes up to speed.
    Optional<Derivation> fall = limit(starting.isEmpty() ? "voltage-fall-whole" : "voltage-fall-start", "f");
    Map<String, HouseNetwork.Outlet> places = new HashMap<>();
    result.network().outlets().forEach(o -> places.putIfAbsent(o.branch() + " " + o.name(), o));
    Optional<Derivation> touch = limit("touch-voltage", "U_L");
    String held = held();
    for (TrialResult.OutletReading o : result.outlets()) {
      if (o.floating()) {
        dangers.add(
            new Danger(
                Danger.Kind.FLOATING, o.name(), o.branch(),
                "a conductor of " + o.name() + " floats: a meter may show any voltage, and the other conductor may be live",
                Optional.empty(), Optional.empty()));
      } else if (o.volts().si() <= DEAD) {
        liveThoughDark(o, places.get(o.branch() + " " + o.name()), touch);
      } else if (rise.filter(l -> -o.fall().si() > l.si()).isPresent()) {
        add(Danger.Kind.OVERVOLTAGE, o.name(), o.branch(),
            o.name() + " is at " + figure(o.volts()) + ", " + percent(-o.fall().si()) + " above its " + figure(o.nominal()) + held + "; "
                + guards.opens(o.device()),
            o.volts(),
            rise);
      } else if (fall.filter(l -> o.fall().si() > l.si()).isPresent()) {
        add(Danger.Kind.UNDERVOLTAGE, o.name(), o.branch(),
            o.name() + " is at " + figure(o.volts()) + ", " + percent(o.fall().si()) + " below its " + figure(o.nominal()) + held
                + (starting.contains(o.device()) ? " as it starts, and may not come up to speed" : ""),
            o.volts(), fall);
      }
    }
  }

  /** Between its conductors there is nothing, since both stand at the same voltage to earth. */
  private void liveThoughDark(TrialResult.OutletReading outlet, HouseNetwork.Outlet place, Optional<Derivation> limit) {
    Derivation volts = result.figures().contactToEarth(place);
    if (limit.filter(l -> volts.si() >= l.si()).isPresent()) {
      add(
          Danger.Kind.LIVE_THOUGH_DARK, outlet.name(), outlet.branch(),
          outlet.name() + " shows " + Quantity.plain(Math.round(10 * outlet.volts().si()) / 10.0, 3)
              + " V between its conductors, yet both are at " + figure(volts) + " to earth",
          volts, limit);
    }
  }

  /**
   * No breaker watches a neutral; one that is shared by hots on one leg carries their sum. A hot is watched, but a breaker
   * above its wire need not open. Hots of a service and of feeders may be held to a code's rule for dwellings, above the
   * table, and have findings of their own.
   */
  private void conductors() {
    Map<String, Carried> worst = new LinkedHashMap<>();
    for (HouseNetwork.Conductor c : result.network().conductors()) {
      boolean neutral = c.kind() == HouseNetwork.Kind.NEUTRAL;
      if (!neutral && (c.kind() == HouseNetwork.Kind.GROUND || c.branch().isEmpty()) || carriesStart(c)) {
        continue;
      }
      Derivation amps = result.figures().amps(c);
      Optional<Derivation> limit = amps.si() > DEAD ? limits.of(c) : Optional.empty();
      if (limit.isPresent() && amps.si() > limit.get().si() * (1 + Overcurrents.ROUNDING)) {
        String key = c.branch().orElse(c.run()) + " " + c.name() + (neutral ? "" : " " + c.role());
        worst.merge(key, new Carried(c, amps, limit.get()), (one, other) -> other.share() > one.share() ? other : one);
      }
    }
    sharedOnOneLeg(worst.keySet());
    worst.values().stream().sorted(Comparator.comparingDouble(c -> -c.share())).forEach(this::conductor);
  }

  /** A wire is not too hot after a few seconds of a start; feeders carry what their branches do. */
  private boolean carriesStart(HouseNetwork.Conductor conductor) {
    return !starting.isEmpty() && conductor.branch().map(branchesOfStarts::contains).orElse(true);
  }

  /** Of a branch with hots of one neutral on one leg, moved there or wired so: whatever draws now, the neutral may come to their sum. */
  private void sharedOnOneLeg(Set<String> told) {
    for (NeutralReading n : result.neutrals()) {
      if (!told.contains(n.branch() + " neutral")) {
        String fits = result.scenario().legs().containsKey(n.branch()) ? "; no 2-pole breaker fits two slots of one leg" : "";
        add(Danger.Kind.NEUTRAL_OVER, "neutral of " + n.branch(), n.branch(),
            "hots of " + n.branch() + " that share one neutral are on one leg: it may carry up to " + n.most().value().text()
                + ", and nothing protects a neutral" + fits
                + (n.sentence().isEmpty() ? "" : "; " + n.sentence().substring(0, n.sentence().length() - 1)),
            n.most(), Optional.empty());
      }
    }
  }

  /** A conductor with what it carries and what it may. */
  private record Carried(HouseNetwork.Conductor conductor, Derivation amps, Derivation limit) {
    double share() {
      return amps.si() / limit.si();
    }
  }

  private void conductor(Carried carried) {
    HouseNetwork.Conductor c = carried.conductor;
    String feeds = c.branch().or(c::panel).orElse("");
    boolean faulty = !result.faults().isEmpty();
    boolean opens = result.overcurrents().stream()
        .anyMatch(o -> (faulty || o.feeds().equals(feeds)) && o.opens().flatMap(t -> t.most()).isPresent());
    String size = " of " + c.impedance().wire().size() + ", whose ampacity is " + figure(carried.limit);
    if (c.kind() == HouseNetwork.Kind.NEUTRAL) {
      if (!(opens && faulty)) {
        String owner = c.branch().isPresent() ? "the neutral of " + c.branch().get() : "the neutral, " + c.run() + ",";
        add(Danger.Kind.NEUTRAL_OVER, c.name() + " of " + c.branch().orElse(c.run()), c.branch().orElse(""),
            owner + " carries " + figure(carried.amps) + (c.branch().isPresent() ? " from " + c.run() : "") + size
                + "; nothing protects a neutral",
            carried.amps, Optional.of(carried.limit));
      }
    } else if (!opens) {
      add(Danger.Kind.CONDUCTOR_OVER, c.name() + " of " + feeds, feeds, "the " + c.name() + " of " + feeds + " carries "
          + figure(carried.amps) + " from " + c.run() + size + "; nothing opens", carried.amps, Optional.of(carried.limit));
    }
  }

  private void overcurrents() {
    Optional<Derivation> start = starting.isEmpty() ? Optional.empty() : limit("start-time", "t");
    for (TrialResult.OvercurrentReading o : result.overcurrents()) {
      if (start.isPresent() && o.opens().filter(t -> t.mostSeconds() > start.get().si()).isPresent()) {
        continue; // it need not open before the motor turns
      }
      String opens = o.opens().map(t -> t.most().isPresent() ? ", and opens in " + t.text() : ", and may not open")
          .orElse(", and opens by its maker's curve");
      add(Danger.Kind.OVERCURRENT, o.name(), o.feeds(), o.name() + ", which feeds " + o.feeds() + ", carries " + figure(o.amps()) + ", "
          + percent(o.share().si()) + " of its rating" + opens, o.amps(), Optional.of(o.rating()));
    }
  }

  private void buses() {
    for (BusReading b : result.buses()) {
      if (b.rating().filter(r -> b.most().si() > r.si() * (1 + Overcurrents.ROUNDING)).isPresent()) {
        add(Danger.Kind.BUS_OVER, b.panel(), "", "leg " + b.leg() + " of the bus of " + b.panel() + " carries " + figure(b.most()) + ", "
            + b.at() + ", above its " + figure(b.rating().get()), b.most(), b.rating());
      }
    }
  }

  /** What opens by itself, so that a reader does not believe that it goes on; whether it does in time is another question. */
  private void protections() {
    for (ProtectionReading p : result.protections()) {
      if (p.verdict() != ProtectionReading.Verdict.HOLDS && p.verdict() != ProtectionReading.Verdict.UNKNOWN) {
        String within = p.within().map(t -> ", within " + figure(t) + " at most").orElse("");
        dangers.add(new Danger(Danger.Kind.PROTECTION, p.name(), "",
            p.kind() + " protection of " + p.name() + " " + p.verdict().words() + within, p.touched().or(p::residual), Optional.empty()));
      }
    }
  }

  /** Cattle feel through four hoofs on wet concrete what a person does not. */
  private void animals() {
    Optional<Derivation> limit = limit("livestock-voltage", "U_a");
    Optional<Derivation> people = limit("touch-voltage", "U_L");
    for (TrialResult.MetalReading m : result.metals()) {
      boolean felt = limit.filter(l -> m.volts().si() >= l.si()).isPresent() && people.filter(l -> m.volts().si() >= l.si()).isEmpty();
      if (felt && isAmongAnimals(m.name())) {
        add(Danger.Kind.ANIMALS, m.name(), "", "the metal of " + m.name() + ", among animals, is at " + figure(m.volts())
            + " to earth: cattle feel it and will not drink", m.volts(), limit);
      }
    }
  }

  private boolean isAmongAnimals(String at) {
    Optional<String> room = Optional.ofNullable(result.house().devices().get(at)).map(d -> d.room())
        .or(() -> Optional.ofNullable(result.house().boxes().get(at)).map(b -> b.room()));
    return room.map(result.house().rooms()::get).flatMap(r -> r.kind()).flatMap(RoomKind::of).filter(k -> k == RoomKind.LIVESTOCK)
        .isPresent();
  }

  /** What holds its current or power, and gets less than half of its voltage or no steady one. */
  private void unserved() {
    String remedy = result.scenario().losesNeutral()
        ? "; close the neutral first, or state what it draws in watts, as for a heater"
        : "; use a smaller load, or larger or shorter wire";
    for (HouseNetwork.Drawing load : result.network().loads()) {
      unserved(load.outlet().name(), load.outlet().branch(), load.element(), load.outlet().nominalVolts(), remedy);
    }
    for (HouseNetwork.PanelLoad load : result.network().panelLoads()) {
      unserved("panel " + load.panel() + ", leg " + load.leg(), "", load.element(),
          result.house().panels().get(load.panel()).system().legToNeutralVolts(), remedy);
    }
    for (HouseNetwork.Feeding feeding : result.network().feedings()) {
      if (!feeding.holds() && result.solution().unsettled().contains(feeding.index())) {
        add(Danger.Kind.NOT_SERVED, feeding.device(), feeding.outlet().branch(),
            feeding.device() + " finds no steady voltage: it delivers more than the wires can carry; reduce its output, or use larger wire",
            volts(feeding.device(), feeding.index()), Optional.empty());
      }
    }
  }

  private void unserved(String name, String branch, int element, double nominal, String remedy) {
    Derivation volts = volts(name, element);
    if (result.solution().unsettled().contains(element)) {
      add(Danger.Kind.NOT_SERVED, name, branch, name + " finds no steady voltage, last " + figure(volts) + remedy, volts, Optional.empty());
    } else if (result.solution().isStarved(element)) {
      add(Danger.Kind.NOT_SERVED, name, branch, name + " gets " + figure(volts) + ", less than half of " + Quantity.plain(nominal, 4)
          + " V, and cannot draw what it needs: it is figured as a resistance there" + remedy, volts, Optional.empty());
    }
  }

  private Derivation volts(String name, int element) {
    return Figures.solved("voltage at " + name, result.solution().elementVolts(element).magnitude(), Units.VOLT, "");
  }

  /** Behind a lost neutral a load that is held at its current drives the voltages farther apart than a heater does. */
  private String held() {
    if (!result.scenario().losesNeutral()) {
      return "";
    }
    Set<Load.Behavior> behaviors = result.scenario().drawn().stream().map(Scenario.Drawn::behavior).collect(Collectors.toSet());
    result.scenario().panelDrawn().forEach(p -> behaviors.add(p.behavior()));
    return behaviors.contains(Load.Behavior.CURRENT)
        ? " (loads in amperes keep their current, which exaggerates it; loads in watts are heaters)"
        : behaviors.equals(Set.of(Load.Behavior.IMPEDANCE))
            ? " (all loads taken as heaters)"
            : behaviors.isEmpty()
                ? ""
                : " (heaters as heaters, motors at their power)";
  }

  private void joints() {
    for (TrialResult.JointReading j : result.joints()) {
      if (j.watts().si() > 0) {
        String full = j.wattsAtFullLoad().map(w -> "; with the whole rating of the breaker it would be " + figure(w)).orElse("");
        add(Danger.Kind.JOINT, j.at(), j.branch(),
            "the joint of " + j.conductor() + " at " + j.at() + " turns " + figure(j.watts()) + " into heat" + full, j.watts(),
            Optional.empty());
      }
    }
  }

  private static String figure(Derivation figure) {
    Quantity quantity = figure.quantity().orElseThrow();
    return Quantity.plain(quantity.value(), Math.abs(quantity.value()) >= 100 ? 4 : 3) + " " + quantity.unit().symbol();
  }

  private static String milliamperes(Derivation amps) {
    return Quantity.plain(amps.si() * 1000, 3) + " mA";
  }

  private static String percent(double share) {
    return Quantity.plain(new Quantity(share, Units.PERCENT).in(Units.PERCENT), 3) + " %";
  }
}
