package wattle.rules;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.DeviceKind.Grid;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/**
 * Sources that run beside the supply of a panel, such as solar and storage, and what they bring to buses and feeders (NFPA 70 705.11,
 * 705.12, 705.28). What an interlock lets close only while the supply is open never adds to it, and what an energy management
 * system holds back ({@code load-managed}, 705.13) is left to that.
 */
final class Interconnection {
  private static final double CONTINUOUS = 1.25;

  private Interconnection() {}

  /** Amperes at nominal voltage that sources bring to the bus of a panel: those on its branches, and those behind panels that it feeds. */
  static double amperes(Facts facts, Panel panel) {
    return amperes(facts, panel, new HashSet<>());
  }

  private static double amperes(Facts facts, Panel panel, Set<String> met) {
    if (!met.add(panel.name())) {
      return 0; // feeders in a circle
    }
    double own = facts.branchesOf(panel).stream().filter(b -> runsBeside(facts, b)).mapToDouble(b -> amperes(facts, b)).sum();
    double beyond = panel.breakers().stream().filter(b -> !b.interlocked()).flatMap(b -> fed(facts, b).stream())
        .mapToDouble(p -> amperes(facts, p, met)).sum();
    return own + beyond;
  }

  /** Amperes that sources bring to a bus through one of its breakers. */
  static double amperes(Facts facts, Breaker breaker) {
    if (breaker.interlocked()) {
      return 0;
    }
    return facts.house().branchOf(breaker).map(b -> amperes(facts, b))
        .or(() -> fed(facts, breaker).map(p -> amperes(facts, p))).orElse(0.0);
  }

  /** Amperes that sources bring to a service, whatever panel they are on. */
  static double amperes(Facts facts, Service service) {
    return facts.house().panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromService from && from.service().equals(service.name()))
        .mapToDouble(p -> amperes(facts, p)).sum();
  }

  private static Optional<Panel> fed(Facts facts, Breaker breaker) {
    return facts.house().panelOf(breaker).filter(p -> p.status() != Status.TO_REMOVE);
  }

  private static boolean runsBeside(Facts facts, Branch branch) {
    return facts.breakersOf(branch).stream().noneMatch(Breaker::interlocked);
  }

  /** A generator behind a transfer switch runs where the supply is off, and never beside it. */
  private static boolean isTransferredGenerator(Facts facts, Device source) {
    return source.kind().name().contains("generator") && Standby.isTransferred(facts, source);
  }

  private static double amperes(Facts facts, Branch branch) {
    return facts.devicesOf(branch).stream()
        .filter(d -> d.kind().family() == Family.SOURCE && d.status() != Status.TO_REMOVE && !d.traits().contains("load-managed"))
        .filter(d -> !isTransferredGenerator(facts, d))
        .mapToDouble(d -> output(facts, d).orElse(0.0)).sum();
  }

  /** Amperes at nominal voltage that a source gives; absent where its supply is not known. */
  static Optional<Double> output(Facts facts, Device source) {
    Optional<SupplySystem> system = facts.branchOf(source).flatMap(facts::systemOf);
    return system.map(s -> Math.abs(source.voltAmperes()) / volts(facts, source, s));
  }

  /** By which its volt-amperes are divided to amperes of each of its hots. */
  static double volts(Facts facts, Device source, SupplySystem system) {
    int hots = facts.branchOf(source).orElseThrow().hots().size();
    return hots > 2 ? Math.sqrt(3) * system.legToLegVolts() : hots == 2 ? system.legToLegVolts() : system.legToNeutralVolts();
  }

  /** What opens before a bus is overloaded from its supply: its main, or the breaker of its feeder, whichever is less. */
  static Optional<Quantity> protection(Facts facts, Panel panel) {
    Stream<Quantity> main = panel.main()
        .filter(m -> m.kind() == MainDevice.Kind.BREAKER || m.kind() == MainDevice.Kind.FUSE).flatMap(MainDevice::rating).stream();
    Stream<Quantity> feeder = panel.supply() instanceof PanelSupply.FromBreaker from
        ? facts.breaker(from.breaker()).flatMap(Breaker::rating).stream()
        : Stream.empty();
    return Stream.concat(main, feeder).min(Comparator.comparingDouble(Quantity::si)).or(() -> SupplyProperties.supplyRating(facts, panel));
  }

  /**
   * Whether a breaker stands at the end of its bus that a source may be at: in the rows farthest from the main, with nothing but other
   * sources beyond it; of a center-fed panel of a dwelling at either end, if no source is at the other.
   */
  static boolean atEnd(Facts facts, Breaker breaker) {
    Panel panel = facts.house().panels().get(breaker.id().panel());
    int slots = panel == null ? 0 : panel.slotCount().orElse(0);
    if (slots == 0) {
      return false;
    }
    int last = panel.order().rowOf(slots, slots);
    if (!panel.flags().getOrDefault("center-fed", false)) {
      return standsFrom(facts, panel, breaker, slots, last, -1);
    }
    List<Breaker> sources = panel.breakers().stream().filter(b -> b.id().equals(breaker.id()) || isSource(facts, b)).toList();
    return facts.isResidential() && (sources.stream().allMatch(b -> standsFrom(facts, panel, b, slots, last, -1))
        || sources.stream().allMatch(b -> standsFrom(facts, panel, b, slots, 1, 1)));
  }

  private static boolean isSource(Facts facts, Breaker breaker) {
    return breaker.backFed() || amperes(facts, breaker) > 0;
  }

  /** Whether it is in the rows from one end on that have sources in them without a gap. */
  private static boolean standsFrom(Facts facts, Panel panel, Breaker breaker, int slots, int end, int step) {
    Set<Integer> own = rows(panel, breaker, slots);
    Set<Integer> filled = new HashSet<>(own);
    panel.breakers().stream().filter(b -> isSource(facts, b)).forEach(b -> filled.addAll(rows(panel, b, slots)));
    for (int row = end; filled.contains(row); row += step) {
      if (own.contains(row)) {
        return true;
      }
    }
    return false;
  }

  private static Set<Integer> rows(Panel panel, Breaker breaker, int slots) {
    Set<Integer> rows = new HashSet<>();
    breaker.poles().forEach(p -> rows.add(panel.order().rowOf(p.slot().number(), slots)));
    return rows;
  }

  /** The hots of a run to inverters, held against 125 % of what those give; absent of other runs. */
  static Optional<CircuitCheck> conductors(Facts facts, RunOf run) {
    return load(facts, run).flatMap(l -> CircuitCheck.of(facts, run, l));
  }

  /** The thinnest size of the same metal that would carry it. */
  static Optional<WireSize> least(Facts facts, RunOf run) {
    return load(facts, run).flatMap(l -> CircuitCheck.least(facts, run, l));
  }

  private static Optional<CircuitLoad> load(Facts facts, RunOf run) {
    double amperes = CircuitLoad.beyond(facts, run.branch(), run.section()).stream()
        .filter(d -> d.kind().family() == Family.SOURCE && d.kind().grid().filter(g -> g != Grid.FORMS).isPresent())
        .mapToDouble(d -> output(facts, d).orElse(0.0)).sum();
    return amperes > 0 ? Optional.of(new CircuitLoad(amperes, amperes, CONTINUOUS * amperes, "")) : Optional.empty();
  }
}
