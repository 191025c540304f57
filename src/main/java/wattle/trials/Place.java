package wattle.trials;

import java.util.List;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Role;
import wattle.model.Section;

/**
 * A point of a branch, where a box is.
 *
 * @param device the device in it that is meant; absent for all of the box
 */
record Place(Branch branch, int point, Optional<String> device) {
  Place(Branch branch, int point) {
    this(branch, point, Optional.empty());
  }

  /** Where a device or box is; a device where it is connected, a box where the first branch that comes to it has it. */
  static Optional<Place> of(House house, String name) {
    Device device = house.devices().get(name);
    for (Branch branch : house.branches().values()) {
      Optional<Place> place = device == null ? ofBox(branch, name) : ofDevice(branch, name);
      if (place.isPresent()) {
        return place;
      }
    }
    return device == null || house.boxes().get(device.box()) == null || device.box().equals(name)
        ? Optional.empty()
        : of(house, device.box());
  }

  private static Optional<Place> ofDevice(Branch branch, String device) {
    for (int p = 0; p < branch.points().size(); p++) {
      if (branch.points().get(p).devices().contains(device)) {
        return Optional.of(new Place(branch, p, Optional.of(device)));
      }
    }
    return Optional.empty();
  }

  /** Where a box is on one branch. */
  static Optional<Place> ofBox(Branch branch, String box) {
    for (int p = 0; p < branch.points().size(); p++) {
      if (branch.points().get(p).box().equals(Optional.of(box))) {
        return Optional.of(new Place(branch, p));
      }
    }
    return Optional.empty();
  }

  /** The run that comes here; none to a panel. */
  Optional<Section> arriving() {
    return branch.sections().stream().filter(s -> s.to() == point).findFirst();
  }

  /** Which of the branch's hots the device sits on, or those of the box that do not say. */
  int hot() {
    return device.map(branch.points().get(point)::hotOf).orElse(branch.points().get(point).hot().orElse(0));
  }

  /** Name of the box, or of the panel. */
  String name() {
    return branch.points().get(point).box().orElse(branch.panel().orElse("?"));
  }

  /** What a conductor by its name is on the run that comes here; absent where none such does. */
  Optional<Role> role(Event.Conductor conductor) {
    List<Role> roles = arriving().map(RunRoles::of).orElse(List.of());
    return switch (conductor) {
      case NEUTRAL -> roles.stream().filter(r -> r instanceof Role.Neutral).findFirst();
      case GROUND -> roles.stream().filter(r -> r instanceof Role.Ground).findFirst();
      case HOT -> hot(roles, hot()).or(() -> roles.stream().filter(r -> r instanceof Role.SwitchLeg).findFirst());
      case HOT_2 -> hot(roles, hot() == 0 ? 1 : 0);
      case HOT_3 -> hot(roles, 2);
    };
  }

  private static Optional<Role> hot(List<Role> roles, int hot) {
    return roles.stream().filter(r -> r.equals(new Role.Hot(hot))).findFirst();
  }

  /** What the wires of runs do. */
  static final class RunRoles {
    private RunRoles() {}

    /** Roles of a run in the order of its conductors; spares and signals are left out. */
    static List<Role> of(Section section) {
      return section.conductors().stream().map(ConductorUse::role).filter(r -> !Role.isApart(r)).toList();
    }
  }
}
