package wattle.rules;

import java.util.BitSet;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Role;
import wattle.model.Section;

/**
 * Which points of a branch its neutral and its ground come to.
 *
 * @param neutral indices of points at which a run with a neutral starts or ends
 * @param ground the same for the ground
 * @param from indices of points from which a run goes on
 */
record PointRoles(BitSet neutral, BitSet ground, BitSet from) {
  static PointRoles of(Branch branch) {
    PointRoles roles = new PointRoles(new BitSet(), new BitSet(), new BitSet());
    for (Section section : branch.sections()) {
      roles.from.set(section.from());
      for (ConductorUse conductor : section.conductors()) {
        if (conductor.role() instanceof Role.Neutral) {
          both(roles.neutral, section);
        } else if (conductor.role() instanceof Role.Ground) {
          both(roles.ground, section);
        }
      }
    }
    return roles;
  }

  private static void both(BitSet points, Section section) {
    points.set(section.from());
    points.set(section.to());
  }
}
