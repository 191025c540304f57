package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.KnownNames;
import wattle.finding.Mistake;
import wattle.syntax.Tree;

/** Switches and what they control, by the names that the plan writes. */
final class ControlGroups {
  private final Map<String, Set<String>> lightsOfSwitch = new LinkedHashMap<>();
  private final Set<String> controlled = new LinkedHashSet<>();
  private final Set<String> partly = new LinkedHashSet<>();
  private final Map<String, List<String>> halvesOfSwitch = new HashMap<>();

  /** Four-way switches may be in a row without end; no house has a tenth of this, and each is compared with all of its row. */
  static final int MOST_SWITCHES = 100;

  /** Resolves what each switch names, and tells of names that nothing has. */
  ControlGroups(Scope scope, Map<String, UnwiredDevice> devices) {
    KnownNames names = new KnownNames(devices.keySet());
    Map<String, Integer> switches = new HashMap<>();
    for (UnwiredDevice device : devices.values()) {
      if (device.controls().isEmpty()) {
        continue;
      }
      Set<String> lights = new LinkedHashSet<>();
      for (Tree.Path path : device.controls()) {
        Optional<String> light = resolve(path, device, devices);
        if (light.isEmpty()) {
          reportUnknown(path, device, names, scope);
        } else if (lights.contains(light.get()) || isFew(switches.merge(light.get(), 1, Integer::sum), light.get(), path, scope)) {
          lights.add(light.get());
        }
      }
      lightsOfSwitch.put(device.name(), lights);
    }
    lightsOfSwitch.values().forEach(controlled::addAll);
  }

  /** Whether a device has no more switches than it may with this one; the first of the others is told. */
  private static boolean isFew(int switches, String light, Tree.Path path, Scope scope) {
    if (switches == MOST_SWITCHES + 1) {
      scope.report(
          Finding.error("switches-too-many", "more than " + MOST_SWITCHES + " switches control '" + light + "'")
              .at(path.span(), "it and those after it were left out")
              .fix("name what it controls, or group the devices by rooms"));
    }
    return switches <= MOST_SWITCHES;
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

  private static void reportUnknown(Tree.Path path, UnwiredDevice device, KnownNames names, Scope scope) {
    if (scope.mayStandInDamage(path.text()) || scope.mayStandInDamage(device.room() + "." + path.text())) {
      return;
    }
    Finding.Builder finding = Finding.error(Mistake.NAME_UNKNOWN, "no device is called '" + path.text() + "'")
        .at(path.span(), "what " + device.name() + " controls is expected here");
    List<String> near = new ArrayList<>(scope.near(device.room() + "." + path.text(), path.span(), names));
    if (near.isEmpty()) {
      near.addAll(scope.near(path.text(), path.span(), names));
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
}
