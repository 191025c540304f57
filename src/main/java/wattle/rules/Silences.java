package wattle.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.NearNames;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.model.Silence;

/**
 * Silences findings where the plan gives a reason. What the parser or the binder found never comes here, so it cannot be
 * silenced, and what a plan itself expects is changed there; a silence that silences nothing, or gives no reason, is a finding.
 */
public final class Silences {
  private final List<Silence> silences;
  private final Set<String> names = new HashSet<>();

  /**
   * @param library its rules may be silenced
   * @param computed names of the findings of computations that may be silenced as well
   */
  public Silences(List<Silence> silences, Library library, Set<String> computed) {
    this.silences = silences;
    names.addAll(library.rules().keySet());
    names.addAll(computed);
  }

  /**
   * The findings, some of them silenced, and the silences that are idle.
   *
   * @param ifNew what would be found besides if existing work were new: what silences one of those is not idle
   * @param complete whether all that may be silenced was looked for; else no silence is called idle
   */
  public List<Finding> apply(List<Finding> found, List<Finding> ifNew, boolean complete) {
    List<Finding> findings = new ArrayList<>();
    Set<Span> used = new HashSet<>();
    for (Finding each : found) {
      Optional<Silence> silence = silences.stream().filter(s -> matches(s, each)).findFirst();
      silence.ifPresent(s -> used.add(s.origin().whole().written()));
      findings.add(silence.map(s -> each.silencedBecause(s.reason())).orElse(each));
    }
    ifNew.forEach(each -> silences.stream().filter(s -> matches(s, each)).forEach(s -> used.add(s.origin().whole().written())));
    if (complete) {
      silences.stream().filter(s -> !s.reason().isBlank() && !used.contains(s.origin().whole().written()))
          .forEach(s -> findings.add(idle(s)));
    }
    silences.stream().filter(s -> s.reason().isBlank()).forEach(s -> findings.add(unreasoned(s)));
    return findings;
  }

  /** The findings, some of them silenced. */
  public List<Finding> over(List<Finding> found) {
    return found.stream().map(each -> silences.stream().filter(s -> matches(s, each)).findFirst()
        .map(s -> each.silencedBecause(s.reason())).orElse(each)).toList();
  }

  private boolean matches(Silence silence, Finding found) {
    return !silence.reason().isBlank() && silence.rule().equals(found.rule()) && names.contains(found.rule())
        && silence.covers(found.subject());
  }

  private static Finding unreasoned(Silence silence) {
    Span whole = silence.origin().whole();
    return Finding.error("silence-without-reason", "a silence of '" + silence.rule() + "' gives no reason")
        .at(whole.source().span(Math.max(whole.start(), whole.end() - 2), whole.end()), "why this may stay so is expected here")
        .because("A later reader has to be able to judge it, so a silence without a reason has no effect.")
        .fix("write between the quotes why it may stay so")
        .build();
  }

  private Finding idle(Silence silence) {
    boolean known = names.contains(silence.rule());
    Finding.Builder finding = Finding.warning("silence-idle", "a silence of '" + silence.rule() + "' silences nothing")
        .at(silence.origin().name(),
            known
                ? "this rule raises nothing" + silence.at().map(a -> " at " + a).orElse(" here")
                : "no rule of this plan's packs is called so")
        .because("An old silence would hide the next fault of its kind.");
    if (known) {
      finding.fix(Fix.takenOut("delete the line", silence.origin().whole()));
    } else {
      NearNames.of(silence.rule(), names).forEach(n -> finding.fix(Fix.offered("write " + n, silence.origin().name(), n)));
    }
    return finding.build();
  }
}
