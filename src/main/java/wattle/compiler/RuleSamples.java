package wattle.compiler;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.bind.Binder;
import wattle.bind.Memory;
import wattle.figures.HouseFigures;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Placement;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.finding.Span;
import wattle.model.House;
import wattle.pattern.Expander;
import wattle.read.SourceReader;
import wattle.rules.Rule;
import wattle.rules.Pace;
import wattle.rules.RuleBook;
import wattle.rules.RuleLoader;
import wattle.rules.Sample;
import wattle.syntax.PlanParser;
import wattle.syntax.PlanTree;
import wattle.syntax.Tree;

/**
 * Runs the samples of rules that stand in a plan's own files: each is a plan under the codes and the library of the plan itself. What
 * a rule accepts, and the plans of its exceptions, must not raise it; what it rejects must raise it once.
 */
public final class RuleSamples {
  private final Compilation plan;
  private final RuleBook book;
  private final List<Finding> findings = new ArrayList<>();

  private RuleSamples(Compilation plan) {
    this.plan = plan;
    this.book = RuleBook.of(plan.library());
  }

  /** Samples that do not do what they are for. */
  public static List<Finding> check(Compilation plan) {
    RuleSamples samples = new RuleSamples(plan);
    for (Rule rule : RuleLoader.load(plan.library()).value()) {
      if (plan.ownRules().contains(rule.name())) {
        samples.check(rule);
      }
    }
    return samples.findings;
  }

  private void check(Rule rule) {
    Tree.Rule tree = rule.tree();
    rule.accept().ifPresent(text -> mustPass(rule, text, "the accept sample", tree.accept().orElseThrow().span()));
    rule.exceptions().forEach(e -> e.plan().ifPresent(text -> mustPass(rule, text.value(), "the sample of an exception", e.span())));
    Span rejects = tree.reject().map(Tree.RuleReject::span).orElse(rule.span());
    rule.reject().flatMap(text -> raised(rule, text, "the reject sample", rejects)).filter(times -> times != 1).ifPresent(
        times -> findings.add(
            Finding.error("sample-reject-passes", "the reject sample of '" + rule.name() + "' raises it " + times + " times")
                .at(rejects, "must raise it once")
                .because("If its own reject does not raise it, the rule finds nothing, or not what it is meant to find.")
                .fix("change the sample so that it breaks the rule in one place, or fix the rule")
                .build()));
  }

  private void mustPass(Rule rule, String text, String what, Span at) {
    raised(rule, text, what, at).filter(times -> times > 0).ifPresent(
        times -> findings.add(
            Finding.error("sample-accept-raises", what + " of '" + rule.name() + "' raises it")
                .at(at, "must not raise it")
                .because("A lawful installation would be reported as a fault.")
                .fix("change the sample so that it meets the rule, or fix the rule")
                .build()));
  }

  /** How often a sample raises its rule; absent, and reported, where it cannot be bound. */
  private Optional<Integer> raised(Rule rule, String text, String what, Span at) {
    Source source = new Source(rule.name() + " sample", Sample.complete(text, rule.pack()));
    Checked<PlanTree> parsed = PlanParser.parse(source);
    Expander.Expanded written = new Expander().expand(parsed.value().items(), SourceReader.USUAL_MOST_PLACED);
    List<Finding> structure = new ArrayList<>(parsed.findings());
    structure.addAll(written.findings());
    Checked<House> house = Binder.bind(
        source, plan.house().codes(), plan.library(), List.of(parsed.value()), written, List.copyOf(structure), new Memory(),
        Placement.IN_PLACE);
    structure.addAll(house.findings());
    Optional<Finding> wrong = structure.stream().filter(f -> f.severity() == Severity.ERROR).findFirst();
    if (wrong.isPresent()) {
      findings.add(
          Finding.error("sample-unreadable", what + " of '" + rule.name() + "' is not a whole plan: " + wrong.get().headline())
              .at(at, "cannot be checked")
              .because("Parts that a sample leaves out of a service and of panel P are filled in; it must state the rest.")
              .fix("fix the sample")
              .build());
      return Optional.empty();
    }
    List<Finding> found = book.judge(new HouseFigures(house.value(), plan.library()), Pace.WHOLE).findings();
    return Optional.of((int) found.stream().filter(f -> f.rule().equals(rule.name())).count());
  }
}
