package wattle.bind;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.model.Box;
import wattle.syntax.Tree;

/**
 * Which branch each device hangs on. A chain that names a device connects that one; a chain that names its box connects
 * every device in it that no other chain names.
 */
final class DeviceWiring {
  private final Scope scope;
  private final Map<String, Box> boxes;
  private final Map<String, UnwiredDevice> devices;
  private final Map<String, Connection> connections = new HashMap<>();

  /** Where a device hangs, and the place that names it; absent for one that hangs there because its box does. */
  private record Connection(BranchDraft draft, BranchDraft.Stop stop, Optional<Tree.Place> named) {}

  private DeviceWiring(Scope scope, Map<String, Box> boxes, Map<String, UnwiredDevice> devices) {
    this.scope = scope;
    this.boxes = boxes;
    this.devices = devices;
  }

  /** The branches with what hangs on them; those given are left as they were traced. */
  static Connected connect(List<BranchDraft> traced, RoomBinder.Bound rooms, Scope scope) {
    DeviceWiring wiring = new DeviceWiring(scope, rooms.boxes(), rooms.devices());
    List<BranchDraft> drafts = wiring.connect(traced);
    Map<String, String> branchOf = new HashMap<>(2 * wiring.connections.size());
    wiring.connections.forEach((device, connection) -> branchOf.put(device, connection.draft.name()));
    return new Connected(traced, rooms, drafts, branchOf);
  }

  private List<BranchDraft> connect(List<BranchDraft> traced) {
    List<BranchDraft> drafts = traced.stream().map(BranchDraft::untouched).toList();
    drafts.forEach(this::connectNamed);
    for (BranchDraft draft : drafts) {
      for (BranchDraft.Stop stop : draft.stops) {
        stop.box.ifPresent(box -> connectRest(draft, stop, box));
      }
    }
    reportUnfed(drafts);
    return drafts;
  }

  private void connectNamed(BranchDraft draft) {
    for (Tree.Place place : draft.places()) {
      String name = place.path().text();
      UnwiredDevice device = devices.get(name);
      Integer at = device == null ? null : draft.stopOfBox.get(device.box());
      if (at == null) {
        continue;
      }
      Connection mine = new Connection(draft, draft.stops.get(at), Optional.of(place));
      Connection known = connections.putIfAbsent(name, mine);
      if (known == null) {
        mine.stop.devices.add(device);
      } else if (known.draft != draft) {
        scope.report(
            Finding.error(Mistake.DEVICE_FED_TWICE, "'" + name + "' is fed by two branches")
                .at(place.path().span(), "by '" + draft.name() + "'")
                .with(known.named.orElseThrow().path().span(), "by '" + known.draft.name() + "' already")
                .because("Opening one breaker would leave it live from the other.")
                .fix("take it out of one of the two branches"));
      }
    }
  }

  private void connectRest(BranchDraft draft, BranchDraft.Stop stop, String box) {
    if (stop.devices.size() == 1 && stop.devices.get(0).name().equals(box)) {
      return; // the device has the box to itself
    }
    for (String name : boxes.get(box).devices()) {
      // A device that is the box's only one was named by the chain; in a shared box the rest follow the first branch.
      if (connections.putIfAbsent(name, new Connection(draft, stop, Optional.empty())) == null) {
        stop.devices.add(devices.get(name));
      }
    }
  }

  private void reportUnfed(List<BranchDraft> drafts) {
    Set<String> seen = new LinkedHashSet<>();
    drafts.stream().filter(d -> d.broken).forEach(d -> mention(d, seen));
    for (UnwiredDevice device : devices.values()) {
      if (connections.containsKey(device.name()) || seen.contains(device.name()) || scope.mayStandInDamage(device.name())
          || isOnBattery(device)) {
        continue;
      }
      scope.report(
          Finding.error(Mistake.DEVICE_UNFED, "no branch reaches '" + device.name() + "'")
              .at(device.origin().name(), "a " + device.kind().name() + " that nothing feeds")
              .fix("add a run to it, such as --3 m-- " + device.name()));
    }
  }

  /** An alarm with a battery alone has no run by design; whether it may be so is for the rules to say. */
  private static boolean isOnBattery(UnwiredDevice device) {
    return device.traits().contains("battery") && device.kind().name().endsWith("alarm");
  }

  /** What a broken branch names somewhere is not missing; the fault in the branch has been reported. */
  private static void mention(BranchDraft draft, Set<String> seen) {
    draft.places().forEach(p -> seen.add(p.path().text()));
  }
}
