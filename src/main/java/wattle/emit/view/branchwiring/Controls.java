package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Point;
import wattle.model.Role;

/** Which switches of a branch work which lights, and in which order they stand on the way. */
final class Controls {
  /**
   * Switches of the same lights: the first takes the feed, the last sends the switch leg.
   *
   * @param hots which of the branch's hots they open, from 0; several of one that opens two
   */
  record Group(List<String> switches, List<Integer> hots) {
    int hot() {
      return hots.get(0);
    }

    /** The switch leg on a hot; absent where they do not open it. */
    Optional<Role> leg(int hot) {
      return hots.contains(hot) ? Optional.of(new Role.SwitchLeg(last(), hot)) : Optional.empty();
    }

    int place(String name) {
      return switches.indexOf(name);
    }

    String last() {
      return switches.get(switches.size() - 1);
    }
  }

  private final Map<String, Group> bySwitch = new HashMap<>();
  private final Map<String, Group> byLight = new HashMap<>();
  private final Map<String, Group> byHalf = new HashMap<>();

  Controls(House house, Branch branch) {
    Map<Set<String>, List<String>> byLights = new LinkedHashMap<>();
    Map<String, Integer> hots = new HashMap<>();
    for (Point point : branch.points()) {
      for (String name : point.devices()) {
        Device device = house.devices().get(name);
        if (device.kind().family() == DeviceKind.Family.SWITCH && !device.controls().isEmpty()) {
          byLights.computeIfAbsent(Set.copyOf(device.controls()), l -> new ArrayList<>()).add(name);
          hots.put(name, point.hotOf(name));
        }
      }
    }
    byLights.forEach((lights, switches) -> {
      boolean two = switches.size() == 1 && house.devices().get(switches.get(0)).kind().opensTwoHots() && branch.hots().size() > 1;
      Group group = new Group(List.copyOf(switches), two ? List.of(0, 1) : List.of(hots.get(switches.get(0))));
      switches.forEach(s -> bySwitch.put(s, group));
      List<String> halves = switches.stream().flatMap(s -> house.devices().get(s).controlledHalves().stream()).toList();
      halves.forEach(h -> byHalf.putIfAbsent(h, group));
      lights.stream()
          .filter(l -> halves.stream().noneMatch(h -> h.startsWith(l + ".")))
          .forEach(l -> byLight.putIfAbsent(l, group));
    });
  }

  Optional<Group> ofSwitch(String name) {
    return Optional.ofNullable(bySwitch.get(name));
  }

  /** The switches of a whole device. */
  Optional<Group> ofLight(String name) {
    return Optional.ofNullable(byLight.get(name));
  }

  /** The switches of one half of a device, as in {@code living.s1.upper}. */
  Optional<Group> ofHalf(String name) {
    return Optional.ofNullable(byHalf.get(name));
  }
}
