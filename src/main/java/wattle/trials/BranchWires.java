package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Impedances;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Status;
import wattle.quantity.Quantity;

/**
 * What the runs of a branch are in every trial of a house, whatever happens in it.
 *
 * @param groups its switches and what they control
 * @param runs of the branch that are not to be removed, in order
 * @param needed by point, what a device or a run beyond asks for there
 */
record BranchWires(List<Controls.Group> groups, List<Run> runs, Map<Integer, Set<Role>> needed) {
  /**
   * One run.
   *
   * @param name such as {@code P to kitchen.c1}
   * @param wires of it that carry current, each role once
   */
  record Run(Section section, String name, List<RunWire> wires) {}

  /** @param name such as {@code hot A} */
  record RunWire(Role role, HouseNetwork.Kind kind, String name, WireImpedance impedance) {}

  /** @param hertz of the service that feeds it */
  static BranchWires of(Branch branch, House house, Impedances impedances, double hertz) {
    List<Controls.Group> groups = Controls.of(branch, house);
    List<Run> runs = new ArrayList<>();
    for (Section section : branch.sections()) {
      if (section.status() != Status.TO_REMOVE) {
        String name = new Place(branch, section.from()).name() + " to " + new Place(branch, section.to()).name();
        runs.add(new Run(section, name, wires(branch, section, impedances, hertz)));
      }
    }
    return new BranchWires(groups, runs, needed(branch, house, groups, runs));
  }

  private static List<RunWire> wires(Branch branch, Section section, Impedances impedances, double hertz) {
    double meters = section.length().map(Quantity::si).orElse(0.0);
    List<RunWire> wires = new ArrayList<>();
    Set<Role> known = new HashSet<>();
    for (ConductorUse use : section.conductors()) {
      Optional<HouseNetwork.Kind> kind = HouseNetworkBuilder.kindOf(use.role());
      if (kind.isPresent() && known.add(use.role())) {
        wires.add(new RunWire(use.role(), kind.get(), Role.text(use.role(), branch.hots()),
            WireImpedance.of(impedances, use.wire(), section.wiring(), meters, hertz)));
      }
    }
    return wires;
  }

  private static Map<Integer, Set<Role>> needed(Branch branch, House house, List<Controls.Group> groups, List<Run> runs) {
    Map<Integer, Set<Role>> needed = new HashMap<>();
    for (Run run : runs) {
      // What begins at a box before is a switch leg or a traveler; a hot or neutral that does not come is not made here.
      run.wires().stream().map(RunWire::role).filter(r -> r instanceof Role.SwitchLeg || r instanceof Role.Traveler)
          .forEach(r -> needed.computeIfAbsent(run.section().from(), p -> new LinkedHashSet<>()).add(r));
    }
    for (int p = 0; p < branch.points().size(); p++) {
      Set<Role> here = new LinkedHashSet<>(needed.getOrDefault(p, Set.of()));
      for (Controls.Group group : groups) {
        here.addAll(Contacts.rolesAt(group, p));
      }
      for (String name : branch.points().get(p).devices()) {
        Device device = house.devices().get(name);
        if (device != null && device.kind().family() != DeviceKind.Family.SWITCH) {
          Controls.controlling(groups, name).ifPresent(g -> here.addAll(g.legs()));
        }
      }
      if (!here.isEmpty()) {
        needed.put(p, here);
      }
    }
    return needed;
  }
}
