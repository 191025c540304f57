package wattle.server;

import java.util.ArrayList;
import java.util.List;
import wattle.compiler.Compilation;
import wattle.compiler.Judgments;
import wattle.finding.Finding;

/**
 * What was found of a text before the last change and still stands: so long as it has not been judged anew, and, of what a mistake
 * leaves in doubt, until that is mended. A list of warnings should not empty itself while one of them is being seen to.
 */
final class Standing {
  private static final String REMARK = "Found before an error in the plan put this in doubt; checked again when the error is fixed.";

  private Standing() {}

  /** Those of before that speak of nothing but text that is still there. */
  static List<Finding> shown(List<Finding> before, Compilation structure) {
    return before.stream().filter(structure.placement()::holds).toList();
  }

  /** What has been found now, and behind it what was found before and cannot be decided now. */
  static List<Finding> kept(List<Finding> before, Judgments now, Compilation structure) {
    List<Finding> kept = new ArrayList<>(now.findings());
    before.stream()
        .filter(f -> now.undecided().has(f) && structure.placement().holds(f))
        .filter(f -> now.findings().stream().noneMatch(n -> n.rule().equals(f.rule()) && n.place().equals(f.place())))
        .map(f -> f.reason().contains(REMARK) ? f : f.remarked(REMARK))
        .forEach(kept::add);
    return kept;
  }
}
