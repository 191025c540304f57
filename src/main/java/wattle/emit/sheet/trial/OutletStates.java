package wattle.emit.sheet.trial;

import java.util.List;
import java.util.Set;
import wattle.trials.Danger;
import wattle.trials.TrialResult;

/** In a few words, what is wrong at an outlet; empty where nothing is. */
final class OutletStates {
  private static final Set<Danger.Kind> OF_OUTLETS = Set.of(Danger.Kind.OVERVOLTAGE, Danger.Kind.UNDERVOLTAGE,
      Danger.Kind.LIVE_THOUGH_DARK);

  /** Volts that a tester may take for nothing. */
  private static final double DEAD = 1;

  private OutletStates() {}

  static String of(TrialResult.OutletReading outlet, List<Danger> dangers) {
    if (outlet.floating()) {
      return "floats";
    }
    for (Danger danger : dangers) {
      if (OF_OUTLETS.contains(danger.kind()) && danger.at().equals(outlet.name()) && danger.branch().equals(outlet.branch())) {
        return switch (danger.kind()) {
          case OVERVOLTAGE -> "too high";
          case UNDERVOLTAGE -> "too low";
          default -> "live to ground, though it shows nothing";
        };
      }
    }
    return outlet.volts().si() <= DEAD ? "no voltage" : "";
  }
}
