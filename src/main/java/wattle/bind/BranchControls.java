package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import wattle.finding.Finding;
import wattle.model.DeviceKind;
import wattle.model.Role;

/**
 * The switches of one branch in groups. Switches that name the same lights are one group: the first one reached takes the
 * feed, the last one sends the switch leg, and travellers join one to the next.
 */
final class BranchControls {
  /** Switches of one set of lights in the order in which their branch reaches them, and where all of them are. */
  private record Group(List<String> switches, List<Integer> switchStops, List<Integer> lightStops) {}

  private final ControlGroups control;
  private final List<Group> groups = new ArrayList<>();
  private final Set<String> fed = new HashSet<>();

  private BranchControls(ControlGroups control) {
    this.control = control;
  }

  /** Of a branch of which it is known in which order it reaches its devices. */
  static BranchControls of(BranchDraft draft, ControlGroups control, Scope scope) {
    Map<String, Integer> stopOf = new HashMap<>();
    Map<Set<String>, List<UnwiredDevice>> byLights = new LinkedHashMap<>();
    for (int i = 0; i < draft.stops.size(); i++) {
      for (UnwiredDevice device : draft.stops.get(i).devices) {
        stopOf.put(device.name(), i);
        if (device.kind().family() == DeviceKind.Family.SWITCH && !control.lightsOf(device.name()).isEmpty()) {
          byLights.computeIfAbsent(control.lightsOf(device.name()), l -> new ArrayList<>()).add(device);
        }
      }
    }
    BranchControls controls = new BranchControls(control);
    byLights.forEach(
        (lights, switches) -> {
          controls.groups.add(
              new Group(
                  switches.stream().map(UnwiredDevice::name).toList(),
                  switches.stream().map(s -> stopOf.get(s.name())).toList(),
                  lights.stream().filter(stopOf::containsKey).map(stopOf::get).toList()));
          controls.fed.add(switches.get(0).name());
          checkWays(switches, scope);
        });
    return controls;
  }

  private static void checkWays(List<UnwiredDevice> switches, Scope scope) {
    UnwiredDevice first = switches.get(0);
    if (switches.size() == 1 && first.kind().ways() > 2) {
      scope.report(
          Finding.error("three-way-alone", "'" + first.name() + "' is a " + first.kind().name() + " with no partner")
              .at(first.origin().name(), "no other switch controls the same lights")
              .because("A three-way switch works a light together with a second one; alone it is a plain switch.")
              .fix("make it a switch, or add the second three-way switch for the same lights"));
    }
    for (int i = 0; switches.size() > 1 && i < switches.size(); i++) {
      UnwiredDevice device = switches.get(i);
      int ways = i == 0 || i == switches.size() - 1 ? 3 : 4;
      if (device.kind().ways() != ways) {
        scope.report(
            Finding.error("switch-ways", "'" + device.name() + "' is a " + device.kind().name() + " where a " + (ways == 3 ? "three-way" : "four-way") + " switch is needed")
                .at(device.origin().name(), "one of " + switches.size() + " switches for the same lights")
                .because("The two end switches of a group are three-way, those between them four-way.")
                .fix("make it a " + (ways == 3 ? "three-way" : "four-way") + " switch"));
      }
    }
  }

  /** Whether the feed comes to this switch: the first of its group, or one that controls nothing yet. */
  boolean isFed(String switchName) {
    return fed.contains(switchName) || control.lightsOf(switchName).isEmpty();
  }

  /** Roles of the conductors that control needs on a run, given which stops lie beyond it. */
  List<Role> crossing(BranchDraft draft, IntPredicate isBeyond) {
    List<Role> roles = new ArrayList<>();
    for (Group group : groups) {
      int hot = draft.stops.get(group.switchStops.get(0)).hot.orElse(0);
      int last = group.switches.size() - 1;
      for (int i = 0; i < last; i++) {
        if (isBeyond.test(group.switchStops.get(i)) != isBeyond.test(group.switchStops.get(i + 1))) {
          roles.add(new Role.Traveller(group.switches.get(i), group.switches.get(i + 1), 1, hot));
          roles.add(new Role.Traveller(group.switches.get(i), group.switches.get(i + 1), 2, hot));
        }
      }
      boolean side = isBeyond.test(group.switchStops.get(last));
      if (group.lightStops.stream().anyMatch(stop -> isBeyond.test(stop) != side)) {
        roles.add(new Role.SwitchLeg(group.switches.get(last), hot));
      }
    }
    return roles;
  }
}
