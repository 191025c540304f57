package wattle.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import wattle.derivation.Derivation;
import wattle.model.Branch;
import wattle.quantity.Units;
import wattle.trials.WorstCases.NeutralCase;
import wattle.trials.WorstCases.VoltageCase;
import wattle.trials.WorstCases;

/** What shared neutrals carry, and how far the voltage falls, at the worst that breakers allow and at the stated loads. */
final class WorstMeasures {
  private WorstMeasures() {}

  static void add(Plan plan, Measured to) {
    WorstCases worst = plan.figures().worst();
    neutrals(plan, worst, to);
    voltages(plan, worst, to);
  }

  private static void neutrals(Plan plan, WorstCases worst, Measured to) {
    Map<String, NeutralCase> cases = new LinkedHashMap<>();
    worst.neutrals().forEach(c -> cases.put(c.branch(), c));
    for (Branch branch : plan.house().branches().values()) {
      if (branch.sharesNeutral()) {
        Thing of = new Thing(Thing.Kind.BRANCH, branch.name());
        Measure largest = new Measure(Measure.Topic.NEUTRAL, of, 0, "largest neutral current", Units.AMPERE, 1);
        Measure stated = new Measure(Measure.Topic.NEUTRAL, of, 1, "neutral current at stated loads", Units.AMPERE, 1);
        NeutralCase known = cases.get(branch.name());
        if (known == null) {
          to.unknown(largest, "a leg or a breaker of it is not known");
        } else {
          String legs = "legs " + String.join("+", known.legs());
          to.known(largest, known.worst(), legs);
          to.known(stated, known.stated(), legs);
        }
      }
    }
  }

  private static void voltages(Plan plan, WorstCases worst, Measured to) {
    List<VoltageCase> cases = worst.voltages();
    Map<String, List<VoltageCase>> branches = new LinkedHashMap<>();
    cases.forEach(c -> branches.computeIfAbsent(c.branch(), b -> new ArrayList<>()).add(c));
    branches.forEach(
        (branch, its) -> {
          Thing of = new Thing(Thing.Kind.BRANCH, branch);
          Measure fall = new Measure(Measure.Topic.VOLTAGE, of, 0, "largest drop at full load", Units.PERCENT, 2);
          largest(its, VoltageCase::fall).ifPresentOrElse(
              c -> to.known(fall, c.fall().orElseThrow(), "at " + c.outlet()),
              () -> to.unknown(fall, "the rating of its breaker is not known"));
        });
    Measure full = Measured.ofHouse(Measure.Topic.VOLTAGE, 0, "largest drop at full load", Units.PERCENT, 2);
    Measure stated = Measured.ofHouse(Measure.Topic.VOLTAGE, 1, "largest drop at stated loads", Units.PERCENT, 2);
    if (cases.isEmpty() && !plan.house().devices().isEmpty()) {
      to.unknown(full, "no outlet is fed");
    }
    largest(cases, VoltageCase::fall).ifPresent(c -> to.known(full, c.fall().orElseThrow(), at(c)));
    largest(cases, c -> Optional.of(c.statedFall())).ifPresent(c -> to.known(stated, c.statedFall(), at(c)));
  }

  private static String at(VoltageCase at) {
    return "at " + at.outlet() + " of " + at.branch();
  }

  /** The worst; of several as bad the first by name, so that the order of the plan does not choose. */
  private static Optional<VoltageCase> largest(List<VoltageCase> cases, Function<VoltageCase, Optional<Derivation>> fall) {
    return cases.stream()
        .filter(c -> fall.apply(c).isPresent())
        .min(Comparator.comparingDouble((VoltageCase c) -> -fall.apply(c).orElseThrow().si()).thenComparing(VoltageCase::outlet));
  }
}
