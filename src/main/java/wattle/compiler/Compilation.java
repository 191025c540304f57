package wattle.compiler;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Placement;
import wattle.finding.SameFact;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.finding.Undecided;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.memo.Once;
import wattle.model.House;
import wattle.rules.Coverage;
import wattle.rules.Judgment;
import wattle.rules.RuleBook;
import wattle.rules.Unstated;
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
 * @param findings of every phase, gravest first, then by place; one for each place, {@link #facts} has one for each fact
 * @param ifNew what rules would find besides if existing work were new, as advice; empty in a survey, where they are among the findings
 * @param undecided what could not be looked for, or not decided, after mistakes in the plan
 * @param asNew whether this is a survey, which judges existing work as if it were new
 * @param completeness how much of what the plan says the house has
 * @param placement where the spans of house and trees stand; those of the findings are in place
 */
public record Compilation(Source source, HouseFigures figures, Coverages covered, List<PlanTree> files, List<Tree.Item> items,
    List<Finding> findings, List<Finding> ifNew, Undecided undecided, boolean asNew, Completeness completeness, Placement placement) {
  public Compilation {
    files = List.copyOf(files);
    items = List.copyOf(items);
    findings = List.copyOf(findings);
    ifNew = List.copyOf(ifNew);
  }

  /**
   * How far the rules of a plan's packs could be told, worked out when first asked for.
   *
   * @param asItIs with existing work as it is
   * @param asNew with existing work taken as new
   * @param presumed what rules take as usual, with existing work as it is
   * @param presumedAsNew the same with existing work taken as new
   */
  public record Coverages(Once<Coverage> asItIs, Once<Coverage> asNew, Once<List<Unstated>> presumed,
      Once<List<Unstated>> presumedAsNew) {
    static Coverages of(Supplier<RuleBook> book, HouseFigures figures) {
      return new Coverages(new Once<>(() -> book.get().coverage(figures, false)), new Once<>(() -> book.get().coverage(figures, true)),
          new Once<>(() -> book.get().presumed(figures, false)), new Once<>(() -> book.get().presumed(figures, true)));
    }

    /** The same as the rules have counted it while they were run. */
    Coverages counted(Judgment ruled) {
      return new Coverages(ruled.coverage(), ruled.coverageAsNew(), presumed, presumedAsNew);
    }
  }

  /** This with further findings, which are put in place and in order. */
  public Compilation with(List<Finding> more) {
    return having(ordered(findings, placement.whole(more)), ifNew, covered, undecided, asNew);
  }

  /** This with what the phases that judge it have found. */
  public Compilation judged(Judgments judgments) {
    Coverages counted = judgments.ruled().map(covered::counted).orElse(covered);
    return having(ordered(findings, placement.whole(judgments.findings())), placement.whole(judgments.ifNew()), counted,
        judgments.undecided(), asNew);
  }

  /** This as a survey sees it: existing work judged as if it were new, what is found of that alone being advice. */
  public Compilation surveyed() {
    return having(ordered(findings, ifNew), List.of(), covered, undecided, true);
  }

  private Compilation having(List<Finding> found, List<Finding> foundIfNew, Coverages counted, Undecided notDecided,
      boolean surveyed) {
    return new Compilation(source, figures, counted, files, items, found, foundIfNew, notDecided, surveyed, completeness, placement);
  }

  private static List<Finding> ordered(List<Finding> some, List<Finding> more) {
    List<Finding> all = new ArrayList<>(some);
    all.addAll(more);
    all.sort(Finding.BY_DANGER);
    return all;
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
    return asNew ? covered.asNew().get() : covered.asItIs().get();
  }

  /** What the rules of its packs take as usual, since it does not state it. */
  public List<Unstated> presumed() {
    return asNew ? covered.presumedAsNew().get() : covered.presumed().get();
  }

  /** Names of the rules that stand in its own files. */
  public Set<String> ownRules() {
    List<String> packs = StandardLibrary.packNames();
    Set<String> own = new TreeSet<>();
    library().rules().forEach((name, text) -> {
      if (!packs.contains(text.pack())) {
        own.add(name);
      }
    });
    return own;
  }

  /** The findings as people and programs are shown them: each fact once, with every place of it. */
  public List<Finding> facts() {
    return SameFact.once(findings, house()::hasNamed);
  }

  /** What rules would find besides if existing work were new, each fact once. */
  public List<Finding> factsIfNew() {
    return SameFact.once(ifNew, house()::hasNamed);
  }

  /** How many facts of a severity stand, silenced ones not counted. */
  public long count(Severity severity) {
    return facts().stream().filter(f -> f.severity() == severity && f.silenced().isEmpty()).count();
  }

  /** Whether a phase that judges did not finish for a bug of ours; then there is a finding that says which. */
  public boolean hasInternalError() {
    return findings.stream().anyMatch(f -> f.rule().equals(JudgingPhase.INTERNAL_ERROR));
  }
}
