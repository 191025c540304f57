package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;

/** Who feeds what: branches by box, breakers by branch, sources by branch and by panel. */
final class Circuits {
  private final House house;
  private final Map<String, Set<String>> branchesByBox = new LinkedHashMap<>();
  private final Map<BreakerId, Breaker> breakers = new LinkedHashMap<>();

  Circuits(House house) {
    this.house = house;
    for (Branch branch : house.branches().values()) {
      for (Point point : branch.points()) {
        point.box().ifPresent(b -> branchesByBox.computeIfAbsent(b, k -> new LinkedHashSet<>()).add(branch.name()));
      }
    }
    house.panels().values().forEach(p -> p.breakers().forEach(b -> breakers.putIfAbsent(b.id(), b)));
  }

  /** Branches that come to a box, in the order of the plan. */
  List<Branch> at(String box) {
    return branchesByBox.getOrDefault(box, Set.of()).stream().map(house.branches()::get).toList();
  }

  Optional<Breaker> breaker(BreakerId id) {
    return Optional.ofNullable(breakers.get(id));
  }

  /** The breakers of a branch, each once. Two breakers on one shared neutral are two handles, and both count. */
  List<Breaker> breakersOf(Branch branch) {
    return branch.hots().stream().map(BranchHot::breaker).distinct().flatMap(id -> breaker(id).stream()).toList();
  }

  /** What several are: fuses only where every one is. */
  static String kind(List<Breaker> several) {
    return several.stream().allMatch(b -> b.device() == Breaker.Device.FUSE) ? " fuses" : " breakers";
  }

  /** Devices on a branch that can make it live from their side. */
  List<Device> sourcesOn(Branch branch) {
    return devicesOn(branch).stream().filter(d -> d.kind().family() == DeviceKind.Family.SOURCE).toList();
  }

  List<Device> devicesOn(Branch branch) {
    return branch.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get).toList();
  }

  /** Panels that a panel feeds, directly. */
  List<Panel> fedBy(Panel panel) {
    return house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromBreaker f && f.breaker().panel().equals(panel.name()))
        .toList();
  }

  /** A panel and all that hang on it, each once, so that a circle of feeders ends. */
  List<Panel> from(Panel panel) {
    Set<Panel> reached = new LinkedHashSet<>(List.of(panel));
    List<Panel> open = new ArrayList<>(reached);
    while (!open.isEmpty()) {
      for (Panel next : fedBy(open.remove(0))) {
        if (reached.add(next)) {
          open.add(next);
        }
      }
    }
    return List.copyOf(reached);
  }

  /** Whether something beyond this breaker can feed the panel that it is in. */
  boolean canBackFeed(Breaker breaker) {
    return breaker.backFed() || !sourcesBeyond(breaker).isEmpty();
  }

  /** Sources on the branch that a breaker feeds, or anywhere on the panels that it feeds. */
  List<Device> sourcesBeyond(Breaker breaker) {
    if (breaker.target() instanceof Breaker.Target.ToBranch to) {
      return Optional.ofNullable(house.branches().get(to.branch())).map(this::sourcesOn).orElse(List.of());
    }
    if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
      return from(house.panels().get(to.panel())).stream()
          .filter(p -> !p.name().equals(breaker.id().panel()))
          .flatMap(p -> p.breakers().stream())
          .filter(b -> b.target() instanceof Breaker.Target.ToBranch)
          .flatMap(b -> sourcesBeyond(b).stream())
          .toList();
    }
    return List.of();
  }
}
