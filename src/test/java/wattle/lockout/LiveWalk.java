package wattle.lockout;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Role;
import wattle.model.Section;

/**
 * Where voltage reaches in a house, found by walking its copper: wire ends, joints, contacts and loads are the graph, and
 * nothing of the lockout's own reasoning is used. The neutral bar is held at earth and so ends every walk; a neutral
 * beyond it is walked, since its joint may be opened. Every switch counts as closed, and every receptacle has something
 * plugged in.
 */
final class LiveWalk {
  private final House house;
  private final Map<String, Set<String>> joined = new HashMap<>();
  private final Set<Handle.Part> open;
  private final List<String> starts = new ArrayList<>();

  private LiveWalk(House house, Set<Handle.Part> open) {
    this.house = house;
    this.open = open;
  }

  /** Names of the ends of insulated conductors in this box that voltage reaches with these handles open. */
  static Set<String> liveEnds(House house, Set<Handle.Part> open, String box) {
    LiveWalk walk = new LiveWalk(house, open);
    walk.panels();
    house.branches().values().forEach(walk::branch);
    Set<String> reached = walk.walk();
    Set<String> live = new HashSet<>();
    for (Branch branch : house.branches().values()) {
      for (int s = 0; s < branch.sections().size(); s++) {
        Section section = branch.sections().get(s);
        for (int point : List.of(section.from(), section.to())) {
          if (branch.points().get(point).box().filter(box::equals).isPresent()) {
            for (int w = 0; w < section.conductors().size(); w++) {
              String end = end(branch, s, w, point);
              if (reached.contains(end)) {
                live.add(end);
              }
            }
          }
        }
      }
    }
    return live;
  }

  private void join(String a, String b) {
    joined.computeIfAbsent(a, k -> new HashSet<>()).add(b);
    joined.computeIfAbsent(b, k -> new HashSet<>()).add(a);
  }

  private static String end(Branch branch, int section, int wire, int point) {
    return branch.name() + "#" + section + "." + wire + "@" + point;
  }

  private static String bus(String panel, Object leg) {
    return "bus " + panel + " " + leg;
  }

  private void panels() {
    for (Panel panel : house.panels().values()) {
      if (panel.supply() instanceof PanelSupply.FromService && !open.contains(new Handle.Part.OfMain(panel.name()))) {
        panel.legs().forEach(leg -> starts.add(bus(panel.name(), leg)));
      }
      if (panel.supply() instanceof PanelSupply.FromBreaker from && isClosed(house.breaker(from.breaker()).orElseThrow())) {
        panel.legs().forEach(leg -> join(bus(panel.name(), leg), bus(from.breaker().panel(), leg)));
      }
    }
  }

  private boolean isClosed(Breaker breaker) {
    return !open.contains(new Handle.Part.OfBreaker(breaker.id()));
  }

  private void branch(Branch branch) {
    for (int p = 0; p < branch.points().size(); p++) {
      List<End> here = endsAt(branch, p);
      for (End a : here) {
        for (End b : here) {
          if (a.role.equals(b.role) && !(a.role instanceof Role.Spare)) {
            join(a.name, b.name);
          }
        }
        if (p == 0 && a.role instanceof Role.Hot hot && hot.hot() < branch.hots().size()) {
          var from = branch.hots().get(hot.hot());
          if (isClosed(house.breaker(from.breaker()).orElseThrow())) {
            join(a.name, bus(from.breaker().panel(), from.leg().orElseThrow()));
          }
        }
      }
      for (String name : branch.points().get(p).devices()) {
        device(house.devices().get(name), here);
      }
    }
  }

  private record End(String name, Role role) {}

  private List<End> endsAt(Branch branch, int point) {
    List<End> ends = new ArrayList<>();
    for (int s = 0; s < branch.sections().size(); s++) {
      Section section = branch.sections().get(s);
      if (section.from() != point && section.to() != point) {
        continue;
      }
      for (int w = 0; w < section.conductors().size(); w++) {
        ConductorUse use = section.conductors().get(w);
        if (!(use.role() instanceof Role.Ground)) {
          ends.add(new End(end(branch, s, w, point), use.role()));
          if (section.to() == point) {
            join(end(branch, s, w, section.from()), end(branch, s, w, section.to()));
          }
        }
      }
    }
    return ends;
  }

  private void device(Device device, List<End> here) {
    if (device.kind().family() == DeviceKind.Family.SOURCE) {
      if (!open.contains(new Handle.Part.OfSource(device.name()))) {
        here.stream().filter(e -> e.role instanceof Role.Hot).forEach(e -> starts.add(e.name));
      }
      return;
    }
    if (device.kind().family() == DeviceKind.Family.SWITCH) {
      // Contacts: everything of a hot that the switch could join.
      for (End a : here) {
        for (End b : here) {
          if (hotOf(a.role) >= 0 && hotOf(a.role) == hotOf(b.role)) {
            join(a.name, b.name);
          }
        }
      }
    }
    for (Load load : device.loads()) {
      if (load.connection() instanceof Load.Connection.HotToNeutral to) {
        for (End hot : here) {
          for (End neutral : here) {
            if (hotOf(hot.role) == to.hot() && neutral.role instanceof Role.Neutral) {
              join(hot.name, neutral.name);
            }
          }
        }
      } else if (load.connection() instanceof Load.Connection.HotToHot to) {
        for (End a : here) {
          for (End b : here) {
            if (hotOf(a.role) == to.hot() && hotOf(b.role) == to.otherHot()) {
              join(a.name, b.name);
            }
          }
        }
      }
    }
  }

  private static int hotOf(Role role) {
    if (role instanceof Role.Hot h) {
      return h.hot();
    }
    if (role instanceof Role.SwitchLeg s) {
      return s.hot();
    }
    return role instanceof Role.Traveller t ? t.hot() : -1;
  }

  private Set<String> walk() {
    Set<String> reached = new HashSet<>(starts);
    Deque<String> next = new ArrayDeque<>(starts);
    while (!next.isEmpty()) {
      for (String beyond : joined.getOrDefault(next.remove(), Set.of())) {
        if (reached.add(beyond)) {
          next.add(beyond);
        }
      }
    }
    return reached;
  }
}
