package wattle.questions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.trials.TrialResult;

/** Outlets of a branch into which something can be plugged, or which light something, at the voltage to the neutral. */
final class Outlets {
  /** So many are tried for the hot that they are on. */
  private static final int MOST_TRIED = 16;

  private final Asked asked;

  Outlets(Asked asked) {
    this.asked = asked;
  }

  /** Names of those between a hot and the neutral: receptacles, or lights where there are none. */
  List<String> toNeutral(Branch branch) {
    double volts = asked.system(branch).map(s -> s.legToNeutralVolts()).orElse(0.0);
    List<String> all = asked.plan().figures().trials().stated().outlets().stream()
        .filter(o -> o.branch().equals(branch.name()) && Math.abs(o.nominal().si() - volts) < 1)
        .filter(o -> isOutlet(asked.house().devices().get(o.device())))
        .map(TrialResult.OutletReading::name).distinct().sorted().toList();
    List<String> receptacles = all.stream().filter(o -> !asked.isLight(o)).toList();
    return receptacles.isEmpty() ? all : receptacles;
  }

  private static boolean isOutlet(Device device) {
    DeviceKind.Family family = device.kind().family();
    return family == DeviceKind.Family.RECEPTACLE && device.kind().rating().map(r -> r.si() <= 20).orElse(true)
        || family == DeviceKind.Family.LIGHT;
  }

  /** One outlet for each hot of a branch that has one, by the conductor that carries its current. */
  List<String> onDifferentHots(Branch branch) {
    Map<String, String> byHot = new LinkedHashMap<>();
    for (String outlet : toNeutral(branch).stream().limit(MOST_TRIED).toList()) {
      hot(branch, outlet).ifPresent(h -> byHot.putIfAbsent(h, outlet));
      if (byHot.size() == branch.hots().size()) {
        break;
      }
    }
    return new ArrayList<>(byHot.values());
  }

  private Optional<String> hot(Branch branch, String outlet) {
    return asked.run(List.of(outlet + " draws 1 A")).flatMap(r -> r.conductors().stream()
        .filter(c -> c.branch().equals(branch.name()) && !c.neutral())
        .max(Comparator.comparingDouble(c -> c.amps().si())).filter(c -> c.amps().si() > 0.5).map(c -> c.conductor() + " " + c.color()));
  }

  /** The neutral of a branch on the run that carries most of it. */
  static Optional<TrialResult.ConductorReading> neutral(TrialResult result, String branch) {
    return result.conductors().stream().filter(c -> c.branch().equals(branch) && c.neutral())
        .max(Comparator.comparingDouble(c -> c.amps().si()));
  }

  static Optional<TrialResult.OutletReading> at(TrialResult result, String outlet) {
    return result.outlets().stream().filter(o -> o.name().equals(outlet)).findFirst();
  }
}
