package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.finding.Checked;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Mistake;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.Expectation;
import wattle.model.House;
import wattle.model.Trial;
import wattle.quantity.Dimension;
import wattle.quantity.Quantity;

/**
 * The expectations of a plan, held against the figures of its trials. A figure that {@code is} a value may differ by the
 * tolerance that is stated, else by one in a hundred.
 */
public final class Expectations {
  private static final Pattern SUBJECT = Pattern.compile("\\s+(of|at)\\s");
  private static final double USUAL_TOLERANCE = 0.01;
  private static final double ROUNDING = 1e-9;

  private final House house;
  private final SolvedTrials trials;
  private final boolean sound;
  /** Held while they are needed, whatever memory does. */
  private final Map<String, TrialResult> results = new HashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  private Expectations(House house, SolvedTrials trials, boolean sound) {
    this.house = house;
    this.trials = trials;
    this.sound = sound;
  }

  /**
   * Findings of the trials and expectations of a plan; none where it has neither.
   * Those that a mistake in the plan leaves in doubt are not judged, and what names nothing in a damaged plan is not told again.
   */
  public static List<Finding> check(House house, SolvedTrials trials) {
    if (house.trials().isEmpty() && house.expectations().isEmpty()) {
      return List.of();
    }
    Expectations expectations = new Expectations(house, trials, house.doubts().isEmpty());
    expectations.check();
    return expectations.findings;
  }

  /** The words that an expectation can measure; those of two are written with a space between them. */
  public static List<String> measures() {
    return Measures.words();
  }

  /** What came of each expectation, in the order of the plan, of a plan that was bound without errors. */
  public static List<Judged> judged(House house, SolvedTrials trials) {
    Expectations expectations = new Expectations(house, trials, true);
    return house.expectations().stream().map(expectations::judged).toList();
  }

  private void check() {
    for (Trial trial : house.trials().values()) {
      Checked<TrialResult> result = trials.result(trial);
      results.put(trial.name(), result.value());
      if (sound && trial.events().isEmpty()) {
        findings.add(empty(trial));
      }
      if (sound) {
        findings.addAll(result.findings());
      }
    }
    house.expectations().stream().filter(this::isDecided).forEach(e -> judged(e).finding().ifPresent(findings::add));
  }

  /** Whether the figure that is expected cannot be another for a mistake elsewhere. */
  private boolean isDecided(Expectation expected) {
    return !house.doubts().ofCurrents() && !house.doubts().has(Doubt.TRIAL, Doubts.nameOf(expected.origin().whole()))
        && expected.trial().filter(t -> house.doubts().has(Doubt.TRIAL, t)).isEmpty();
  }

  private static Finding empty(Trial trial) {
    return Finding.warning("trial-empty", "nothing happens in the trial '" + trial.name() + "'")
        .at(trial.origin().name(), "it has no event")
        .because("In a trial, only the loads that it names draw, so here nothing is on and nothing is wrong.")
        .fix("name what draws or what is wrong, such as kitchen.c1.upper draws 10 A or open service neutral")
        .build();
  }

  private TrialResult result(Optional<String> trial) {
    return results.computeIfAbsent(
        trial.orElse(""), t -> house.trials().containsKey(t) ? trials.result(house.trials().get(t)).value() : trials.stated());
  }

  private Judged judged(Expectation expected) {
    if (expected.value().isEmpty()) {
      return opening(expected);
    }
    Optional<Measures.Measure> measure = Measures.of(expected.measure());
    if (measure.isEmpty()) {
      return without(expected, unknownMeasure(expected));
    }
    Dimension dimension = measure.get().dimension();
    if (!value(expected).isLike(dimension)) {
      return without(
          expected,
          Finding.error(Mistake.DIMENSION_MISMATCH, "'" + expected.measure() + "' is not measured in " + value(expected).unit().symbol())
              .at(expected.measured(),
                  dimension.equals(Dimension.NONE) ? "a part such as 3 % is expected" : dimension.trade() + " is expected")
              .build());
    }
    String subject = expected.subject().orElseGet(() -> house.services().keySet().stream().findFirst().orElse(""));
    Optional<Measured> found = measure.get().reader().apply(result(expected.trial()), subject);
    if (found.isPresent()) {
      return new Judged(expected, Optional.of(found.get().figure()),
          holds(expected, found.get()) ? Optional.empty() : Optional.of(failed(expected, found.get())));
    }
    return new Judged(expected, Optional.empty(), sound ? Optional.of(nothingThere(expected, subject)) : Optional.empty());
  }

  private static Quantity value(Expectation expected) {
    return expected.value().orElseThrow();
  }

  private Judged opening(Expectation expected) {
    String subject = expected.subject().orElseThrow();
    TrialResult result = result(expected.trial());
    Optional<TripExpectations.Found> found = TripExpectations.of(result, subject);
    if (found.isEmpty()) {
      return new Judged(expected, Optional.empty(), sound ? Optional.of(nothingThere(expected, subject)) : Optional.empty());
    }
    boolean holds = found.get().isAs(expected.bound());
    return new Judged(expected, Optional.of(found.get().figure()),
        holds ? Optional.empty() : Optional.of(otherwise(expected, subject, found.get())));
  }

  private Finding otherwise(Expectation expected, String subject, TripExpectations.Found found) {
    Finding.Builder finding = Finding.error("expectation-failed", "'" + subject + "' " + found.words() + in(expected))
        .at(expected.measured(), found.figure().name() + " is " + found.figure().value().text())
        .because(found.because())
        .figure(found.figure().name(), found.figure().value().text())
        .figure("expected", expected.bound() == Expectation.Bound.TRIPS ? "trips" : "holds")
        .fix(expected.bound() == Expectation.Bound.TRIPS
            ? "add protection that opens, and check that the ground there is continuous"
            : "find what opens it: a load, a leak or a fault of the trial")
        .source(Citation.COMMON_PRACTICE);
    expected.trial().map(house.trials()::get).ifPresent(t -> finding.with(t.origin().name(), drawing(result(expected.trial()))));
    return finding.build();
  }

  private static Judged without(Expectation expected, Finding finding) {
    return new Judged(expected, Optional.empty(), Optional.of(finding));
  }

  private static Finding unknownMeasure(Expectation expected) {
    Finding.Builder finding = Finding.error("measure-unknown", "nothing measures '" + expected.measure() + "'")
        .at(expected.measured(), "a figure of a trial is expected here")
        .because("What can be measured: " + String.join(", ", Measures.words()).replace('-', ' ') + ".");
    NearNames.of(expected.measure(), Measures.words())
        .forEach(n -> finding.fix(Fix.offered("write " + n.replace('-', ' '), measure(expected.measured()), n.replace('-', ' '))));
    return finding.build();
  }

  /** The words of a measure, without what it is measured at. */
  private static Span measure(Span measured) {
    Matcher subject = SUBJECT.matcher(measured.text());
    return subject.find() ? measured.source().span(measured.start(), measured.start() + subject.start()) : measured;
  }

  private static Finding nothingThere(Expectation expected, String subject) {
    return Finding
        .error("expectation-unmeasured", "'" + subject + "' has no " + expected.measure().replace('-', ' ') + " to measure" + in(expected))
        .at(expected.measured(), "there is none")
        .because("Measure a branch, panel, box, device or part of the plan that has such a figure.")
        .build();
  }

  private static String in(Expectation expected) {
    return expected.trial().map(t -> " in " + t).orElse("");
  }

  private static boolean holds(Expectation expected, Measured found) {
    double figure = found.figure().si();
    double value = value(expected).si();
    double rounding = ROUNDING * Math.max(1, Math.abs(value));
    double tolerance = expected.within().map(Quantity::si).orElse(USUAL_TOLERANCE * Math.abs(value));
    return switch (expected.bound()) {
      case EQUAL -> Math.abs(figure - value) <= tolerance + rounding;
      case AT_MOST -> figure <= value + expected.within().map(Quantity::si).orElse(0.0) + rounding;
      case AT_LEAST -> figure >= value - expected.within().map(Quantity::si).orElse(0.0) - rounding;
      case TRIPS, HOLDS -> throw new AssertionError(expected);
    };
  }

  private Finding failed(Expectation expected, Measured found) {
    String shown = shown(found.figure().quantity().orElseThrow(), value(expected));
    Finding.Builder finding = Finding.error("expectation-failed", found.sentence().replace("%s", shown) + in(expected))
        .at(expected.measured(), found.where().isEmpty() ? shown + " was found" : shown + ", " + found.where())
        .because(found.reason())
        .figure(found.figure().name(), shown)
        .figure("expected", bound(expected) + value(expected))
        .fix(Remedies.of(expected, found.figure().si() < value(expected).si()))
        .source(Citation.COMMON_PRACTICE);
    expected.trial().map(house.trials()::get).ifPresent(t -> finding.with(t.origin().name(), drawing(result(expected.trial()))));
    return finding.build();
  }

  private static String bound(Expectation expected) {
    return switch (expected.bound()) {
      case EQUAL -> "";
      case AT_MOST -> "at most ";
      case AT_LEAST -> "at least ";
      case TRIPS, HOLDS -> throw new AssertionError(expected);
    };
  }

  /** In the unit that the plan expects, to three digits. */
  private static String shown(Quantity figure, Quantity like) {
    double value = figure.in(like.unit());
    String number = Math.abs(value) < 0.0005 ? "0" : Quantity.plain(value, 3);
    return number + " " + like.unit().symbol();
  }

  private static String drawing(TrialResult result) {
    List<String> drawing = result.drawing();
    if (drawing.isEmpty()) {
      return "nothing draws here";
    }
    return drawing.size() == 1 ? "only " + drawing.get(0) + " draws here" : drawing.size() + " loads draw here";
  }
}
