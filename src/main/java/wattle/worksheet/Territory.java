package wattle.worksheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Status;

/** Which panels hang on which, which branches start there, and to which dwelling a panel belongs. */
final class Territory {
  private final House house;
  private final Map<String, Dwelling> named = new HashMap<>();
  private final Map<String, List<Branch>> branches = new HashMap<>();

  Territory(House house) {
    this.house = house;
    house.dwellings().values().forEach(d -> d.panels().forEach(p -> named.putIfAbsent(p, d)));
    house.branches().values().stream()
        .filter(b -> b.status() != Status.TO_REMOVE)
        .forEach(b -> b.panel().ifPresent(p -> branches.computeIfAbsent(p, n -> new ArrayList<>()).add(b)));
  }

  /** A panel and all that it feeds, each once, even where feeders run in a circle. */
  List<Panel> downstream(Panel panel) {
    Set<Panel> found = new LinkedHashSet<>();
    collect(panel, found, new HashSet<>());
    return List.copyOf(found);
  }

  private void collect(Panel panel, Set<Panel> found, Set<String> seen) {
    if (!seen.add(panel.name())) {
      return;
    }
    found.add(panel);
    for (Breaker breaker : panel.breakers()) {
      if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
        collect(house.panels().get(to.panel()), found, seen);
      }
    }
  }

  List<Branch> branches(Panel panel) {
    return branches.getOrDefault(panel.name(), List.of());
  }

  /** The dwelling that names a panel, or names the one that feeds it; where none names any, the only dwelling. */
  Optional<Dwelling> dwellingOf(Panel panel) {
    if (named.isEmpty()) {
      return house.dwellings().size() == 1 ? house.dwelling() : Optional.empty();
    }
    Panel at = panel;
    for (int steps = 0; steps <= house.panels().size(); steps++) {
      if (named.containsKey(at.name())) {
        return Optional.of(named.get(at.name()));
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !house.panels().containsKey(from.breaker().panel())) {
        return Optional.empty();
      }
      at = house.panels().get(from.breaker().panel());
    }
    return Optional.empty();
  }

  /** Whether panels hold all branches of the dwellings that they belong to. */
  boolean isWhole(List<Panel> panels) {
    Set<Optional<Dwelling>> dwellings = new HashSet<>();
    Set<String> names = new HashSet<>();
    for (Panel panel : panels) {
      dwellings.add(dwellingOf(panel));
      names.add(panel.name());
    }
    return !dwellings.contains(Optional.<Dwelling>empty())
        && house.panels().values().stream()
            .filter(p -> !branches(p).isEmpty() && dwellings.contains(dwellingOf(p)))
            .allMatch(p -> names.contains(p.name()));
  }
}
