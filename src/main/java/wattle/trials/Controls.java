package wattle.trials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Role;

/** The switches of a branch: those that control the same things are one group, in the order in which the branch reaches them. */
final class Controls {
  /**
   * Switches that work together.
   *
   * @param switches names, the one that takes the feed first
   * @param points where they are
   * @param hots which hots of the branch they open; several of one that opens two
   */
  record Group(List<String> switches, List<Integer> points, List<Integer> hots, Set<String> controlled) {
    String last() {
      return switches.get(switches.size() - 1);
    }

    /** The switch leg on a hot; absent where they do not open it. */
    Optional<Role> leg(int hot) {
      return hots.contains(hot) ? Optional.of(new Role.SwitchLeg(last(), hot)) : Optional.empty();
    }

    List<Role> legs() {
      return hots.stream().<Role>map(h -> new Role.SwitchLeg(last(), h)).toList();
    }
  }

  private Controls() {}

  static List<Group> of(Branch branch, House house) {
    Map<Set<String>, List<String>> switches = new LinkedHashMap<>();
    Map<Set<String>, List<Integer>> points = new LinkedHashMap<>();
    for (int p = 0; p < branch.points().size(); p++) {
      for (String name : branch.points().get(p).devices()) {
        Device device = house.devices().get(name);
        if (device != null && device.kind().family() == DeviceKind.Family.SWITCH && !device.controls().isEmpty()) {
          Set<String> controlled = new LinkedHashSet<>(device.controls());
          switches.computeIfAbsent(controlled, c -> new ArrayList<>()).add(name);
          points.computeIfAbsent(controlled, c -> new ArrayList<>()).add(p);
        }
      }
    }
    return switches.keySet().stream()
        .map(c -> new Group(switches.get(c), points.get(c), hots(switches.get(c), points.get(c).get(0), branch, house), c)).toList();
  }

  private static List<Integer> hots(List<String> switches, int point, Branch branch, House house) {
    boolean two = switches.size() == 1 && house.devices().get(switches.get(0)).kind().opensTwoHots() && branch.hots().size() > 1;
    return two ? List.of(0, 1) : List.of(branch.points().get(point).hotOf(switches.get(0)));
  }

  /** The group that controls a device. */
  static Optional<Group> controlling(List<Group> groups, String device) {
    return groups.stream().filter(g -> g.controlled().contains(device)).findFirst();
  }
}
