package wattle.loads;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.emit.media.unfolded.DerivationText;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.LoadClass;
import wattle.model.Panel;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/**
 * Connected loads, unfolded: the load of a panel to that of its branches and panels, of a branch to that of its devices,
 * of a device to what the plan states.
 */
public final class LoadFigures {
  /** How the names of power factors begin that come from the kind of a device. */
  public static final String USUAL_POWER_FACTOR = "usual power factor of a ";

  private static final String SHARES = "A load between two legs counts half on each; parts to be removed are not counted.";

  private final House house;
  private final ConnectedLoads loads;

  public LoadFigures(House house, ConnectedLoads loads) {
    this.house = house;
    this.loads = loads;
  }

  /** Of a branch; on one leg, or all of it where none is given. */
  public Derivation branch(Branch branch, Optional<Leg> leg) {
    return branch(branch, leg, loads.branch(branch.name()), load -> true);
  }

  private Derivation branch(Branch branch, Optional<Leg> leg, LegLoads load, Predicate<Load> some) {
    List<Derivation> inputs = new ArrayList<>();
    if (branch.status() != Status.TO_REMOVE) {
      branch.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get)
          .filter(d -> d != null && d.status() != Status.TO_REMOVE)
          .forEach(d -> d.loads().stream().filter(some).forEach(l -> device(branch, d, l, leg).ifPresent(inputs::add)));
    }
    return sum("load of " + branch.name() + on(leg), leg.map(load::on).orElse(load.total()), inputs);
  }

  private static Optional<Derivation> device(Branch branch, Device device, Load load, Optional<Leg> leg) {
    if (load.voltAmperes() == 0 || load.loadClass() == LoadClass.SOURCE) {
      return Optional.empty();
    }
    String name = load.part().isEmpty() ? device.name() : device.name() + "." + load.part();
    boolean other = Math.abs(load.voltAmperes() - load.nameplateVoltAmperes()) > 1e-9 * load.nameplateVoltAmperes();
    String remark = other
        ? "At its rated " + device.ratedVoltage().orElseThrow() + "; at the voltage that it gets it draws "
            + Quantity.plain(100 * load.voltAmperes() / load.nameplateVoltAmperes(), 3) + " % of that."
        : "At nominal voltage.";
    Derivation stated = load.rated().map(r -> Derivation.stated("rating of " + name, "", r).remarking(remark))
        .orElse(Derivation.assumed("usual load of " + name, "", Quantity.of(load.voltAmperes(), Units.VOLT_AMPERE)));
    Derivation whole = load.isInWatts() && load.powerFactor() < 1
        ? value("load of " + name, "S", "P / cos φ", load.voltAmperes(), Units.VOLT_AMPERE,
            List.of(stated.named(stated.name(), "P"), factor(device, load)))
        : value("load of " + name, "S", "", load.voltAmperes(), Units.VOLT_AMPERE, List.of(stated));
    double share = leg.map(l -> share(branch, load.connection(), l)).orElse(1.0);
    if (share == 0 || share == 1) {
      return share == 0 ? Optional.empty() : Optional.of(whole);
    }
    return Optional.of(value("half of " + name, "S_h", "S / 2", load.voltAmperes() * share, Units.VOLT_AMPERE, List.of(whole)));
  }

  private static Derivation factor(Device device, Load load) {
    Quantity factor = Quantity.of(load.powerFactor(), Units.ONE);
    return device.facts().containsKey("power-factor")
        ? Derivation.stated("power factor of " + device.name(), "cos φ", factor)
        : Derivation.assumed(USUAL_POWER_FACTOR + device.kind().name(), "cos φ", factor);
  }

  private static double share(Branch branch, Load.Connection connection, Leg leg) {
    if (connection instanceof Load.Connection.HotToNeutral to) {
      return isOn(branch, to.hot(), leg) ? 1 : 0;
    }
    if (connection instanceof Load.Connection.HotToHot across) {
      return (isOn(branch, across.hot(), leg) ? 0.5 : 0) + (isOn(branch, across.otherHot(), leg) ? 0.5 : 0);
    }
    return 0;
  }

  private static boolean isOn(Branch branch, int hot, Leg leg) {
    return hot < branch.hots().size() && branch.hots().get(hot).leg().equals(Optional.of(leg));
  }

  /** Of a panel with those that it feeds; on one leg, or all of it where none is given. */
  public Derivation panel(Panel panel, Optional<Leg> leg) {
    return panel(panel, leg, new HashSet<>());
  }

  private Derivation panel(Panel panel, Optional<Leg> leg, Set<String> above) {
    List<Derivation> inputs = new ArrayList<>();
    if (above.add(panel.name())) {
      Set<String> counted = new HashSet<>();
      for (Breaker breaker : panel.breakers()) {
        if (breaker.target() instanceof Breaker.Target.ToBranch to && house.branches().containsKey(to.branch())
            && counted.add(to.branch())) {
          inputs.add(branch(house.branches().get(to.branch()), leg));
        } else if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
          inputs.add(panel(house.panels().get(to.panel()), leg, above));
        }
      }
      above.remove(panel.name());
    }
    LegLoads load = loads.panel(panel.name());
    return sum("load of " + panel.name() + on(leg), leg.map(load::on).orElse(load.total()),
        inputs.stream().filter(i -> i.si() != 0).toList());
  }

  /** Of one pole of a breaker. */
  public Optional<Derivation> behind(Breaker breaker, Leg leg) {
    if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
      return Optional.of(panel(house.panels().get(to.panel()), Optional.of(leg)));
    }
    return house.branchOf(breaker).filter(b -> ownLeg(b, breaker, leg))
        .map(b -> branch(b, Optional.of(leg), loads.behind(house, breaker), load -> isBehind(b, breaker, load)));
  }

  /** Of two hots of one leg each carries what is connected to it, and not what is on its leg. */
  private static boolean isBehind(Branch branch, Breaker breaker, Load load) {
    return !(load.connection() instanceof Load.Connection.HotToNeutral to)
        || to.hot() < branch.hots().size() && branch.hots().get(to.hot()).breaker().equals(breaker.id());
  }

  private static boolean ownLeg(Branch branch, Breaker breaker, Leg leg) {
    return branch.hots().stream().map(BranchHot::breaker).allMatch(breaker.id()::equals)
        || branch.hots().stream().anyMatch(h -> h.breaker().equals(breaker.id()) && h.leg().equals(Optional.of(leg)));
  }

  /** Amperes of the heaviest leg of a branch or panel. */
  public Derivation heaviest(LegLoads load, SupplySystem system) {
    return LegCurrents.heaviest("current of the heaviest leg", load, system);
  }

  /** What a branch has connected. */
  public LegLoads of(Branch branch) {
    return loads.branch(branch.name());
  }

  /** The breaker of a branch that carries most of its rating, where each hot has one of its own; else the only one. */
  public Optional<Breaker> busiest(Branch branch, SupplySystem system) {
    return branch.hots().stream().map(BranchHot::breaker).distinct().flatMap(id -> house.breaker(id).stream())
        .max(Comparator.comparingDouble(b -> behind(b).heaviestAmperes(system) / b.amperes().orElse(Double.MAX_VALUE)));
  }

  /** What a breaker has connected behind it. */
  public LegLoads behind(Breaker breaker) {
    return loads.behind(house, breaker);
  }

  /** What a panel has connected, with those that it feeds. */
  public LegLoads of(Panel panel) {
    return loads.panel(panel.name());
  }

  /** The figure alone; it is unfolded under its own name, once and not beneath everything that rests on it. */
  private static Derivation folded(Derivation figure, String symbol) {
    return new Derivation(
        figure.name(), symbol, figure.value(), figure.basis(), figure.formula(), List.of(), figure.sources(),
        "Unfolded under its own name.");
  }

  /** A current as a part of a breaker. */
  public Derivation share(Derivation current, double rating) {
    Derivation breaker = Derivation.stated("rating", "I_n", Quantity.of(rating, Units.AMPERE));
    return Derivation.computed(
        "share of the rating", "", "I / I_n", new Value.Amount(new Quantity(current.si() / rating, Units.PERCENT)),
        List.of(folded(current, "I"), breaker));
  }

  /** How far the legs of a panel are out of balance. */
  public Derivation imbalance(Panel panel, List<Derivation> legs) {
    return Derivation.computed(
        "imbalance of " + panel.name(), "", "max |S_leg − mean| / mean",
        new Value.Amount(new Quantity(loads.panel(panel.name()).imbalance(panel.system()), Units.PERCENT)), folded(legs))
        .remarking("The measure of NEMA MG 1 for unbalanced voltages, applied to the loads of the legs.");
  }

  /** The heaviest leg of a panel less the lightest. */
  public Derivation difference(Panel panel, List<Derivation> legs) {
    return value(
        "difference of " + panel.name(), "", "max S_leg − min S_leg", loads.panel(panel.name()).difference(panel.system()),
        Units.VOLT_AMPERE, folded(legs));
  }

  private static List<Derivation> folded(List<Derivation> legs) {
    return legs.stream().map(l -> folded(l, "S_leg")).toList();
  }

  private static String on(Optional<Leg> leg) {
    return leg.map(l -> " on leg " + l).orElse("");
  }

  private static Derivation sum(String name, double voltAmperes, List<Derivation> inputs) {
    return value(name, "S", "Σ S", voltAmperes, Units.VOLT_AMPERE, inputs).remarking(SHARES);
  }

  private static Derivation value(String name, String symbol, String formula, double value, Unit unit, List<Derivation> inputs) {
    return Derivation.computed(name, symbol, formula, new Value.Amount(Quantity.of(value, unit)), inputs);
  }
}
