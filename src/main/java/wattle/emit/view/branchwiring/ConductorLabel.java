package wattle.emit.view.branchwiring;

import wattle.emit.media.drawing.Fit;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Role;

/** The words beside the end of a conductor: its color, and what it does. */
final class ConductorLabel {
  static final double SIZE = 9.5;
  private static final double WIDEST = 230;

  private ConductorLabel() {}

  /** As in {@code black: hot A}, or {@code white, marked black: switch leg of hall.sw}. */
  static String of(Branch branch, ConductorUse use) {
    String color = use.wire().color() + (use.reidentified() ? ", marked as a hot" : "");
    if (use.role() instanceof Role.Traveler t) {
      return color + ": traveler " + t.number() + (severalPairs(branch) ? ", " + t.betweenSwitch() + " to " + t.andSwitch() : "");
    }
    if (use.role() instanceof Role.Spare) {
      return color + ": not used, capped";
    }
    return color + ": " + Role.text(use.role(), branch.hots());
  }

  private static boolean severalPairs(Branch branch) {
    return branch.sections().stream()
        .flatMap(s -> s.conductors().stream())
        .filter(c -> c.role() instanceof Role.Traveler)
        .map(c -> ((Role.Traveler) c.role()).betweenSwitch())
        .distinct()
        .count() > 1;
  }

  /** The room that it takes. */
  static double width(String label) {
    return Math.min(WIDEST, Fit.width(label, SIZE, false));
  }
}
