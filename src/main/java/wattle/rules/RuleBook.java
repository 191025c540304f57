package wattle.rules;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.library.Library;
import wattle.model.House;

/** The entry of the phase: all rules of a library over a house. */
public final class RuleBook {
  /** Devices from which on what several rules share is worth being worked out more than once. */
  private static final int WORTH_SHARING = 1000;

  private static final int MOST_PARTS = 8;

  private final Library library;
  private final Checked<List<Rule>> rules;

  private RuleBook(Library library, Checked<List<Rule>> rules) {
    this.library = library;
    this.rules = rules;
  }

  /** Checks the rules of a library. */
  public static RuleBook of(Library library) {
    return new RuleBook(library, RuleLoader.load(library));
  }

  /**
   * Findings of the rules, and mistakes in the rules themselves; nothing is silenced here.
   *
   * @param house bound with the library of these rules
   * @param sound whether the house was bound without errors; rules are not asked about one that was not, since they would
   *     find the same fault again in other words
   */
  public List<Finding> judge(House house, boolean sound) {
    List<Finding> findings = new ArrayList<>(rules.findings());
    if (!sound) {
      return findings;
    }
    findings.addAll(run(house, library, rules.value()));
    return findings;
  }

  /** Every rule by itself, in a big house on several processors; what they find is in the order of the rules. */
  static List<Finding> run(House house, Library library, List<Rule> rules) {
    int parts = house.devices().size() < WORTH_SHARING ? 1 : Math.min(MOST_PARTS, ForkJoinPool.getCommonPoolParallelism() + 1);
    List<List<Finding>> found = new ArrayList<>(Collections.nCopies(rules.size(), List.of()));
    IntStream.range(0, parts).parallel().forEach(part -> {
      RuleRunner runner = new RuleRunner(house, library);
      for (int rule = part; rule < rules.size(); rule += parts) {
        found.set(rule, runner.run(rules.get(rule)));
      }
    });
    return found.stream().flatMap(List::stream).toList();
  }
}
