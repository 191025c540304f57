package wattle.compare;

import java.util.List;
import java.util.Set;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.model.House;

/**
 * One of two revisions that are compared.
 *
 * @param figures of its house
 * @param whole whether nothing that the plan says was left out; the figures of a house in pieces would mislead
 * @param unasked names of rules that were not asked of it, since its structure is wrong: that they found nothing says nothing
 */
public record Plan(HouseFigures figures, List<Finding> findings, boolean whole, Set<String> unasked) {
  public Plan {
    findings = List.copyOf(findings);
    unasked = Set.copyOf(unasked);
  }

  House house() {
    return figures.house();
  }
}
