package wattle.rules;

import java.util.List;
import wattle.figures.HouseFigures;

/**
 * How far the rules of a plan's packs could be told.
 *
 * @param rules how many there are; 0 where none was tried, since the plan has errors of structure
 * @param told at how many things one of them was told, held or broken
 * @param open at how many things one of them could not be told, since the plan does not say what it asks for
 * @param unstated what the plan does not say, by fact; most places first
 */
public record Coverage(int rules, int told, int open, List<Unstated> unstated) {
  /** No rule was tried. */
  static final Coverage NONE = new Coverage(0, 0, 0, List.of());

  public Coverage {
    unstated = List.copyOf(unstated);
  }

  static Coverage of(HouseFigures figures, List<Rule> rules) {
    HouseIndex index = new HouseIndex(figures);
    RuleRunner runner = new RuleRunner(index, false);
    Tally tally = new Tally();
    rules.forEach(rule -> runner.cover(rule, index.all(rule.kind()), tally));
    return tally.coverage(rules.size(), figures.house().units());
  }
}
