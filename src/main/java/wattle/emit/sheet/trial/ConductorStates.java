package wattle.emit.sheet.trial;

import java.util.List;
import wattle.trials.Danger;
import wattle.trials.TrialResult;

/** In a few words, what is wrong with a conductor; empty where nothing is. */
final class ConductorStates {
  private ConductorStates() {}

  static String of(TrialResult.ConductorReading conductor, List<Danger> dangers) {
    return dangers.stream()
        .anyMatch(
            d -> (d.kind() == Danger.Kind.NEUTRAL_OVER || d.kind() == Danger.Kind.CONDUCTOR_OVER)
                && d.at().equals(conductor.conductor() + " of " + (conductor.branch().isEmpty() ? conductor.run() : conductor.branch()))
                && d.limit().filter(l -> conductor.amps().si() > l.si()).isPresent())
                    ? "above its ampacity"
                    : "";
  }
}
