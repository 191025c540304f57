package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.SupplySystem;

/** A connected branch to its circuit: which hot each device sits on, what each conductor does, what each device draws. */
final class CircuitBinder {
  private final Scope scope;
  private final Map<String, SupplySystem> systemOfPanel;
  private final HotChooser hots;
  private final ControlGroups groups;
  private final LoadBinder loads;

  CircuitBinder(Scope scope, Map<String, SupplySystem> systemOfPanel, ControlGroups groups) {
    this.scope = scope;
    this.systemOfPanel = systemOfPanel;
    this.hots = new HotChooser(scope);
    this.groups = groups;
    this.loads = new LoadBinder(scope, groups, systemOfPanel);
  }

  /** All branches and devices by name, the devices in the order written. */
  record Bound(Map<String, Branch> branches, Map<String, Device> devices) {}

  /** The circuit of each branch, as made the last time where all that it was made from is the same. */
  Bound bind(List<BranchDraft> drafts, RoomBinder.Bound rooms, Memory memory) {
    boolean controlledAsBefore = memory.isControlledAsBefore();
    List<Circuit> circuits = memory.circuits.all(
        drafts, draft -> draft.tree, scope, (draft, known) -> still(draft, known, controlledAsBefore), within -> in(within)::bind);
    return memory.bound.of(Memory.listOf(circuits, rooms, groups), scope, () -> bound(circuits, rooms));
  }

  private Optional<Circuit> still(BranchDraft draft, Circuit known, boolean controlledAsBefore) {
    if (controlledAsBefore && known.basis().connected() == draft) {
      return Optional.of(known).filter(k -> k.basis().isFedAs(draft.hots, systemOf(draft)));
    }
    Circuit.Basis now = basis(draft);
    return now.isSameAs(known.basis()) ? Optional.of(new Circuit(now, known.branch(), known.devices())) : Optional.empty();
  }

  private Bound bound(List<Circuit> circuits, RoomBinder.Bound rooms) {
    Map<String, Device> wired = new HashMap<>(2 * rooms.devices().size());
    circuits.forEach(c -> c.devices().forEach(d -> wired.put(d.name(), d)));
    List<Device> each = new ArrayList<>();
    for (UnwiredDevice device : rooms.devices().values()) {
      Device found = wired.get(device.name());
      each.add(found == null ? loads.bind(device) : found);
    }
    return new Bound(
        House.byName(circuits.stream().flatMap(c -> c.branch().stream()).toList(), Branch::name), House.byName(each, Device::name));
  }

  private CircuitBinder in(Scope other) {
    return new CircuitBinder(other, systemOfPanel, groups);
  }

  private Circuit.Basis basis(BranchDraft draft) {
    List<Circuit.Hanging> hanging = new ArrayList<>();
    for (int stop = 0; stop < draft.stops.size(); stop++) {
      for (UnwiredDevice device : draft.stops.get(stop).devices) {
        String name = device.name();
        boolean controls = !device.controls().isEmpty();
        hanging.add(
            new Circuit.Hanging(
                device, stop, controls ? groups.lightsOf(name) : Set.of(), controls ? groups.halvesOf(name) : List.of(),
                groups.isControlled(name), groups.isPartlyControlled(name)));
      }
    }
    return new Circuit.Basis(draft, draft.hots, systemOf(draft), hanging);
  }

  private Optional<SupplySystem> systemOf(BranchDraft draft) {
    return draft.hots.isEmpty() ? Optional.empty() : Optional.ofNullable(systemOfPanel.get(draft.hots.get(0).breaker().panel()));
  }

  private Circuit bind(BranchDraft connected) {
    Circuit.Basis basis = basis(connected);
    BranchDraft draft = connected.unchosen();
    hots.choose(draft);
    BranchControls controls = BranchControls.of(draft, groups, scope);
    List<List<ConductorUse>> uses = new RoleDeriver(scope, draft, groups, controls).derive();
    List<Device> bound = new ArrayList<>();
    for (Circuit.Hanging each : basis.hanging()) {
      bound.add(loads.bind(each.device(), draft, draft.stops.get(each.stop())));
    }
    return new Circuit(basis, BranchFinisher.finish(draft, uses), bound);
  }
}
