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
 * @param whole whether nothing that the plan says was left out; the figures of a house in pieces would mislead
 * @param undecided findings that a mistake in it leaves undecided: that they are not there says nothing
 */
public record Plan(HouseFigures figures, List<Finding> findings, boolean whole, Undecided undecided) {
  public Plan {
    findings = List.copyOf(findings);
  }

  House house() {
    return figures.house();
  }
}
