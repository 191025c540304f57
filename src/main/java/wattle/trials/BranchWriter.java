package wattle.trials;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.model.Section;
import wattle.network.Network;

/**
 * The runs of one branch, box by box from its panel. A point has a terminal for each thing that a conductor does there:
 * those that arrive, those that only leave (a switch leg that begins here or comes back from beyond), and those that a
 * device in the box needs. Switches are contacts between two of them.
 */
final class BranchWriter {
  private final HouseNetworkBuilder out;
  private final Branch branch;
  private final HouseNetwork.PanelBox panelBox;
  private final Panel panel;
  private final BranchWires wires;
  private final Map<Integer, Integer> boxes = new HashMap<>();
  private final Map<Integer, Map<Role, Integer>> terminals = new HashMap<>();

  BranchWriter(HouseNetworkBuilder out, Branch branch, BranchWires wires, HouseNetwork.PanelBox panelBox) {
    this.out = out;
    this.branch = branch;
    this.wires = wires;
    this.panelBox = panelBox;
    panel = out.house.panels().get(branch.panel().orElseThrow());
  }

  void write() {
    boxes.put(0, panelBox.box());
    terminals.put(0, atPanel());
    for (BranchWires.Run run : wires.runs()) {
      if (boxes.containsKey(run.section().from())) {
        run(run);
      }
    }
    for (Controls.Group group : wires.groups()) {
      new Contacts(out, terminals, boxes).close(group);
    }
    DeviceWriter devices = new DeviceWriter(out, branch, wires.groups(), panel.system(), boxes, terminals);
    for (int p : boxes.keySet().stream().sorted().toList()) {
      if (p > 0) {
        devices.write(p);
      }
    }
  }

  /** The hots of the branch at the legs of the panel; no terminal for one whose breaker is off. */
  private Map<Role, Integer> atPanel() {
    Map<Role, Integer> map = new HashMap<>();
    for (int i = 0; i < branch.hots().size(); i++) {
      BranchHot hot = branch.hots().get(i);
      Optional<Leg> leg = out.legOf(branch, i);
      int at = leg.map(panel.legs()::indexOf).orElse(-1);
      if (at >= 0 && !out.scenario.openBreakers().contains(hot.breaker())) {
        map.put(new Role.Hot(i), panelBox.legs()[at]);
      }
    }
    if (!neutralWentAway()) {
      map.put(new Role.Neutral(), panelBox.neutral());
    }
    map.put(new Role.Ground(), panelBox.ground());
    return map;
  }

  /** Whether the neutral opened together with the hots of a way that switches it. */
  private boolean neutralWentAway() {
    return branch.hots().stream()
        .map(BranchHot::breaker)
        .filter(out.scenario.openBreakers()::contains)
        .flatMap(b -> out.house.breaker(b).stream())
        .anyMatch(wattle.model.Breaker::switchedNeutral);
  }

  private void run(BranchWires.Run run) {
    Section section = run.section();
    int p = section.to();
    int box = out.net.box(boxes.get(section.from()));
    boxes.put(p, box);
    Map<Role, Integer> here = new HashMap<>();
    terminals.put(p, here);
    for (BranchWires.RunWire wire : run.wires()) {
      Role role = wire.role();
      boolean open = out.scenario.isOpen(branch.name(), p, role);
      int up = open ? Network.OPEN : upstream(section, role);
      double joint = out.scenario.joint(branch.name(), p, role);
      int local = out.conductor(wire.impedance(), up, joint);
      here.put(role, local);
      out.conductors.add(
          new HouseNetwork.Conductor(
              run.name(), Optional.of(branch.name()), Optional.empty(), p, Optional.of(role), wire.name(), wire.kind(),
              wire.impedance(), joint, up == Network.OPEN, box, local));
    }
    for (Role role : wires.needed().getOrDefault(p, Set.of())) {
      if (!here.containsKey(role)) {
        here.put(role, out.net.terminal());
      }
    }
    if (branch.points().get(p).box().isPresent() && here.containsKey(new Role.Ground())) {
      out.groundIn(branch.points().get(p).box().get(), box, here.get(new Role.Ground()));
    }
    for (String name : branch.points().get(p).devices()) {
      if (FeedingWriter.hasOwnStar(out.house.devices().get(name), out.scenario)) {
        here.put(FeedingWriter.starOf(name), out.net.terminal());
      }
    }
    for (Scenario.Lifted lifted : out.scenario.lifted()) {
      if (lifted.branch().equals(branch.name()) && lifted.point() == p) {
        here.put(metalOf(lifted), out.net.terminal());
      }
    }
  }

  /** A name among roles for metal that is off its ground. */
  static Role metalOf(Scenario.Lifted lifted) {
    return new Role.SwitchLeg("metal of " + lifted.at(), 0);
  }

  /** What a conductor is joined to in the box before; there hot and neutral are exchanged beyond a reversed device. */
  private int upstream(Section section, Role role) {
    Role joined = role;
    Optional<String> reversed = reversed(section.from());
    if (branch.points().get(section.from()).wiredThrough() && reversed.isPresent()) {
      Role hot = new Role.Hot(new Place(branch, section.from(), reversed).hot());
      joined = role.equals(hot) ? new Role.Neutral() : role instanceof Role.Neutral ? hot : role;
    }
    return terminals.get(section.from()).getOrDefault(joined, Network.OPEN);
  }

  private Optional<String> reversed(int point) {
    return branch.points().get(point).devices().stream().filter(out.scenario.reversed()::contains).findFirst();
  }
}
