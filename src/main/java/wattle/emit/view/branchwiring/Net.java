package wattle.emit.view.branchwiring;

import java.util.List;
import wattle.emit.media.drawing.Insulation;
import wattle.model.ConductorUse;
import wattle.model.Role;

/**
 * What is joined to each other in one box.
 *
 * @param conductors of the cables, that of the arriving one first
 * @param terminals how many terminals of devices are joined to it
 * @param lead whether one of them is a lead
 */
record Net(Key key, List<Conductor> conductors, int terminals, boolean lead) {
  Net {
    conductors = List.copyOf(conductors);
  }

  /**
   * What tells one from another.
   *
   * @param onward whether it is the side of a device's screws that carries the rest of the branch
   */
  record Key(Role role, boolean onward) {
    static Key of(Role role) {
      return new Key(role, false);
    }

    boolean isLow() {
      return role instanceof Role.Neutral || role instanceof Role.Ground;
    }
  }

  /**
   * An end of a conductor in the box.
   *
   * @param cable which of the box's cables: 0 for the one that arrives, then those that leave, from 1
   */
  record Conductor(int cable, ConductorUse use) {}

  int ends() {
    return conductors.size() + terminals;
  }

  /** A lone conductor goes straight to a screw, and a screw to a screw; all else is joined by a wire connector. */
  boolean isSpliced() {
    return ends() > 2 || ends() == 2 && (conductors.size() == 2 || lead);
  }

  /** Of the short wires to screws: the color that the net's cables have. */
  Insulation pigtail() {
    return conductors.stream()
        .map(c -> insulation(c.use()))
        .filter(i -> i != Insulation.MARKED_WHITE)
        .findFirst()
        .orElse(
            key.role() instanceof Role.Neutral ? Insulation.WHITE : key.role() instanceof Role.Ground ? Insulation.BARE : Insulation.BLACK);
  }

  static Insulation insulation(ConductorUse use) {
    return use.reidentified() ? Insulation.MARKED_WHITE : Insulation.of(use.wire().color());
  }
}
