package wattle.rules;

import java.util.List;
import wattle.figures.HouseFigures;

/**
 * How far the rules of a plan's packs could be told.
 *
 * @param rules how many there are
 * @param told at how many things one of them was told, held or broken
 * @param open at how many things one of them could not be told, since the plan does not say what it asks for
 * @param inDoubt at how many things one of them could not be told, since a mistake in the plan leaves it in doubt
 * @param unstated what the plan does not say, by fact; most places first
 */
public record Coverage(int rules, int told, int open, int inDoubt, List<Unstated> unstated) {
  public Coverage {
    unstated = List.copyOf(unstated);
  }

  /** What rules take as usual where the plan does not state it, and what they would ask for. */
  static List<Unstated> presumed(HouseFigures figures, List<Rule> rules, boolean asNew) {
    HouseIndex index = new HouseIndex(figures);
    RuleRunner runner = new RuleRunner(index, asNew, Pace.WHOLE);
    rules.forEach(rule -> runner.presume(rule, index.all(rule.kind())));
    return runner.tally().unstated(figures.house().units());
  }
}
