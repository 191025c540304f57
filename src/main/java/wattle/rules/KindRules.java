package wattle.rules;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rules of one kind of thing, and which of them may be about a thing of some sort. For one thread. */
final class KindRules {
  private final List<Rule> rules;
  private final Map<Object, List<Rule>> bySort = new IdentityHashMap<>();

  /** @param rules all of one kind */
  KindRules(List<Rule> rules) {
    this.rules = List.copyOf(rules);
  }

  /** How many values one of them names at most. */
  int places() {
    return rules.stream().mapToInt(Rule::size).max().orElse(0);
  }

  /** Those that may be about a thing: all but the ones that its sort rules out. What is in doubt rules nothing out. */
  List<Rule> about(Facts facts, Object thing) {
    Optional<Object> sort = facts.doubts() ? Optional.empty() : Kind.sortOf(thing);
    if (sort.isEmpty()) {
      return rules;
    }
    List<Rule> known = bySort.get(sort.get());
    return known != null ? known : first(facts, thing, sort.get());
  }

  private List<Rule> first(Facts facts, Object thing, Object sort) {
    Object[] named = {thing};
    List<Rule> about = new ArrayList<>();
    for (Rule rule : rules) {
      if (rule.sort().isEmpty() || !Boolean.FALSE.equals(rule.sort().get().of(facts, named))) {
        about.add(rule);
      }
    }
    bySort.put(sort, about);
    return about;
  }
}
