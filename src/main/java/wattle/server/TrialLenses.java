package wattle.server;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.Command;
import wattle.finding.Span;
import wattle.model.Expectation;
import wattle.syntax.Tree;

/** Above each trial, how many of the expectations about it hold. */
final class TrialLenses {
  private TrialLenses() {}

  static List<CodeLens> of(Question question) {
    List<CodeLens> lenses = new ArrayList<>();
    for (Tree.Item item : question.tree().items()) {
      if (item instanceof Tree.Trial trial) {
        // No command: the lens tells, and does nothing.
        lenses.add(new CodeLens(question.range(trial.name().span()), new Command(title(trial, question.analysis()), ""), null));
      }
    }
    return lenses;
  }

  private static String title(Tree.Trial trial, Analysis analysis) {
    List<Expectation> expected = analysis.house().expectations().stream()
        .filter(e -> e.trial().filter(trial.name().text()::equals).isPresent())
        .toList();
    if (expected.isEmpty()) {
      return "nothing is expected of this trial";
    }
    long found = expected.stream().filter(e -> isDoubted(e, analysis)).count();
    String all = expected.size() + (expected.size() == 1 ? " expectation" : " expectations");
    if (found == 0) {
      return all + (expected.size() == 1 ? ", and it is met" : ", and all are met");
    }
    return expected.size() == 1 ? all + ", and it is not met" : expected.size() - found + " of " + all + " hold";
  }

  private static boolean isDoubted(Expectation expectation, Analysis analysis) {
    Span whole = analysis.placed(expectation.origin().whole());
    return analysis.compilation().findings().stream()
        .flatMap(f -> f.place().stream())
        .anyMatch(m -> m.span().source() == whole.source() && m.span().start() >= whole.start() && m.span().end() <= whole.end());
  }
}
