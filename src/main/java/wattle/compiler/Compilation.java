package wattle.compiler;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Placement;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.Library;
import wattle.memo.Once;
import wattle.model.House;
import wattle.rules.Coverage;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * All that is known of a plan.
 *
 * @param source its text
 * @param figures of its house, as far as that could be read: one value for all who ask
 * @param covered how far the rules of its packs could be told
 * @param files its files as trees, the plan first
 * @param items what its files say, patterns placed
 * @param findings of every phase, gravest first, then by place
 * @param completeness how much of what the plan says the house has
 * @param placement where the spans of house and trees stand; those of the findings are in place
 */
public record Compilation(Source source, HouseFigures figures, Once<Coverage> covered, List<PlanTree> files, List<Tree.Item> items,
    List<Finding> findings, Completeness completeness, Placement placement) {
  public Compilation {
    files = List.copyOf(files);
    items = List.copyOf(items);
    findings = List.copyOf(findings);
  }

  /** This with further findings, which are put in place and in order. */
  public Compilation with(List<Finding> more) {
    List<Finding> all = new ArrayList<>(findings);
    all.addAll(placement.whole(more));
    all.sort(Finding.BY_DANGER);
    return new Compilation(source, figures, covered, files, items, all, completeness, placement);
  }

  /** The house, as far as it could be read. */
  public House house() {
    return figures.house();
  }

  /** What it was made with. */
  public Library library() {
    return figures.library();
  }

  /** How far the rules of its packs could be told. */
  public Coverage coverage() {
    return covered.get();
  }

  /** Names of rules that were not asked of it, or not of the whole of it, since its structure is wrong. */
  public Set<String> unasked() {
    if (completeness == Completeness.SOUND) {
      return Set.of();
    }
    Set<String> unasked = new HashSet<>(library().rules().keySet());
    unasked.addAll(List.of("expectation-failed", "silence-idle"));
    if (completeness == Completeness.IN_PIECES) {
      unasked.addAll(Compiler.COMPUTED);
    }
    return Set.copyOf(unasked);
  }

  /** How many findings of a severity stand, silenced ones not counted. */
  public long count(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity && f.silenced().isEmpty()).count();
  }

  /** Whether a phase that judges did not finish for a bug of ours; then there is a finding that says which. */
  public boolean hasInternalError() {
    return findings.stream().anyMatch(f -> f.rule().equals(JudgingPhase.INTERNAL_ERROR));
  }
}
