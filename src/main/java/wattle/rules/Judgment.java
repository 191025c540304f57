package wattle.rules;

import java.util.List;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Undecided;
import wattle.memo.Once;

/**
 * What the rules find of a house.
 *
 * @param findings those that bind it as it is; nothing is silenced
 * @param ifNew what they would find besides if existing work were new: each is advice, and keeps the severity that it would have
 * @param doubtful what could not be decided since a mistake in the plan leaves it in doubt
 * @param coverage how far they could be told of it as it is
 * @param coverageAsNew how far they could be told with existing work taken as new
 */
public record Judgment(List<Finding> findings, List<Finding> ifNew, Set<Undecided.Question> doubtful, Once<Coverage> coverage,
    Once<Coverage> coverageAsNew) {
  public Judgment {
    findings = List.copyOf(findings);
    ifNew = List.copyOf(ifNew);
    doubtful = Set.copyOf(doubtful);
  }
}
