package wattle.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.model.Silence;

/**
 * Silences findings of rules where the plan gives a reason. What the parser or the binder found never comes here, so it
 * cannot be silenced; a silence that silences nothing is a finding.
 */
final class Silences {
  private Silences() {}

  static List<Finding> apply(List<RuleFinding> found, List<Silence> silences, Set<String> ruleNames) {
    List<Finding> findings = new ArrayList<>();
    Set<Silence> used = new HashSet<>();
    for (RuleFinding each : found) {
      Optional<Silence> silence = silences.stream().filter(s -> matches(s, each)).findFirst();
      silence.ifPresent(used::add);
      findings.add(silence.map(s -> each.finding().silencedBecause(s.reason())).orElse(each.finding()));
    }
    silences.stream().filter(s -> !used.contains(s)).forEach(s -> findings.add(idle(s, ruleNames)));
    return findings;
  }

  private static boolean matches(Silence silence, RuleFinding found) {
    return silence.rule().equals(found.finding().rule()) && (silence.at().isEmpty() || silence.at().equals(found.subject()));
  }

  private static Finding idle(Silence silence, Set<String> ruleNames) {
    Finding.Builder finding =
        Finding.warning("silence-idle", "a silence of '" + silence.rule() + "' silences nothing")
            .at(silence.origin().name(), ruleNames.contains(silence.rule()) ? "this rule raises nothing" + silence.at().map(a -> " at " + a).orElse(" here") : "no rule of this plan's packs is called so")
            .because("A silence that is left behind would hide the next fault of its kind.");
    if (ruleNames.contains(silence.rule())) {
      finding.fix("take the line out");
    } else {
      NearNames.of(silence.rule(), ruleNames).forEach(n -> finding.fix(Fix.of("write " + n)));
    }
    return finding.build();
  }
}
