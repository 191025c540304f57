package wattle.faults;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/**
 * The panels that a fault current comes through, the one next to the service first.
 *
 * @param panels names, and what a fault drives at each
 */
record Upstream(List<FaultPoint> panels) {
  /** Of what hangs on a panel. */
  static Upstream through(House house, Faults faults, Panel panel) {
    LinkedList<FaultPoint> panels = new LinkedList<>();
    Set<String> met = new HashSet<>(); // feeders in a circle end
    for (Optional<Panel> at = Optional.of(panel); at.isPresent() && met.add(at.get().name()); at = above(house, at.get())) {
      panels.addFirst(faults.panel(at.get().name()));
    }
    return new Upstream(List.copyOf(panels));
  }

  private static Optional<Panel> above(House house, Panel panel) {
    return panel.supply() instanceof PanelSupply.FromBreaker from
        ? Optional.ofNullable(house.panels().get(from.breaker().panel()))
        : Optional.empty();
  }

  /** How many panels stand between the service and what hangs on this one. */
  int depth() {
    return panels.size();
  }

  /** Whether one of them is among these. */
  boolean comesThrough(Set<String> names) {
    return panels.stream().anyMatch(p -> names.contains(p.place()));
  }

  /**
   * The panel whose feeder has the most of the way that holds a fault down, where that is more than what is beyond them all.
   * The share of a piece of the way is what it adds to the reciprocal of the current, which is in proportion to its impedance.
   *
   * @param amperes least current at the far end
   */
  Optional<String> blamed(FaultKind kind, double amperes) {
    List<Double> reciprocals = new ArrayList<>();
    for (FaultPoint panel : panels) {
      Optional<Fault> there = panel.fault(kind);
      if (there.isEmpty()) {
        return Optional.empty();
      }
      reciprocals.add(1 / there.get().leastAmperes());
    }
    double most = 1 / amperes - reciprocals.get(reciprocals.size() - 1);
    Optional<String> blamed = Optional.empty();
    for (int i = 1; i < reciprocals.size(); i++) {
      double share = reciprocals.get(i) - reciprocals.get(i - 1);
      if (share > most) {
        most = share;
        blamed = Optional.of(panels.get(i).place());
      }
    }
    return blamed;
  }
}
