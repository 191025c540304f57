package wattle.rules;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Undecided;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.memo.Once;
import wattle.model.House;

/** The entry of the phase: all rules of a library over a house. */
public final class RuleBook {
  /**
   * Things of one kind that are judged together. What lies together in a plan mostly hangs together, so that what is kept
   * of one thing serves the others, and may be forgotten when they are done.
   */
  private static final int STRETCH = 2000;

  private final Checked<List<Rule>> rules;

  private RuleBook(Checked<List<Rule>> rules) {
    this.rules = rules;
  }

  /** Checks the rules of a library. */
  public static RuleBook of(Library library) {
    return new RuleBook(RuleLoader.load(library, StandardLibrary.packNames()));
  }

  /**
   * What the rules find, with the mistakes in the rules themselves. They are asked of every house, also of one with mistakes: what a
   * mistake leaves in doubt is not known, and a rule is silent about that alone.
   *
   * @param figures of a house that was bound with the library of these rules
   * @throws java.util.concurrent.CancellationException where the pace says that nobody waits for it
   */
  public Judgment judge(HouseFigures figures, Pace pace) {
    HouseIndex index = new HouseIndex(figures);
    Judged asItIs = judge(index, rules.value(), false, pace);
    Judged asNew = index.hasExisting() ? judge(index, rules.value(), true, pace) : asItIs;
    List<Finding> findings = new ArrayList<>(rules.findings());
    findings.addAll(asItIs.findings);
    return new Judgment(findings, besides(asItIs.findings, asNew.findings), asItIs.doubtful, asItIs.coverage, asNew.coverage);
  }

  /** What is found besides when existing work is taken as new. */
  private static List<Finding> besides(List<Finding> asItIs, List<Finding> asNew) {
    Set<Object> known = new HashSet<>();
    asItIs.forEach(f -> known.add(at(f)));
    return asNew.stream().filter(f -> !known.contains(at(f))).map(Finding::ifNew).toList();
  }

  /** By rule and place: the same thing may be worded in another way when it is judged as new. */
  private static Object at(Finding finding) {
    return List.of(finding.rule(), finding.place().map(m -> (Object) m.span()).orElse(""));
  }

  /**
   * How far these rules could be told of a house, with what its plan does not state.
   *
   * @param asNew whether existing work is taken as new
   */
  public Coverage coverage(HouseFigures figures, boolean asNew) {
    return judge(new HouseIndex(figures), rules.value(), asNew, Pace.WHOLE).coverage.get();
  }

  /**
   * What these rules take as usual since the plan does not state it, where they would be open otherwise: a receptacle without a
   * distance is far from a sink.
   *
   * @param asNew whether existing work is taken as new
   */
  public List<Unstated> presumed(HouseFigures figures, boolean asNew) {
    return Coverage.presumed(figures, rules.value(), asNew);
  }

  /** In a big house on several processors; what the rules find is in their order, and of one rule in that of the plan. */
  static List<Finding> run(HouseFigures figures, List<Rule> rules) {
    return judge(new HouseIndex(figures), rules, false, Pace.WHOLE).findings();
  }

  private static Judged judge(HouseIndex index, List<Rule> rules, boolean asNew, Pace pace) {
    Map<Kind, List<Rule>> byKind = new EnumMap<>(Kind.class);
    rules.forEach(r -> byKind.computeIfAbsent(r.kind(), k -> new ArrayList<>()).add(r));
    Map<Kind, List<?>> things = new EnumMap<>(Kind.class);
    byKind.keySet().forEach(k -> things.put(k, index.all(k)));
    int most = things.values().stream().mapToInt(List::size).max().orElse(0);
    int stretches = Math.max(1, (most + STRETCH - 1) / STRETCH);
    List<RuleRunner> ran = pace.over(stretches)
        .mapToObj(i -> stretch(new RuleRunner(index, asNew, pace), byKind, things, i, stretches)).toList();
    Tally tally = new Tally();
    ran.forEach(r -> tally.add(r.tally()));
    House house = index.house();
    return new Judged(
        rules.stream().flatMap(r -> ran.stream().flatMap(part -> part.found(r).stream())).toList(),
        ran.stream().flatMap(r -> r.doubtful().stream()).collect(Collectors.toSet()),
        new Once<>(() -> tally.coverage(rules.size(), house.units())));
  }

  /**
   * What rules found of a house in one way of looking at it.
   *
   * @param doubtful what could not be decided since a mistake in the plan leaves it in doubt
   * @param coverage how far the rules could be told
   */
  private record Judged(List<Finding> findings, Set<Undecided.Question> doubtful, Once<Coverage> coverage) {}

  /** Runs over the i-th of so many parts of the things of each kind. */
  private static RuleRunner stretch(RuleRunner runner, Map<Kind, List<Rule>> rules, Map<Kind, List<?>> things, int i, int stretches) {
    things.forEach((kind, all) -> {
      int from = (int) ((long) all.size() * i / stretches);
      int to = (int) ((long) all.size() * (i + 1) / stretches);
      if (from < to) {
        runner.run(new KindRules(rules.get(kind)), all.subList(from, to));
      }
    });
    return runner;
  }
}
