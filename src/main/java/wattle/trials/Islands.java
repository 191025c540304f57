package wattle.trials;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;

/** What of a house is joined through closed handles: services, panels and branches. */
final class Islands {
  private final House house;
  private final Map<String, String> joined = new HashMap<>();

  Islands(House house, Set<BreakerId> openBreakers, Set<String> openMains) {
    this.house = house;
    for (Panel panel : house.panels().values()) {
      if (openMains.contains(panel.name())) {
        continue;
      }
      if (panel.supply() instanceof PanelSupply.FromService from) {
        join("panel " + panel.name(), "service " + from.service());
      } else if (panel.supply() instanceof PanelSupply.FromBreaker from && !openBreakers.contains(from.breaker())) {
        join("panel " + panel.name(), "panel " + from.breaker().panel());
      }
    }
    for (Branch branch : house.branches().values()) {
      branch.hots().stream()
          .filter(h -> !openBreakers.contains(h.breaker()))
          .forEach(h -> join("branch " + branch.name(), "panel " + h.breaker().panel()));
    }
  }

  private void join(String a, String b) {
    joined.put(root(a), root(b));
  }

  private String root(String name) {
    String at = name;
    for (String next = joined.get(at); next != null && !next.equals(at); next = joined.get(at)) {
      at = next;
    }
    return at;
  }

  /** A name for all that a service is joined with. */
  String ofService(String service) {
    return root("service " + service);
  }

  /** A name for all that the branch of a device is joined with. */
  String ofDevice(String device) {
    return Place.of(house, device).map(p -> root("branch " + p.branch().name())).orElse("device " + device);
  }
}
