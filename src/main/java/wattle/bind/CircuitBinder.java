package wattle.bind;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.SupplySystem;

/** A connected branch to its circuit: which hot each device sits on, what each conductor does, what each device draws. */
final class CircuitBinder {
  private final Scope scope;
  private final Map<String, SupplySystem> systemOfPanel;
  private final DeviceWiring wiring;
  private final ControlGroups groups;
  private final LoadBinder loads;
  private final Memory memory;

  CircuitBinder(
      Scope scope, Map<String, SupplySystem> systemOfPanel, DeviceWiring wiring,
      ControlGroups groups, Memory memory) {
    this.scope = scope;
    this.systemOfPanel = systemOfPanel;
    this.wiring = wiring;
    this.groups = groups;
    this.loads = new LoadBinder(scope, groups, systemOfPanel);
    this.memory = memory;
  }

  Circuit bind(BranchDraft draft) {
    Circuit.Basis basis = basis(draft);
    return memory.circuits.of(draft.tree, scope, known -> known.basis().isSameAs(basis), () -> bind(draft, basis));
  }

  /** A device that hangs on no branch. */
  Device unfed(UnwiredDevice device) {
    return loads.bind(device);
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
    Optional<SupplySystem> system = draft.hots.stream().findFirst().map(h -> systemOfPanel.get(h.breaker().panel()));
    return new Circuit.Basis(draft.legs, draft.hots, system, hanging);
  }

  private Circuit bind(BranchDraft draft, Circuit.Basis basis) {
    wiring.chooseHots(draft);
    groups.form(draft, scope);
    List<List<ConductorUse>> uses = new RoleDeriver(scope, draft, groups).derive();
    List<Device> bound = new ArrayList<>();
    for (Circuit.Hanging each : basis.hanging()) {
      bound.add(loads.bind(each.device(), draft, draft.stops.get(each.stop())));
    }
    return new Circuit(basis, BranchFinisher.finish(draft, uses), bound);
  }
}
