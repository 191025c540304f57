package wattle.bind;

import java.util.Map;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.motors.WelderCurrents;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Finds figures of a welder's nameplate that no welder has: they would make its conductors too small without a word. */
final class WelderFigures {
  private static final String MISTAKE = "welder-figure-out-of-range";

  private WelderFigures() {}

  /** @param facts figures that it states by name; one that cannot be is taken out, and reported */
  static void check(Scope scope, Tree.Device device, Map<String, Quantity> loads, Map<String, Quantity> facts) {
    Quantity duty = facts.get(WelderCurrents.DUTY);
    if (duty != null && (duty.si() <= 0 || duty.si() > 1)) {
      facts.remove(WelderCurrents.DUTY);
      scope.report(
          Finding.error(MISTAKE, "the duty cycle of '" + device.name() + "' is " + duty)
              .at(stated(device, WelderCurrents.DUTY), "more than 0 % and at most 100 % is expected here")
              .fix("write the duty cycle that its nameplate gives, such as 60 %"));
    }
    Quantity effective = facts.get(WelderCurrents.EFFECTIVE);
    Quantity primary = loads.get("");
    if (effective != null && primary != null && primary.dimension().equals(Dimension.CURRENT) && effective.si() > primary.si()) {
      facts.remove(WelderCurrents.EFFECTIVE);
      scope.report(
          Finding.error(MISTAKE, "the effective current of '" + device.name() + "' is " + effective + ", its rated current " + primary)
              .at(stated(device, WelderCurrents.EFFECTIVE), "at most " + primary + " is expected here")
              .because("The effective current is the rated primary current, counted for the part of the time in which it flows.")
              .fix("write the rated primary current and the effective one (I1max and I1eff on most nameplates)"));
    }
  }

  private static Span stated(Tree.Device device, String name) {
    return device.amounts().stream()
        .filter(a -> a.before().filter(b -> b.text().equals(name)).isPresent())
        .map(a -> a.value().span()).findFirst().orElse(device.name().span());
  }
}
