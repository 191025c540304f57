package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.model.DeviceKind;
import wattle.model.Role;
import wattle.syntax.Tree;

/**
 * Switches and what they control. Switches that name the same lights are one group: the first one reached takes the
 * feed, the last one sends the switch leg, and travellers join one to the next.
 */
final class ControlGroups {
  /** Switches of one set of lights in the order in which their branch reaches them, and where all of them are. */
  private record Group(List<String> switches, List<Integer> switchStops, List<Integer> lightStops) {}

  private final Map<String, Set<String>> lightsOfSwitch = new LinkedHashMap<>();
  private final Set<String> controlled = new LinkedHashSet<>();
  private final Set<String> partly = new LinkedHashSet<>();
  private final Map<String, List<String>> halvesOfSwitch = new HashMap<>();
  private final Map<String, List<Group>> groupsOf = new HashMap<>();
  private final Set<String> fed = new LinkedHashSet<>();

  /** Resolves what each switch names, and tells of names that nothing has. */
  ControlGroups(Scope scope, Map<String, UnwiredDevice> devices) {
    for (UnwiredDevice device : devices.values()) {
      if (device.controls().isEmpty()) {
        continue;
      }
      Set<String> lights = new LinkedHashSet<>();
      for (Tree.Path path : device.controls()) {
        resolve(path, device, devices)
            .ifPresentOrElse(lights::add, () -> reportUnknown(path, device, devices, scope));
      }
      lightsOfSwitch.put(device.name(), lights);
    }
    lightsOfSwitch.values().forEach(controlled::addAll);
  }

  private Optional<String> resolve(Tree.Path path, UnwiredDevice device, Map<String, UnwiredDevice> devices) {
    String text = path.text();
    for (String name : List.of(device.room() + "." + text, text)) {
      if (devices.containsKey(name)) {
        return Optional.of(name);
      }
      int dot = name.lastIndexOf('.');
      String whole = dot < 0 ? "" : name.substring(0, dot);
      if (devices.containsKey(whole) && devices.get(whole).kind().halves().contains(name.substring(dot + 1))) {
        partly.add(whole);
        halvesOfSwitch.computeIfAbsent(device.name(), s -> new ArrayList<>()).add(name);
        return Optional.of(whole);
      }
    }
    return Optional.empty();
  }

  private static void reportUnknown(
      Tree.Path path, UnwiredDevice device, Map<String, UnwiredDevice> devices, Scope scope) {
    if (scope.mayStandInDamage(path.text()) || scope.mayStandInDamage(device.room() + "." + path.text())) {
      return;
    }
    Finding.Builder finding =
        Finding.error("name-unknown", "no device is called '" + path.text() + "'")
            .at(path.span(), "what " + device.name() + " controls is expected here");
    List<String> near = new ArrayList<>(NearNames.of(device.room() + "." + path.text(), devices.keySet()));
    if (near.isEmpty()) {
      near.addAll(NearNames.of(path.text(), devices.keySet()));
    }
    for (String name : near) {
      String shown = name.startsWith(device.room() + ".") ? name.substring(device.room().length() + 1) : name;
      finding.fix(Fix.safe("write " + shown, path.span(), shown));
    }
    scope.report(finding);
  }

  /** Names of what a switch controls. */
  Set<String> lightsOf(String switchName) {
    return lightsOfSwitch.getOrDefault(switchName, Set.of());
  }

  /** Names of the halves that a switch controls alone. */
  List<String> halvesOf(String switchName) {
    return halvesOfSwitch.getOrDefault(switchName, List.of());
  }

  boolean isControlled(String device) {
    return controlled.contains(device);
  }

  /** Whether only one half of a receptacle is switched, and the other always live. */
  boolean isPartlyControlled(String device) {
    return partly.contains(device);
  }

  /** Whether the feed comes to this switch: the first of its group, or one that controls nothing yet. */
  boolean isFed(String switchName) {
    return fed.contains(switchName) || lightsOf(switchName).isEmpty();
  }

  /** Forms the groups of a branch, once it is known in which order it reaches its devices. */
  void form(BranchDraft draft, Scope scope) {
    Map<String, Integer> stopOf = new HashMap<>();
    Map<Set<String>, List<UnwiredDevice>> byLights = new LinkedHashMap<>();
    for (int i = 0; i < draft.stops.size(); i++) {
      for (UnwiredDevice device : draft.stops.get(i).devices) {
        stopOf.put(device.name(), i);
        if (device.kind().family() == DeviceKind.Family.SWITCH && !lightsOf(device.name()).isEmpty()) {
          byLights.computeIfAbsent(lightsOf(device.name()), l -> new ArrayList<>()).add(device);
        }
      }
    }
    List<Group> groups = new ArrayList<>();
    byLights.forEach(
        (lights, switches) -> {
          groups.add(
              new Group(
                  switches.stream().map(UnwiredDevice::name).toList(),
                  switches.stream().map(s -> stopOf.get(s.name())).toList(),
                  lights.stream().filter(stopOf::containsKey).map(stopOf::get).toList()));
          fed.add(switches.get(0).name());
          checkWays(switches, scope);
        });
    groupsOf.put(draft.name(), groups);
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

  /** Roles of the conductors that control needs on a run, given which stops lie beyond it. */
  List<Role> crossing(BranchDraft draft, IntPredicate isBeyond) {
    List<Role> roles = new ArrayList<>();
    for (Group group : groupsOf.getOrDefault(draft.name(), List.of())) {
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
