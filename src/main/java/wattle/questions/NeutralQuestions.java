package wattle.questions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.trials.TrialResult;
import wattle.trials.WorstCases;

/** What flows in neutrals, and what comes of one that opens. */
final class NeutralQuestions {
  private final Asked asked;
  private final Outlets outlets;

  NeutralQuestions(Asked asked) {
    this.asked = asked;
    outlets = new Outlets(asked);
  }

  List<QuestionKind> kinds() {
    List<Branch> shared = asked.house().branches().values().stream().filter(b -> asked.house().sharesNeutralBetweenLoads(b)).toList();
    List<Branch> single = asked.house().branches().values().stream().filter(b -> b.hots().size() == 1 && b.hasNeutral()).toList();
    return List.of(
        kind(Level.MEDIUM, shared, this::oneLoaded), kind(Level.MEDIUM, shared, this::bothLoaded), kind(Level.MEDIUM, shared, this::most),
        kind(Level.MEDIUM, single, this::opensOnOne), kind(Level.HARD, shared, this::opensShared));
  }

  private static QuestionKind kind(Level level, List<Branch> branches, java.util.function.Function<Branch, Optional<Question>> maker) {
    return new QuestionKind(level, branches.stream().<Supplier<Optional<Question>>>map(b -> () -> maker.apply(b)).toList());
  }

  private Optional<Question> oneLoaded(Branch branch) {
    List<String> two = outlets.onDifferentHots(branch);
    if (two.size() < 2) {
      return Optional.empty();
    }
    String load = Asked.plain(asked.load(branch, two.get(0))) + " A";
    List<String> events = List.of(two.get(0) + " draws " + load);
    return asked.run(events).flatMap(r -> Outlets.neutral(r, branch.name())).map(n -> new Question("neutral of one", Level.MEDIUM,
        "Only " + asked.the(two.get(0)) + " is in use and draws " + load + ". What flows in the neutral of " + asked.branch(branch) + "?",
        List.of(Asked.shown(n.amps()) + ".", "With one hot loaded, all of its current returns on the neutral."), List.of(n.amps()),
        events));
  }

  private Optional<Question> bothLoaded(Branch branch) {
    List<String> two = outlets.onDifferentHots(branch);
    if (two.size() < 2) {
      return Optional.empty();
    }
    String load = Asked.plain(asked.load(branch, two.get(0))) + " A";
    List<String> events = List.of(two.get(0) + " draws " + load, two.get(1) + " draws " + load);
    return asked.run(events).flatMap(r -> Outlets.neutral(r, branch.name())).map(n -> new Question("neutral of two", Level.MEDIUM,
        "On " + asked.branch(branch) + ", " + asked.the(two.get(0)) + " and " + asked.the(two.get(1)) + " draw " + load
            + " each, and nothing else is on. What flows in the shared neutral?",
        List.of(Asked.shown(n.amps()) + ".", why(n.amps().si(), asked.load(branch, two.get(0)))), List.of(n.amps()), events));
  }

  /** The reason by the figure that came out, so that it holds on every supply. */
  private static String why(double neutral, double load) {
    if (neutral < 0.1 * load) {
      return "The hots are on opposite legs, so equal loads cancel in the neutral.";
    }
    if (neutral > 1.8 * load) {
      return "Both hots are on the same leg, so their currents add on the neutral, and no breaker protects it.";
    }
    return "The hots are on two legs of a three-phase supply: two equal currents a third of a cycle apart add to one of the same size.";
  }

  private Optional<Question> most(Branch branch) {
    Optional<WorstCases.NeutralCase> worst = asked.plan().figures().worst().neutrals().stream()
        .filter(n -> n.branch().equals(branch.name()))
        .findFirst();
    return worst.map(w -> new Question("most in a neutral", Level.MEDIUM,
        "What is the most that the shared neutral of " + asked.branch(branch) + " can carry while no breaker is overloaded?",
        List.of(Asked.shown(w.worst()) + ", with the hots on legs " + String.join(" and ", w.legs()) + "."), List.of(w.worst()),
        List.of()));
  }

  private Optional<Question> opensOnOne(Branch branch) {
    List<String> all = outlets.toNeutral(branch);
    if (all.isEmpty()) {
      return Optional.empty();
    }
    String outlet = all.get(all.size() - 1);
    String load = Asked.plain(asked.load(branch, outlet)) + " A";
    List<String> events = List.of(outlet + " draws " + load + " impedance", "open neutral of " + branch.name());
    Optional<TrialResult.OutletReading> reading = asked.run(events).flatMap(r -> Outlets.at(r, outlet)).filter(o -> !o.floating());
    return reading.map(o -> new Question("open neutral", Level.MEDIUM,
        "A load that draws " + load + " is switched on at " + asked.the(outlet) + " when the neutral of "
            + asked.branch(branch) + " comes loose at the panel. What does a meter show between its hot and its neutral contact?",
        List.of(Asked.shown(o.volts()) + ".",
            "The circuit looks dead but is not: the neutral beyond the break is live through whatever is switched on."),
        List.of(o.volts()), events));
  }

  private Optional<Question> opensShared(Branch branch) {
    List<String> two = outlets.onDifferentHots(branch);
    Optional<SupplySystem> system = asked.system(branch);
    if (two.size() < 2 || system.isEmpty()) {
      return Optional.empty();
    }
    long small = Math.round(asked.load(branch, two.get(0)) * system.get().legToNeutralVolts() / 30) * 10;
    long large = 3 * small;
    List<String> events = List.of(two.get(0) + " draws " + large + " W impedance", two.get(1) + " draws " + small + " W impedance",
        "open neutral of "
            + branch.name());
    Optional<TrialResult> result = asked.run(events);
    Optional<TrialResult.OutletReading> one = result.flatMap(r -> Outlets.at(r, two.get(0))).filter(o -> !o.floating());
    Optional<TrialResult.OutletReading> other = result.flatMap(r -> Outlets.at(r, two.get(1))).filter(o -> !o.floating());
    if (one.isEmpty() || other.isEmpty()) {
      return Optional.empty();
    }
    List<String> answer = new ArrayList<>(List.of(
        Asked.shown(one.get().volts()) + " at " + two.get(0) + ", " + Asked.shown(other.get().volts()) + " at " + two.get(1) + "."));
    List<Leg> legs = branch.hots().stream().map(BranchHot::leg).flatMap(Optional::stream).distinct().toList();
    if (legs.size() > 1) {
      answer.add("Without the neutral the two are in series between the hots, across " + Asked.plain(system.get().legToLegVolts())
          + " V. The smaller load has the larger resistance and gets the larger share.");
    }
    return Optional.of(new Question("open shared neutral", Level.HARD,
        asked.the(two.get(0)).replaceFirst("^t", "T") + " has a resistance load of " + large + " W on, and " + asked.the(two.get(1))
            + " one of " + small
            + " W, when the shared neutral of " + asked.branch(branch) + " comes loose at the panel. What voltage does each get?",
        answer, List.of(one.get().volts(), other.get().volts()), events));
  }
}
