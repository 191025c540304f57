package wattle.compiler;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wattle.finding.Severity;
import wattle.rules.Rule;
import wattle.rules.RuleLoader;
import wattle.rules.RulePage;

/**
 * What is written of a kind of finding, for readers who see many of them listed by name.
 *
 * @param title one line
 * @param meaning one or two sentences: what goes wrong in the house
 * @param page all that {@code explain} prints of it
 * @param severity how grave it usually is; absent where it is now this, now that
 */
public record FindingWords(String title, String meaning, String page, Optional<Severity> severity) {

  /**
   * The words of all kinds of findings that are asked for.
   *
   * @param plans whose own rules count beside those of the packs
   */
  public static Map<String, FindingWords> of(Collection<String> names, List<Compilation> plans) {
    Map<String, FindingWords> words = new TreeMap<>();
    if (names.isEmpty()) {
      return words;
    }
    Map<String, String> structure = StructurePages.all();
    Map<String, Rule> rules = WrittenRules.all();
    for (String name : names) {
      if (rules.containsKey(name)) {
        words.put(name, of(rules.get(name)));
      } else if (structure.containsKey(name)) {
        String meaning = structure.get(name);
        words.put(name, new FindingWords(firstSentence(meaning), meaning, StructurePages.of(name).orElse(meaning), Optional.empty()));
      }
    }
    plans.forEach(p -> words.putAll(own(names, p)));
    return words;
  }

  /** The words of those that are asked for and are rules of the plan's own files. */
  public static Map<String, FindingWords> own(Collection<String> names, Compilation plan) {
    Map<String, FindingWords> words = new TreeMap<>();
    if (plan.ownRules().stream().anyMatch(names::contains)) {
      RuleLoader.load(plan.library()).value().stream().filter(r -> plan.ownRules().contains(r.name()) && names.contains(r.name()))
          .forEach(r -> words.put(r.name(), of(r)));
    }
    return words;
  }

  private static FindingWords of(Rule rule) {
    return new FindingWords(rule.title(), rule.reason().isEmpty() ? rule.title() : rule.reason(), RulePage.text(rule),
        Optional.of(rule.severity()));
  }

  private static String firstSentence(String text) {
    int end = text.indexOf(". ");
    return end < 0 ? text : text.substring(0, end + 1);
  }
}
