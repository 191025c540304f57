package wattle.trials;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.Role;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/** The words that an expectation can measure, and how each is read from the figures of a trial. */
final class Measures {
  /** What a word measures. */
  record Measure(Dimension dimension, BiFunction<TrialResult, String, Optional<Measured>> reader) {}

  private static final Map<String, Measure> BY_WORD = new TreeMap<>();

  static {
    BY_WORD.put("neutral", new Measure(Dimension.CURRENT, (r, s) -> current(r, s, HouseNetwork.Kind.NEUTRAL)));
    BY_WORD.put("hot", new Measure(Dimension.CURRENT, (r, s) -> current(r, s, HouseNetwork.Kind.HOT)));
    BY_WORD.put("ground", new Measure(Dimension.CURRENT, (r, s) -> current(r, s, HouseNetwork.Kind.GROUND)));
    BY_WORD.put("current", new Measure(Dimension.CURRENT, Measures::anyCurrent));
    BY_WORD.put("voltage", new Measure(Dimension.VOLTAGE, Measures::voltage));
    BY_WORD.put("voltage-fall", new Measure(Dimension.NONE, Measures::fall));
    BY_WORD.put("touch-voltage", new Measure(Dimension.VOLTAGE, Measures::touchVoltage));
    BY_WORD.put("touch-current", new Measure(Dimension.CURRENT, Measures::touchCurrent));
    BY_WORD.put("heat", new Measure(Dimension.POWER, Measures::heat));
    BY_WORD.put("fault-current", new Measure(Dimension.CURRENT, Measures::faultCurrent));
    BY_WORD.put("residual-current", new Measure(Dimension.CURRENT, Measures::residual));
    BY_WORD.put("trip-time", new Measure(Dimension.TIME, Measures::tripTime));
    BY_WORD.put("power-given", new Measure(Dimension.POWER, Measures::powerGiven));
    BY_WORD.put("voltage-rise", new Measure(Dimension.NONE, Measures::voltageRise));
    BY_WORD.put("bus", new Measure(Dimension.CURRENT, Measures::bus));
    BY_WORD.put("power", new Measure(Dimension.POWER, Measures::power));
  }

  private Measures() {}

  static Optional<Measure> of(String word) {
    return Optional.ofNullable(BY_WORD.get(word));
  }

  static List<String> words() {
    return List.copyOf(BY_WORD.keySet());
  }

  // ---- Currents

  private static Optional<Measured> current(TrialResult r, String subject, HouseNetwork.Kind kind) {
    Figures figures = r.figures();
    return r.network().conductors().stream()
        .filter(c -> c.kind() == kind)
        .filter(isOf(r, subject, kind))
        .max(Comparator.comparingDouble(c -> r.solution().amps(c.box(), c.local()).magnitude()))
        .map(c -> new Measured(figures.amps(c), "the " + word(kind) + " of '" + subject + "' carries %s", "from " + c.run(), reason(kind)));
  }

  private static String word(HouseNetwork.Kind kind) {
    return kind.name().toLowerCase(java.util.Locale.ROOT);
  }

  private static String reason(HouseNetwork.Kind kind) {
    return kind == HouseNetwork.Kind.NEUTRAL
        ? "One loaded hot returns all its current on the neutral; equal loads on opposite legs cancel."
        : "";
  }

  /** Conductors of a branch, of the feeder of a panel, of the service run, or of the run that comes to a box or device. */
  private static Predicate<HouseNetwork.Conductor> isOf(TrialResult r, String subject, HouseNetwork.Kind kind) {
    if (r.house().branches().containsKey(subject)) {
      return c -> c.branch().equals(Optional.of(subject));
    }
    if (r.house().panels().containsKey(subject)) {
      boolean feeder = r.house().panels().get(subject).feeder().isPresent();
      return c -> feeder ? c.panel().equals(Optional.of(subject)) : c.run().startsWith("service ");
    }
    if (r.house().services().containsKey(subject)) {
      return c -> c.run().equals("service " + subject);
    }
    Optional<Place> place = Place.of(r.house(), subject);
    return c -> place.isPresent() && c.branch().equals(Optional.of(place.get().branch().name())) && c.point() == place.get().point();
  }

  private static Optional<Measured> anyCurrent(TrialResult r, String subject) {
    Figures figures = r.figures();
    Optional<SourceReading> source = source(r, subject).filter(s -> r.house().devices().containsKey(subject));
    if (source.isPresent()) {
      return source.map(s -> new Measured(s.amps(), "'" + subject + "' gives %s", s.state().words(), ""));
    }
    if (r.house().devices().containsKey(device(subject, r)) && !r.house().branches().containsKey(subject)) {
      return r.network().loads().stream()
          .filter(l -> l.outlet().name().equals(subject) || l.outlet().device().equals(subject))
          .max(Comparator.comparingDouble(l -> r.solution().elementAmps(l.element()).magnitude()))
          .map(l -> new Measured(figures.loadAmps(l), "'" + subject + "' draws %s", "", ""))
          .or(() -> Optional.of(
              new Measured(figure("current of " + subject, 0, Units.AMPERE), "'" + subject + "' draws %s", "", "Nothing on it is on.")));
    }
    Optional<BreakerId> breaker = r.house().panels().values().stream()
        .flatMap(p -> p.breakers().stream())
        .map(b -> b.id())
        .filter(id -> id.toString().equals(subject))
        .findFirst();
    if (breaker.isEmpty()) {
      return current(r, subject, HouseNetwork.Kind.HOT);
    }
    return r.network().conductors().stream()
        .filter(c -> c.kind() == HouseNetwork.Kind.HOT)
        .filter(c -> behind(breaker.get(), c, r))
        .max(Comparator.comparingDouble(c -> r.solution().amps(c.box(), c.local()).magnitude()))
        .map(c -> new Measured(figures.amps(c), "breaker " + subject + " carries %s", "from " + c.run(), ""));
  }

  private static boolean behind(BreakerId breaker, HouseNetwork.Conductor c, TrialResult r) {
    // By the conductor and not by its leg: two fuses of one leg may each feed a hot of one branch.
    return c.branch().isPresent()
        ? c.role().flatMap(Role::hotOf).filter(h -> isFedBy(r.house().branches().get(c.branch().get()), h, breaker)).isPresent()
        : c.run().startsWith(breaker + " to ");
  }

  private static boolean isFedBy(Branch branch, int hot, BreakerId breaker) {
    return hot < branch.hots().size() && branch.hots().get(hot).breaker().equals(breaker);
  }

  private static String device(String subject, TrialResult r) {
    int dot = subject.lastIndexOf('.');
    return r.house().devices().containsKey(subject) || dot < 0 ? subject : subject.substring(0, dot);
  }

  // ---- Volts

  private static Optional<TrialResult.OutletReading> outlet(TrialResult r, String subject) {
    return r.outlets().stream()
        .filter(o -> (o.name().equals(subject) || o.device().equals(subject)) && !o.floating())
        // Of an appliance with parts at two voltages the main one, across the hots, is meant; of alike ones the worst.
        .min(Comparator.comparingDouble(o -> -o.nominal().si()));
  }

  private static Optional<Measured> voltage(TrialResult r, String subject) {
    Optional<TrialResult.FeederReading> panel = panel(r, subject);
    if (panel.isPresent()) {
      return panel.map(p -> new Measured(p.volts(), "panel '" + subject + "' gets %s", "of " + p.nominal().value().text(), ""));
    }
    return outlet(r, subject)
        .map(o -> new Measured(o.volts(), "'" + subject + "' gets %s", "of " + o.nominal().value().text(), ""));
  }

  private static Optional<TrialResult.FeederReading> panel(TrialResult r, String subject) {
    return r.house().devices().containsKey(subject)
        ? Optional.empty()
        : r.feeders().stream().filter(f -> f.panel().equals(subject)).findFirst();
  }

  private static Optional<Measured> fall(TrialResult r, String subject) {
    Optional<TrialResult.FeederReading> panel = panel(r, subject);
    if (panel.isPresent()) {
      return panel.map(p -> new Measured(p.fall(), "the voltage falls by %s up to panel '" + subject + "'", p.volts().value().text()
          + " there", ""));
    }
    return outlet(r, subject)
        .map(o -> new Measured(o.fall(), "the voltage falls by %s up to '" + subject + "'", o.volts().value().text() + " there", ""));
  }

  private static Optional<TrialResult.MetalReading> metal(TrialResult r, String subject) {
    return r.metals().stream()
        .filter(m -> m.name().equals(subject) || Place.of(r.house(), m.name()).map(Place::name).equals(Optional.of(subject)))
        .findFirst();
  }

  private static Optional<Measured> touchVoltage(TrialResult r, String subject) {
    return metal(r, subject)
        .map(m -> new Measured(m.volts(), "the metal of '" + subject + "' is at %s", "to remote earth", ""));
  }

  private static Optional<Measured> touchCurrent(TrialResult r, String subject) {
    return metal(r, subject)
        .flatMap(TrialResult.MetalReading::bodyAmps)
        .map(a -> new Measured(a, "a person who touches '" + subject + "' carries %s", "", ""));
  }

  // ---- Heat, power, faults

  private static Optional<Measured> heat(TrialResult r, String subject) {
    List<HouseNetwork.Conductor> all = r.network().conductors().stream().filter(isOf(r, subject, HouseNetwork.Kind.HOT)).toList();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    // At one place the joint is meant, where there is one; else all that the wires lose.
    Optional<TrialResult.JointReading> joint = r.joints().stream().filter(j -> j.at().equals(subject)).findFirst();
    if (joint.isPresent()) {
      return Optional.of(new Measured(joint.get().watts(), "the joint at '" + subject + "' gives off %s", joint.get().conductor(), ""));
    }
    double watts = all.stream().mapToDouble(c -> r.solution().wattsLost(c.box(), c.local())).sum();
    return Optional.of(new Measured(figure("heat of " + subject, watts, Units.WATT), "the wires of '" + subject + "' give off %s", "", ""));
  }

  private static Optional<Measured> power(TrialResult r, String subject) {
    boolean branch = r.house().branches().containsKey(subject);
    if (!branch && !r.house().devices().containsKey(device(subject, r))) {
      return Optional.empty();
    }
    double watts = r.network().loads().stream()
        .filter(
            l -> branch ? l.outlet().branch().equals(subject) : l.outlet().name().equals(subject) || l.outlet().device().equals(subject))
        .mapToDouble(l -> r.solution().elementPower(l.element()).re())
        .sum();
    return Optional.of(new Measured(figure("power of " + subject, watts, Units.WATT), "'" + subject + "' takes %s", "", ""));
  }

  private static Optional<ProtectionReading> protection(TrialResult r, String subject) {
    return r.allProtections().stream()
        .filter(p -> p.residual().isPresent() && (p.name().equals(subject) || p.name().equals("breaker " + subject))).findFirst();
  }

  /** The greater of what it is with nobody touching and with a hand on what is off its ground. */
  private static Optional<Measured> residual(TrialResult r, String subject) {
    return protection(r, subject)
        .map(p -> p.touched().filter(t -> t.si() > p.residual().orElseThrow().si()).orElse(p.residual().orElseThrow()))
        .map(d -> new Measured(d, "the residual current of '" + subject + "' is %s", "", ""));
  }

  private static Optional<Measured> tripTime(TrialResult r, String subject) {
    return protection(r, subject)
        .flatMap(ProtectionReading::within)
        .map(d -> new Measured(d, "'" + subject + "' may take %s to trip", "at most", ""));
  }

  private static Optional<SourceReading> source(TrialResult r, String subject) {
    return r.allSources().stream().filter(s -> s.name().equals(subject)).findFirst();
  }

  private static Optional<Measured> powerGiven(TrialResult r, String subject) {
    return source(r, subject)
        .map(s -> new Measured(s.watts(), "'" + subject + "' gives %s", s.state().words(), "Below zero, power flows into it."));
  }

  private static Optional<Measured> voltageRise(TrialResult r, String subject) {
    return source(r, subject)
        .flatMap(SourceReading::rise)
        .map(d -> new Measured(d, "the voltage rises by %s up to '" + subject + "'", "over that at its breaker", ""));
  }

  private static Optional<Measured> bus(TrialResult r, String subject) {
    return r.allBuses().stream()
        .filter(b -> b.panel().equals(subject))
        .findFirst()
        .map(b -> new Measured(b.most(), "bar " + b.leg() + " of panel '" + subject + "' carries %s", b.at(), ""));
  }

  private static Optional<Measured> faultCurrent(TrialResult r, String subject) {
    return r.faults().stream()
        .filter(f -> f.at().equals(subject))
        .findFirst()
        .map(f -> new Measured(f.amps(), "the fault at '" + subject + "' draws %s", f.between(), ""));
  }

  private static Derivation figure(String name, double value, Unit unit) {
    return Derivation.computed(name, "", "", new Value.Amount(Quantity.of(value, unit)), List.of());
  }
}
