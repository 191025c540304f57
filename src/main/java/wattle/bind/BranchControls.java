package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.DeviceKind;
import wattle.model.Role;

/**
 * The switches of one branch in groups. Switches that name the same lights are one group: the first one reached takes the
 * feed, the last one sends the switch leg, and travelers join one to the next.
 */
final class BranchControls {
  /**
   * Switches of one set of lights, or of whatever else they work, in the order in which their branch reaches them.
   *
   * @param hots which hots of the branch they open
   */
  private record Group(List<String> switches, List<Integer> switchStops, Set<Integer> hots, List<Worked> worked) {
    /** Whether the switch leg of a hot goes to a thing: of one that opens two hots, where the thing sits on it. */
    boolean works(Worked thing, int hot) {
      return hots.size() == 1 || thing.hots.contains(hot);
    }
  }

  /** What is worked: where it is, and which hots it sits on. */
  private record Worked(String name, int stop, Set<Integer> hots) {}

  private final ControlGroups control;
  private final List<Group> groups = new ArrayList<>();
  private final Set<String> fed = new HashSet<>();

  private BranchControls(ControlGroups control) {
    this.control = control;
  }

  /** Of a branch of which it is known in which order it reaches its devices. */
  static BranchControls of(BranchDraft draft, ControlGroups control, Scope scope) {
    Map<String, Integer> stopOf = new HashMap<>();
    Map<String, UnwiredDevice> devices = new HashMap<>();
    Map<Set<String>, List<UnwiredDevice>> byLights = new LinkedHashMap<>();
    for (int i = 0; i < draft.stops.size(); i++) {
      for (UnwiredDevice device : draft.stops.get(i).devices) {
        stopOf.put(device.name(), i);
        devices.put(device.name(), device);
        if (device.kind().family() == DeviceKind.Family.SWITCH && !control.lightsOf(device.name()).isEmpty()) {
          byLights.computeIfAbsent(control.lightsOf(device.name()), l -> new ArrayList<>()).add(device);
        }
      }
    }
    BranchControls controls = new BranchControls(control);
    byLights.forEach(
        (lights, switches) -> {
          List<Worked> worked = lights.stream()
              .filter(stopOf::containsKey)
              .map(l -> new Worked(l, stopOf.get(l), HotChoice.of(devices.get(l), draft.stops.get(stopOf.get(l)), draft)))
              .toList();
          BranchDraft.Stop first = draft.stops.get(stopOf.get(switches.get(0).name()));
          boolean both = switches.size() == 1 && switches.get(0).kind().opensTwoHots() && draft.hots.size() > 1;
          Group group = new Group(
              switches.stream().map(UnwiredDevice::name).toList(),
              switches.stream().map(s -> stopOf.get(s.name())).toList(),
              both ? Set.of(0, 1) : Set.of(first.hotOf(switches.get(0)).orElse(0)), worked);
          controls.groups.add(group);
          controls.fed.add(switches.get(0).name());
          checkWays(switches, scope);
          worked.stream()
              .filter(w -> w.hots.size() > 1 && !group.hots.containsAll(w.hots) && HotChoice.isAcross(devices.get(w.name).kind()))
              .forEach(w -> reportLiveHot(switches.get(0), devices.get(w.name), scope));
        });
    return controls;
  }

  private static void checkWays(List<UnwiredDevice> switches, Scope scope) {
    UnwiredDevice first = switches.get(0);
    if (switches.size() == 1 && first.kind().ways() > 2) {
      scope.report(
          Finding.error(Mistake.THREE_WAY_ALONE, "'" + first.name() + "' is a " + first.kind().name() + " with no partner")
              .about(first.name())
              .at(first.origin().name(), "no other switch controls the same lights")
              .because("A three-way switch controls a light together with a second one; alone it is a single-pole switch.")
              .fix(ofKind(first, "switch", "make it a switch"))
              .fix("add the second three-way switch for the same lights"));
    }
    for (int i = 0; switches.size() > 1 && i < switches.size(); i++) {
      UnwiredDevice device = switches.get(i);
      int ways = i == 0 || i == switches.size() - 1 ? 3 : 4;
      if (device.kind().ways() != ways) {
        scope.report(
            Finding
                .error("switch-ways",
                    "'" + device.name() + "' is a " + device.kind().name() + " where a " + (ways == 3 ? "three-way" : "four-way")
                        + " switch is needed")
                .about(device.name())
                .at(device.origin().name(), "one of " + switches.size() + " switches for the same lights")
                .because("The two end switches of a group are three-way; those between them are four-way.")
                .fix(ofKind(device, ways == 3 ? "three-way switch" : "four-way switch",
                    "make it a " + (ways == 3 ? "three-way" : "four-way") + " switch")));
      }
    }
  }

  /** Writes another kind where that of a device stands; an order alone where the kind was given from elsewhere. */
  private static Fix ofKind(UnwiredDevice device, String kind, String order) {
    Span line = device.origin().whole();
    int colon = line.text().indexOf(':');
    Matcher written = Pattern.compile(device.kind().name().replace(" ", "[ \\t]+")).matcher(line.text());
    return colon >= 0 && written.find(colon)
        ? Fix.offered(order, line.source().span(line.start() + written.start(), line.start() + written.end()), kind)
        : Fix.of(order);
  }

  /** A load between two hots of which one is never opened: it stands still, and is live all the same. */
  private static void reportLiveHot(UnwiredDevice device, UnwiredDevice load, Scope scope) {
    scope.report(
        Finding
            .warning("switch-leaves-hot-live", "'" + device.name() + "' opens one hot of '" + load.name() + "' and leaves the other live")
            .about(device.name())
            .at(device.origin().name(), "a " + device.kind().name() + " opens one hot")
            .with(load.origin().name(), "a " + load.kind().name() + " sits between two")
            .because("Switched off, it is still at line voltage to ground, and a person who opens it may think that it is dead.")
            .fix(ofKind(device, "double-pole switch", "make it a double-pole switch")));
  }

  /** Which hots of a device are opened by what works it; none where nothing on this branch does. */
  Set<Integer> opened(String device) {
    return groups.stream().filter(g -> g.worked.stream().anyMatch(w -> w.name.equals(device))).findFirst().map(Group::hots)
        .orElse(Set.of());
  }

  /** Whether something on this branch works a device. */
  boolean works(String device) {
    return !opened(device).isEmpty();
  }

  /** Whether the feed comes to this switch: the first of its group, or one that controls nothing yet. */
  boolean isFed(String switchName) {
    return fed.contains(switchName) || control.lightsOf(switchName).isEmpty();
  }

  /** Roles of the conductors that control needs on a run, given which stops lie beyond it. */
  List<Role> crossing(BranchDraft draft, IntPredicate isBeyond) {
    List<Role> roles = new ArrayList<>();
    for (Group group : groups) {
      int hot = group.hots.iterator().next();
      int last = group.switches.size() - 1;
      for (int i = 0; i < last; i++) {
        if (isBeyond.test(group.switchStops.get(i)) != isBeyond.test(group.switchStops.get(i + 1))) {
          roles.add(new Role.Traveler(group.switches.get(i), group.switches.get(i + 1), 1, hot));
          roles.add(new Role.Traveler(group.switches.get(i), group.switches.get(i + 1), 2, hot));
        }
      }
      boolean side = isBeyond.test(group.switchStops.get(last));
      for (int opened : group.hots.stream().sorted().toList()) {
        if (group.worked.stream().anyMatch(w -> isBeyond.test(w.stop) != side && group.works(w, opened))) {
          roles.add(new Role.SwitchLeg(group.switches.get(last), opened));
        }
      }
    }
    return roles;
  }
}
