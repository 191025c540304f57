package wattle.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.finding.Finding;

/**
 * What was found of a text before the last change and still stands: so long as it has not been judged anew, and, of rules
 * that are not asked of a plan with an error in it, until that is mended. A list of warnings should not empty itself while one
 * of them is being seen to.
 */
final class Standing {
  private static final String REMARK = "Found before the plan had an error in it; asked again once that is mended.";

  private Standing() {}

  /** Those of before that speak of nothing but text that is still there, as they may be shown. */
  static List<Finding> shown(List<Finding> before, Compilation structure) {
    Set<String> unasked = structure.unasked();
    return before.stream()
        .filter(structure.placement()::holds)
        .map(f -> unasked.contains(f.rule()) ? f.remarked(REMARK) : f)
        .toList();
  }

  /** What has been found now, and behind it what was found before by rules that are not asked now. */
  static List<Finding> kept(List<Finding> before, List<Finding> now, Compilation structure) {
    Set<String> unasked = structure.unasked();
    List<Finding> kept = new ArrayList<>(now);
    before.stream()
        .filter(f -> unasked.contains(f.rule()) && structure.placement().holds(f))
        .filter(f -> now.stream().noneMatch(n -> n.rule().equals(f.rule()) && n.place().equals(f.place())))
        .forEach(kept::add);
    return kept;
  }
}
