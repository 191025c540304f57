package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Point;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Wire;

/**
 * The conductors in a box: of each branch, what is of one color and does one thing is one conductor, in however many cables it comes. Two
 * hots of one leg do not do one thing, though both are called hot A.
 */
final class BoxConductors {
  /** A conductor, and what it does. */
  record Found(Branch branch, ConductorUse use, Lockout.Conductor conductor) {}

  private record Key(String branch, String color, Role role, boolean reidentified) {}

  private BoxConductors() {}

  /** In the order of branches and of their cables. */
  static List<Found> in(String box, List<Branch> branches) {
    Map<Key, Set<String>> cables = new LinkedHashMap<>();
    Map<Key, Found> found = new LinkedHashMap<>();
    for (Branch branch : branches) {
      for (Section section : branch.sections()) {
        boolean starts = isAt(branch, section.from(), box);
        if (!starts && !isAt(branch, section.to(), box)) {
          continue;
        }
        String far = name(branch, branch.points().get(starts ? section.to() : section.from()));
        for (ConductorUse use : uses(section)) {
          Key key = new Key(branch.name(), use.wire().color(), use.role(), use.reidentified());
          Set<String> ends = cables.computeIfAbsent(key, k -> new LinkedHashSet<>());
          ends.add(far);
          found.put(
              key, new Found(
                  branch, use,
                  new Lockout.Conductor(
                      branch.name(), use.wire().color(), Role.text(use.role(), branch.hots()), use.reidentified(), List.copyOf(ends),
                      section.wiring().race().isPresent())));
        }
      }
    }
    return new ArrayList<>(found.values());
  }

  private static boolean isAt(Branch branch, int point, String box) {
    return branch.points().get(point).box().filter(box::equals).isPresent();
  }

  private static String name(Branch branch, Point point) {
    return point.box().or(branch::panel).orElse("its supply");
  }

  /** Where roles could not be derived, each wire by its make. */
  private static List<ConductorUse> uses(Section section) {
    return section.conductors().isEmpty()
        ? section.wiring().wires().stream().map(w -> new ConductorUse(w, asMade(w), false)).toList()
        : section.conductors();
  }

  private static Role asMade(Wire wire) {
    return switch (wire.purpose()) {
      case HOT -> new Role.Hot(0);
      case NEUTRAL -> new Role.Neutral();
      case GROUND -> new Role.Ground();
    };
  }
}
