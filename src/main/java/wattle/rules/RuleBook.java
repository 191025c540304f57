package wattle.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.library.Library;
import wattle.model.House;

/** The entry of the phase: all rules of a library over a house. */
public final class RuleBook {
  private RuleBook() {}

  /**
   * Findings of the rules, silenced where the plan says so, and mistakes in the rules themselves.
   *
   * @param sound whether the house was bound without errors; rules are not asked about one that was not, since they would
   *     find the same fault again in other words
   */
  public static List<Finding> judge(House house, Library library, boolean sound) {
    Checked<List<Rule>> rules = RuleLoader.load(library);
    List<Finding> findings = new ArrayList<>(rules.findings());
    if (!sound) {
      return findings;
    }
    Set<String> names = rules.value().stream().map(Rule::name).collect(Collectors.toSet());
    findings.addAll(Silences.apply(new RuleRunner(house, library).run(rules.value()), house.silences(), names));
    return findings;
  }
}
