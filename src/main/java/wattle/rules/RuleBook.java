package wattle.rules;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
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
   * Findings of the rules, and mistakes in the rules themselves; nothing is silenced here.
   *
   * @param figures of a house that was bound with the library of these rules
   * @param sound whether the house was bound without errors; rules are not asked about one that was not, since they would
   *     find the same fault again in other words
   */
  public List<Finding> judge(HouseFigures figures, boolean sound) {
    List<Finding> findings = new ArrayList<>(rules.findings());
    if (!sound) {
      return findings;
    }
    findings.addAll(run(figures, rules.value()));
    return findings;
  }

  /**
   * How far these rules could be told of a house.
   *
   * @param sound whether the plan was bound without errors; else no rule is tried
   */
  public Coverage coverage(HouseFigures figures, boolean sound) {
    return sound ? Coverage.of(figures, rules.value()) : Coverage.NONE;
  }

  /** In a big house on several processors; what the rules find is in their order, and of one rule in that of the plan. */
  static List<Finding> run(HouseFigures figures, List<Rule> rules) {
    HouseIndex index = new HouseIndex(figures);
    Map<Kind, List<Rule>> byKind = new EnumMap<>(Kind.class);
    rules.forEach(r -> byKind.computeIfAbsent(r.kind(), k -> new ArrayList<>()).add(r));
    Map<Kind, List<?>> things = new EnumMap<>(Kind.class);
    byKind.keySet().forEach(k -> things.put(k, index.all(k)));
    int most = things.values().stream().mapToInt(List::size).max().orElse(0);
    int stretches = Math.max(1, (most + STRETCH - 1) / STRETCH);
    List<Map<Rule, List<Finding>>> found = IntStream.range(0, stretches).parallel()
        .mapToObj(i -> stretch(index, byKind, things, i, stretches)).toList();
    return rules.stream().flatMap(r -> found.stream().flatMap(f -> f.get(r).stream())).toList();
  }

  /** The i-th of so many parts of the things of each kind. */
  private static Map<Rule, List<Finding>> stretch(
      HouseIndex index, Map<Kind, List<Rule>> rules, Map<Kind, List<?>> things, int i, int stretches) {
    RuleRunner runner = new RuleRunner(index, false);
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
    return found;
  }
}
