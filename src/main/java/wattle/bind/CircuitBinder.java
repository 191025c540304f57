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

  /** The circuit of each branch, as made the last time where all that it was made from is the same. */
  List<Circuit> bind(List<BranchDraft> drafts, Memory memory) {
    return memory.circuits.all(
        drafts, draft -> draft.tree, scope, (draft, known) -> known.basis().isSameAs(basis(draft)), within -> in(within)::bind);
  }

  private CircuitBinder in(Scope other) {
    return new CircuitBinder(other, systemOfPanel, groups);
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

  private Circuit bind(BranchDraft draft) {
    Circuit.Basis basis = basis(draft);
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
