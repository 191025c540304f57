package wattle.worksheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Service;
import wattle.model.Status;

/** Which panels hang on which, which branches start there, and to which dwelling a panel belongs. */
final class Territory {
  private final House house;
  private final Map<String, Dwelling> named = new HashMap<>();
  private final Map<String, List<Branch>> branches = new HashMap<>();
  private final Map<String, List<Panel>> ofService = new HashMap<>();
  private final Map<String, Optional<Dwelling>> dwellings = new HashMap<>();
  /** Panels with branches by the name of their dwelling, which is empty for one that has none. */
  private final Map<String, List<String>> panelsOf = new HashMap<>();

  Territory(House house) {
    this.house = house;
    house.dwellings().values().forEach(d -> d.panels().forEach(p -> named.putIfAbsent(p, d)));
    house.branches().values().stream()
        .filter(b -> b.status() != Status.TO_REMOVE)
        .forEach(b -> b.panel().ifPresent(p -> branches.computeIfAbsent(p, n -> new ArrayList<>()).add(b)));
    for (Panel panel : house.panels().values()) {
      house.serviceOf(panel).ifPresent(s -> ofService.computeIfAbsent(s.name(), n -> new ArrayList<>()).add(panel));
      Optional<Dwelling> dwelling = findDwelling(panel);
      dwellings.put(panel.name(), dwelling);
      if (dwelling.isPresent() && branches.containsKey(panel.name())) {
        panelsOf.computeIfAbsent(nameOf(dwelling.get()), n -> new ArrayList<>()).add(panel.name());
      }
    }
  }

  private static String nameOf(Dwelling dwelling) {
    return dwelling.name().orElse("");
  }

  /** All panels that hang on a service in the end. */
  List<Panel> panels(Service service) {
    return ofService.getOrDefault(service.name(), List.of());
  }

  /** A panel and all that it feeds, each once, even where feeders run in a circle. */
  List<Panel> downstream(Panel panel) {
    Map<String, Panel> found = new LinkedHashMap<>();
    collect(panel, found);
    return List.copyOf(found.values());
  }

  private void collect(Panel panel, Map<String, Panel> found) {
    if (found.putIfAbsent(panel.name(), panel) != null) {
      return;
    }
    for (Breaker breaker : panel.breakers()) {
      house.panelOf(breaker).ifPresent(fed -> collect(fed, found));
    }
  }

  List<Branch> branches(Panel panel) {
    return branches.getOrDefault(panel.name(), List.of());
  }

  /** The dwelling that names a panel, or names the one that feeds it; where none names any, the only dwelling. */
  Optional<Dwelling> dwellingOf(Panel panel) {
    return dwellings.getOrDefault(panel.name(), Optional.empty());
  }

  private Optional<Dwelling> findDwelling(Panel panel) {
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

  /** Whether panels hold all branches of each dwelling that they belong to, and belong to one at least; house loads may hang beside. */
  boolean isWhole(List<Panel> panels) {
    Set<String> names = panels.stream().map(Panel::name).collect(Collectors.toSet());
    List<Dwelling> served = panels.stream().flatMap(p -> dwellingOf(p).stream()).distinct().toList();
    return !served.isEmpty() && served.stream().allMatch(d -> names.containsAll(panelsOf.getOrDefault(nameOf(d), List.of())));
  }

  /** All panels of a dwelling that have branches, those of its outbuildings too. */
  List<Panel> panelsOf(Dwelling dwelling) {
    return panelsOf.getOrDefault(nameOf(dwelling), List.of()).stream().map(p -> house.panels().get(p)).toList();
  }

  /**
   * The panel at which the farm load begins that a panel belongs to: the first on the way from the service that is marked {@code farm};
   * absent for what is of no farm building.
   */
  Optional<Panel> farmOf(Panel panel) {
    Optional<Panel> farm = Optional.empty();
    Panel at = panel;
    for (int steps = 0; steps <= house.panels().size(); steps++) {
      if (at.flags().getOrDefault("farm", false)) {
        farm = Optional.of(at);
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !house.panels().containsKey(from.breaker().panel())) {
        return farm;
      }
      at = house.panels().get(from.breaker().panel());
    }
    return farm;
  }

  /** Whether a panel stands in an outbuilding that no dwelling names: a workshop, a shed, a detached garage. */
  boolean isInOutbuilding(Panel panel) {
    Panel at = panel;
    for (int steps = 0; steps <= house.panels().size(); steps++) {
      if (named.containsKey(at.name())) {
        return false;
      }
      if (at.kind().equals(Optional.of("outbuilding"))) {
        return true;
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !house.panels().containsKey(from.breaker().panel())) {
        return false;
      }
      at = house.panels().get(from.breaker().panel());
    }
    return false;
  }
}
