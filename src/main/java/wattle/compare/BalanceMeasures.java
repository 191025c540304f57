package wattle.compare;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.loads.ConnectedLoads;
import wattle.loads.LegLoads;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/** What is connected to each panel, on each leg, and how far its legs are out of balance. */
final class BalanceMeasures {
  private final ConnectedLoads loads;
  private final Measured to;

  private BalanceMeasures(ConnectedLoads loads, Measured to) {
    this.loads = loads;
    this.to = to;
  }

  static void add(Plan plan, Measured to) {
    BalanceMeasures measures = new BalanceMeasures(plan.figures().loads(), to);
    plan.house().panels().values().forEach(measures::add);
  }

  private void add(Panel panel) {
    LegLoads load = loads.panel(panel.name());
    List<Derivation> legs = new ArrayList<>();
    for (Leg leg : panel.system().legs()) {
      Derivation on = on(panel, leg, load.on(leg));
      legs.add(on);
      to.known(measure(panel, 1 + leg.ordinal(), "connected load on leg " + leg, Units.VOLT_AMPERE, 0), on, "");
    }
    List<Derivation> parts = new ArrayList<>(legs);
    if (load.unplaced() > 0) {
      Derivation unplaced = Derivation.computed("load on no known leg", "S_?", "", amount(load.unplaced()), List.of());
      parts.add(unplaced);
      to.known(measure(panel, 8, "connected load on no known leg", Units.VOLT_AMPERE, 0), unplaced, "");
    }
    Derivation all = Derivation.computed("connected load of panel " + panel.name(), "S", sum(parts), amount(load.total()), parts)
        .remarking("Everything on at once, at nominal voltage, without demand factors.");
    to.known(measure(panel, 0, "connected load", Units.VOLT_AMPERE, 0), all, "");
    if (legs.size() > 1) {
      Derivation imbalance = Derivation.computed(
          "imbalance of the legs of panel " + panel.name(), "", "max |S − S_m| / S_m",
          new Value.Amount(new Quantity(load.imbalance(panel.system()), Units.PERCENT)), legs)
          .remarking("S_m is the mean of the legs, S the leg farthest from it.");
      to.known(measure(panel, 9, "imbalance", Units.PERCENT, 1), imbalance, "");
    }
  }

  private static Measure measure(Panel panel, int order, String words, Unit unit, int decimals) {
    return new Measure(Measure.Topic.BALANCE, new Thing(Thing.Kind.PANEL, panel.name()), order, words, unit, decimals);
  }

  /** What each branch and sub-panel puts on a leg. */
  private Derivation on(Panel panel, Leg leg, double voltAmperes) {
    List<Derivation> parts = new ArrayList<>();
    Set<String> counted = new LinkedHashSet<>();
    for (Breaker breaker : panel.breakers()) {
      if (breaker.target() instanceof Breaker.Target.ToBranch branch && counted.add(branch.branch())) {
        part(parts, branch.branch(), loads.branch(branch.branch()).on(leg));
      } else if (breaker.target() instanceof Breaker.Target.ToPanel sub) {
        part(parts, "panel " + sub.panel(), loads.panel(sub.panel()).on(leg));
      }
    }
    return Derivation.computed("connected load on leg " + leg, "S_" + leg, sum(parts), amount(voltAmperes), parts);
  }

  private static void part(List<Derivation> parts, String name, double voltAmperes) {
    if (voltAmperes > 0) {
      parts.add(Derivation.computed("load of " + name, "S_" + (parts.size() + 1), "", amount(voltAmperes), List.of()));
    }
  }

  private static String sum(List<Derivation> parts) {
    return String.join(" + ", parts.stream().map(Derivation::symbol).toList());
  }

  private static Value amount(double voltAmperes) {
    return new Value.Amount(Quantity.of(voltAmperes, Units.VOLT_AMPERE));
  }
}
