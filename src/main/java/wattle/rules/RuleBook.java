package wattle.rules;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Undecided;
import wattle.library.Library;

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
    return new RuleBook(RuleLoader.load(library));
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
    Judgment found = judge(index, rules.value(), false, pace);
    List<Finding> findings = new ArrayList<>(rules.findings());
    findings.addAll(found.findings());
    return new Judgment(findings, index.hasExisting() ? ifNew(index, found.findings(), pace) : List.of(), found.doubtful());
  }

  /** What is found besides when existing work is taken as new. */
  private List<Finding> ifNew(HouseIndex index, List<Finding> asItIs, Pace pace) {
    Set<Object> known = new HashSet<>();
    asItIs.forEach(f -> known.add(at(f)));
    return judge(index, rules.value(), true, pace).findings().stream().filter(f -> !known.contains(at(f))).map(Finding::ifNew)
        .toList();
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
    return Coverage.of(figures, rules.value(), asNew);
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

  private static Judgment judge(HouseIndex index, List<Rule> rules, boolean asNew, Pace pace) {
    Map<Kind, List<Rule>> byKind = new EnumMap<>(Kind.class);
    rules.forEach(r -> byKind.computeIfAbsent(r.kind(), k -> new ArrayList<>()).add(r));
    Map<Kind, List<?>> things = new EnumMap<>(Kind.class);
    byKind.keySet().forEach(k -> things.put(k, index.all(k)));
    int most = things.values().stream().mapToInt(List::size).max().orElse(0);
    int stretches = Math.max(1, (most + STRETCH - 1) / STRETCH);
    List<Part> found = pace.over(stretches)
        .mapToObj(i -> stretch(new RuleRunner(index, asNew, pace), byKind, things, i, stretches)).toList();
    List<Finding> findings = rules.stream().flatMap(r -> found.stream().flatMap(f -> f.findings.get(r).stream())).toList();
    return new Judgment(findings, List.of(), found.stream().flatMap(f -> f.doubtful.stream()).collect(Collectors.toSet()));
  }

  /** What was found in a part of the things. */
  private record Part(Map<Rule, List<Finding>> findings, List<Undecided.Question> doubtful) {}

  /** The i-th of so many parts of the things of each kind. */
  private static Part stretch(RuleRunner runner, Map<Kind, List<Rule>> rules, Map<Kind, List<?>> things, int i, int stretches) {
    Map<Rule, List<Finding>> found = new IdentityHashMap<>();
    things.forEach((kind, all) -> {
      int from = (int) ((long) all.size() * i / stretches);
      int to = (int) ((long) all.size() * (i + 1) / stretches);
      List<Rule> own = rules.get(kind);
      List<List<Finding>> each = runner.run(own, all.subList(from, to));
      for (int rule = 0; rule < own.size(); rule++) {
        found.put(own.get(rule), each.get(rule));
      }
    });
    return new Part(found, runner.doubtful());
  }
}
