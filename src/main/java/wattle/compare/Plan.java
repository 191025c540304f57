package wattle.compare;

import java.util.List;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Undecided;
import wattle.model.House;

/**
 * One of two revisions that are compared.
 *
 * @param figures of its house
 * @param ifNew what rules would find besides if existing work were new; empty of a survey, which has it among the findings
 * @param whole whether nothing that the plan says was left out; the figures of a house in pieces would mislead
 * @param undecided findings that a mistake in it leaves undecided: that they are not there says nothing
 */
public record Plan(HouseFigures figures, List<Finding> findings, List<Finding> ifNew, boolean whole, Undecided undecided) {
  public Plan {
    findings = List.copyOf(findings);
    ifNew = List.copyOf(ifNew);
  }

  /** Of a house without existing work, or of which nobody asks what it would be if that were new. */
  public Plan(HouseFigures figures, List<Finding> findings, boolean whole, Undecided undecided) {
    this(figures, findings, List.of(), whole, undecided);
  }

  House house() {
    return figures.house();
  }
}
