package wattle.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.BranchLengths;
import wattle.conductors.Impedance;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Section;
import wattle.model.Status;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.worksheet.Worksheet;

/**
 * The share of its voltage that a branch or a feeder loses: the usual hand formula (common practice), current through out and
 * back resistance at 75 °C. Each stated load is where it is, so that a run carries what lies beyond it; a branch without stated
 * loads is figured with 80 % of its rating at its far end. The network solution (table --of voltage) has the exact figure for
 * each outlet.
 */
final class Drop {
  private static final double HOT_CELSIUS = 75;
  /** Of the breaker's rating, where the plan states no loads: the load that a branch may carry for long. */
  private static final double USUAL_SHARE = 0.8;

  private Drop() {}

  /** In percent, to the box that gets least. */
  static Optional<Quantity> of(Facts facts, Branch branch) {
    return share(facts, branch, Optional.empty()).map(Drop::percent);
  }

  private static Quantity percent(double share) {
    return Quantity.of(100 * share, Units.PERCENT);
  }

  /** The thinnest size of the same metal in which the whole branch would lose no more than a limit. */
  static Optional<WireSize> sizeWithin(Facts facts, Branch branch, double most) {
    Wire hot = branch.wiring().hot();
    return facts.conductors().ampacities().sizes(hot.metal()).stream()
        .filter(s -> s.compareTo(hot.size()) > 0)
        .filter(s -> share(facts, branch, Optional.of(s)).filter(d -> d <= most).isPresent())
        .findFirst();
  }

  /** The size that would do for a branch, and how far the wires that are there would; whole lengths in the units of the plan. */
  static Optional<String> remedy(Facts facts, Branch branch) {
    double most = SupplyProperties.advised(facts);
    return share(facts, branch, Optional.empty()).filter(s -> s > most).flatMap(
        s -> BranchLengths.farthest(branch).map(
            reach -> sizeWithin(facts, branch, most).map(size -> "run all of it in " + size + ", ").orElse("")
                + "keep its farthest box within " + whole(facts, reach * most / s) + ", or split the branch"));
  }

  /** The same of a feeder. */
  static Optional<String> remedy(Facts facts, FeederOf feeder) {
    double most = SupplyProperties.advised(facts);
    return ofFeeder(facts, feeder).map(Quantity::si).filter(s -> s > most).flatMap(
        s -> feeder.stretch().length().map(
            length -> sizeWithin(facts, feeder, most).map(size -> "run it in " + size + ", or ").orElse("")
                + "keep it within " + whole(facts, length.si() * most / s)));
  }

  /** Rounded down, so that it is within the limit. */
  private static String whole(Facts facts, double meters) {
    Quantity shown = facts.house().units().shown(Quantity.of(meters, Units.METER));
    return Quantity.of(Math.floor(shown.value()), shown.unit()).toString();
  }

  private static Optional<Double> share(Facts facts, Branch branch, Optional<WireSize> instead) {
    Optional<SupplySystem> system = facts.systemOf(branch);
    Optional<Double> rating = facts.breakersOf(branch).stream().findFirst().flatMap(Breaker::amperes);
    if (system.isEmpty() || rating.isEmpty()) {
      return Optional.empty();
    }
    boolean toNeutral = branch.hots().size() < 2 || branch.sharesNeutral();
    double volts = toNeutral ? system.get().legToNeutralVolts() : system.get().legToLegVolts();
    boolean stated = facts.loads().branch(branch.name()).total() > 0;
    double[] lost = new double[branch.points().size()];
    double most = 0;
    for (RunOf run : facts.runsOf(branch)) {
      Section section = run.section();
      if (section.status() == Status.TO_REMOVE) {
        continue;
      }
      Wiring wiring = section.wiring();
      Wire hot = wiring.hot();
      Wire used = instead.filter(s -> s.compareTo(hot.size()) > 0).map(s -> new Wire(hot.purpose(), s, hot.metal(), hot.color()))
          .orElse(hot);
      Optional<Impedance> impedance = facts.conductors().impedances().of(used, wiring);
      if (section.length().isEmpty() || impedance.isEmpty()) {
        return Optional.empty();
      }
      double amperes = stated ? Math.min(facts.circuitLoad(run).amperes(), rating.get()) : USUAL_SHARE * rating.get();
      lost[section.to()] = lost[section.from()] + amperes * 2 * section.length().get().si() * impedance.get().ohmsPerMeter(HOT_CELSIUS);
      most = Math.max(most, lost[section.to()]);
    }
    return Optional.of(most / volts);
  }

  // ---- Feeders

  /** In percent, at the load calculated for the feeder, or else at what is connected, its breaker's rating at most. */
  static Optional<Quantity> ofFeeder(Facts facts, FeederOf feeder) {
    return share(facts, feeder.panel(), feeder.stretch().wiring().hot().size()).map(Drop::percent);
  }

  /** The thinnest size of the same metal in which a feeder would lose no more than a limit. */
  static Optional<WireSize> sizeWithin(Facts facts, FeederOf feeder, double most) {
    Wire hot = feeder.stretch().wiring().hot();
    return facts.conductors().ampacities().sizes(hot.metal()).stream()
        .filter(s -> s.compareTo(hot.size()) > 0)
        .filter(s -> share(facts, feeder.panel(), s).filter(d -> d <= most).isPresent())
        .findFirst();
  }

  /** Amperes that a feeder is figured with; absent where nothing is known of its load. */
  static Optional<Double> amperes(Facts facts, Panel panel) {
    Optional<Double> rating = panel.supply() instanceof PanelSupply.FromBreaker from
        ? facts.breaker(from.breaker()).flatMap(Breaker::amperes)
        : Optional.empty();
    Optional<Double> calculated = facts.calculated(panel).map(Worksheet::current).map(d -> d.si());
    double connected = facts.loads().panel(panel.name()).heaviestAmperes(panel.system());
    double load = calculated.filter(c -> c > 0).map(c -> connected > 0 ? Math.min(c, connected) : c).orElse(connected);
    return load > 0 ? rating.map(r -> Math.min(r, load)) : Optional.empty();
  }

  private static Optional<Double> share(Facts facts, Panel panel, WireSize size) {
    Optional<Stretch> stretch = panel.feeder().filter(s -> s.length().isPresent());
    Optional<Double> amperes = amperes(facts, panel);
    if (stretch.isEmpty() || amperes.isEmpty()) {
      return Optional.empty();
    }
    Wiring wiring = stretch.get().wiring();
    Wire used = new Wire(wiring.hot().purpose(), size, wiring.hot().metal(), wiring.hot().color());
    double meters = stretch.get().length().get().si();
    return facts.conductors().impedances().of(used, wiring)
        .map(i -> amperes.get() * meters * i.ohmsPerMeter(HOT_CELSIUS) * factor(panel.system()));
  }

  /** Out and back between two legs, or to the neutral; in a three-phase feeder √3 of one way. Over the voltage that it is a part of. */
  private static double factor(SupplySystem system) {
    return switch (system.legs().size()) {
      case 1 -> 2 / system.legToNeutralVolts();
      case 2 -> 2 / system.legToLegVolts();
      default -> Math.sqrt(3) / system.legToLegVolts();
    };
  }

  /** In percent, of the feeders that a panel hangs on, from the service on; 0 for a panel at the service. */
  static Optional<Quantity> before(Facts facts, Panel panel) {
    double sum = 0;
    Set<String> seen = new HashSet<>();
    for (Panel at = panel; at != null && at.supply() instanceof PanelSupply.FromBreaker from
        && seen.add(at.name()); at = facts.house().panels().get(
            from.breaker().panel())) {
      Optional<Double> share = share(facts, at, at.feeder().map(f -> f.wiring().hot().size()).orElse(WireSize.awg(14)));
      if (share.isEmpty()) {
        return Optional.empty();
      }
      sum += share.get();
    }
    return Optional.of(percent(sum));
  }

  /** The branch of a panel that loses most on its own way; absent where no figure of a branch is known. */
  static Optional<Branch> worst(Facts facts, Panel panel) {
    Branch worst = null;
    double most = -1;
    for (Branch branch : facts.branchesOf(panel)) {
      double share = share(facts, branch, Optional.empty()).orElse(-1.0);
      if (share > most && branch.status() != Status.TO_REMOVE) {
        most = share;
        worst = branch;
      }
    }
    return Optional.ofNullable(worst);
  }

  /** In percent, from the service to the box that gets least of those behind a panel. */
  static Optional<Quantity> whole(Facts facts, Panel panel) {
    Optional<Quantity> before = before(facts, panel);
    Optional<Quantity> own = worst(facts, panel).flatMap(b -> of(facts, b));
    return before.flatMap(b -> own.map(o -> Quantity.of(b.value() + o.value(), Units.PERCENT)));
  }
}
