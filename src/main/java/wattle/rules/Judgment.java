package wattle.rules;

import java.util.List;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Undecided;

/**
 * What the rules find of a house.
 *
 * @param findings those that bind it as it is; nothing is silenced
 * @param ifNew what they would find besides if existing work were new: each is advice, and keeps the severity that it would have
 * @param doubtful what could not be decided since a mistake in the plan leaves it in doubt
 */
public record Judgment(List<Finding> findings, List<Finding> ifNew, Set<Undecided.Question> doubtful) {
  /** Nothing was asked. */
  public static final Judgment NOTHING = new Judgment(List.of(), List.of(), Set.of());

  public Judgment {
    findings = List.copyOf(findings);
    ifNew = List.copyOf(ifNew);
    doubtful = Set.copyOf(doubtful);
  }
}
