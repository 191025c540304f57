package wattle.bind;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Finding;
import wattle.model.ConductorUse;
import wattle.model.DeviceKind;
import wattle.model.Role;
import wattle.model.Wire;

/**
 * What each conductor of each run does, from what hangs beyond it. A hot is needed on a run where something beyond it
 * is always live; a neutral where something beyond returns on it; a switch leg where the switch and its light are on
 * different sides; two travelers where two switches of one light are. White conductors go to the neutral first; where
 * none is needed a white one works as a hot and is marked.
 */
final class RoleDeriver {
  private final Scope scope;
  private final BranchDraft draft;
  private final ControlGroups groups;
  private final BranchControls controls;
  private final LinkedAlarms alarms;
  private final int[] parent;
  private final int[] lastBelow;
  private final int[] order;

  RoleDeriver(Scope scope, BranchDraft draft, ControlGroups groups, BranchControls controls) {
    this.scope = scope;
    this.draft = draft;
    this.groups = groups;
    this.controls = controls;
    this.alarms = new LinkedAlarms(draft);
    int count = draft.stops.size();
    parent = new int[count];
    order = new int[count];
    lastBelow = new int[count];
    number();
  }

  /** Numbers the stops depth first, so that what lies beyond a stop is a range. */
  private void number() {
    List<List<Integer>> children = new ArrayList<>();
    for (int i = 0; i < parent.length; i++) {
      parent[i] = -1;
      children.add(new ArrayList<>());
    }
    for (BranchDraft.Leg leg : draft.legs) {
      parent[leg.to()] = leg.from();
      children.get(leg.from()).add(leg.to());
    }
    int[] next = new int[parent.length];
    int number = 0;
    for (int root = 0; root < parent.length; root++) {
      if (parent[root] >= 0) {
        continue;
      }
      int at = root;
      order[at] = number++;
      while (at >= 0) {
        if (next[at] < children.get(at).size()) {
          at = children.get(at).get(next[at]++);
          order[at] = number++;
        } else {
          lastBelow[at] = number - 1;
          at = at == root ? -1 : parent[at];
        }
      }
    }
  }

  private boolean isBeyond(int stop, int other) {
    return order[other] >= order[stop] && order[other] <= lastBelow[stop];
  }

  /** Needs of one stop: what must arrive there, whatever lies beyond. */
  private record Needs(BitSet hots, boolean neutral) {}

  /** The roles for each run, in the order of the draft's legs; empty lists where they could not be derived. */
  List<List<ConductorUse>> derive() {
    List<Needs> needs = new ArrayList<>();
    for (BranchDraft.Stop stop : draft.stops) {
      needs.add(needs(stop));
    }
    // Everything needed beyond a stop, gathered from the far ends inwards: a run comes before those beyond it.
    List<BitSet> beyond = new ArrayList<>();
    boolean[] neutralBeyond = new boolean[needs.size()];
    for (int i = 0; i < needs.size(); i++) {
      beyond.add(needs.get(i).hots);
      neutralBeyond[i] = needs.get(i).neutral;
    }
    for (int i = draft.legs.size() - 1; i >= 0; i--) {
      BranchDraft.Leg leg = draft.legs.get(i);
      beyond.get(leg.from()).or(beyond.get(leg.to()));
      neutralBeyond[leg.from()] |= neutralBeyond[leg.to()];
    }
    List<List<ConductorUse>> uses = new ArrayList<>();
    for (BranchDraft.Leg leg : draft.legs) {
      List<Role> roles = new ArrayList<>();
      beyond.get(leg.to()).stream().forEach(hot -> roles.add(new Role.Hot(hot)));
      roles.addAll(controls.crossing(draft, stop -> isBeyond(leg.to(), stop)));
      uses.add(assign(leg, roles, neutralBeyond[leg.to()]));
    }
    return uses;
  }

  private Needs needs(BranchDraft.Stop stop) {
    BitSet hots = new BitSet();
    boolean neutral = false;
    for (UnwiredDevice device : stop.devices) {
      String name = device.name();
      DeviceKind kind = device.kind();
      boolean alwaysLive = kind.family() == DeviceKind.Family.SWITCH
          ? controls.isFed(name)
          : !groups.isControlled(name) || groups.isPartlyControlled(name);
      if (alwaysLive) {
        HotChoice.of(device, stop, draft).forEach(hots::set);
      } else if (HotChoice.isAcross(kind) && controls.works(name)) {
        // The hot that its switch does not open comes to it as it is.
        HotChoice.of(device, stop, draft).stream().filter(hot -> !controls.opened(name).contains(hot)).forEach(hots::set);
      }
      boolean hotOnly = HotChoice.isAcrossOnly(kind) && draft.hots.size() > 1;
      neutral |= kind.needs().contains(DeviceKind.Need.NEUTRAL) && !hotOnly || needsNeutralInstead(kind);
    }
    return new Needs(hots, neutral);
  }

  /** An appliance made for two hots, on a supply of one leg, returns on the neutral. */
  private boolean needsNeutralInstead(DeviceKind kind) {
    return HotChoice.isAcross(kind) && draft.hots.size() == 1;
  }

  private List<ConductorUse> assign(BranchDraft.Leg leg, List<Role> roles, boolean neutral) {
    List<Wire> insulated = leg.wiring().insulated();
    int wanted = roles.size() + (neutral ? 1 : 0);
    if (wanted > insulated.size()) {
      reportTooFew(leg, roles, neutral, insulated.size());
      return List.of();
    }
    List<ConductorUse> uses = new ArrayList<>();
    List<Wire> colored = new ArrayList<>();
    List<Wire> whites = new ArrayList<>();
    insulated.forEach(w -> (w.purpose() == Wire.Purpose.NEUTRAL ? whites : colored).add(w));
    Optional<Wire> forNeutral = Optional.empty();
    if (neutral) {
      forNeutral = Optional.of(whites.isEmpty() ? colored.remove(colored.size() - 1) : whites.remove(0));
    }
    List<Role> inOrder = new ArrayList<>(roles);
    boolean loopToSwitch = !neutral && roles.size() == 2 && roles.get(0) instanceof Role.Hot && roles.get(1) instanceof Role.SwitchLeg;
    if (loopToSwitch) {
      java.util.Collections.reverse(inOrder); // the trade brings the feed down on the white and the switch leg back on the black
    }
    Map<Role, Wire> own = loopToSwitch ? Map.of() : ownColors(inOrder, colored);
    own.values().forEach(colored::remove); // one by one: a cable may have two of a color
    for (Role role : inOrder) {
      boolean white = !own.containsKey(role) && colored.isEmpty();
      Wire wire = own.containsKey(role) ? own.get(role) : white ? whites.remove(0) : colored.remove(0);
      boolean pulled = white && leg.wiring().race().isPresent() && !leg.wiring().namesNeutral();
      uses.add(pulled ? new ConductorUse(colored(wire, uses.size()), role, false) : new ConductorUse(wire, role, white));
    }
    forNeutral.ifPresent(w -> uses.add(new ConductorUse(w, new Role.Neutral(), false)));
    if (!colored.isEmpty() && alarms.isBetween(stop -> isBeyond(leg.to(), stop))) {
      uses.add(new ConductorUse(colored.remove(colored.size() - 1), new Role.Interconnect(), false));
    }
    colored.forEach(w -> uses.add(new ConductorUse(w, new Role.Spare(), false)));
    whites.forEach(w -> uses.add(new ConductorUse(w, new Role.Spare(), false)));
    leg.wiring().ground().ifPresent(w -> uses.add(new ConductorUse(w, new Role.Ground(), false)));
    return uses;
  }

  /** Single conductors are bought in any color: what need not be a neutral is pulled in that of a hot. */
  private static Wire colored(Wire white, int before) {
    return new Wire(Wire.Purpose.HOT, white.size(), white.metal(), WiringBinder.COLORS.get(before % WiringBinder.COLORS.size()));
  }

  /** A hot keeps its color from the panel on, wherever a cable has one of that color. */
  private Map<Role, Wire> ownColors(List<Role> roles, List<Wire> colored) {
    List<String> colors = draft.wiring.stream().flatMap(w -> w.wires().stream())
        .filter(w -> w.purpose() == Wire.Purpose.HOT).map(Wire::color).toList();
    Map<Role, Wire> own = new HashMap<>();
    for (Role role : roles) {
      if (role instanceof Role.Hot hot && hot.hot() < colors.size()) {
        colored.stream().filter(w -> w.color().equals(colors.get(hot.hot())) && !own.containsValue(w)).findFirst()
            .ifPresent(w -> own.put(role, w));
      }
    }
    return own;
  }

  private void reportTooFew(BranchDraft.Leg leg, List<Role> roles, boolean neutral, int has) {
    boolean onlyNeutralLacks = neutral && roles.size() == has && roles.stream().allMatch(r -> r instanceof Role.Hot);
    if (onlyNeutralLacks || draft.hots.isEmpty() || draft.broken) {
      return; // said where the device is that needs the neutral, or the branch itself has a finding
    }
    List<String> wanted = new ArrayList<>();
    roles.forEach(r -> wanted.add(Role.text(r, draft.hots)));
    if (neutral) {
      wanted.add("neutral");
    }
    scope.report(
        Finding
            .error("conductors-too-few",
                "the run to '" + draft.stops.get(leg.to()).box.orElse("") + "' has " + has + " insulated conductors and needs "
                    + wanted.size())
            .at(leg.origin().name(), leg.wiring().text())
            .because("It must carry " + String.join(", ", wanted) + ".")
            .fix("run a cable with " + wanted.size() + " insulated conductors here"));
  }
}
