package wattle.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.quantity.UnitSystem;

/** Counts where rules were told, and gathers what they lacked where not. */
final class Tally {
  /** Where a fact is lacking, and for which rules. */
  private record Lack(Kind kind, SortedSet<String> places, SortedSet<String> rules) {}

  private final Map<Property, Lack> lacks = new LinkedHashMap<>();
  private int told;
  private int open;
  private int inDoubt;

  void told() {
    told++;
  }

  /** A rule that could not be told, be it for a doubt; one that lacks nothing that a plan could state is not counted. */
  void open(Rule rule, Map<Property, Set<Object>> lacking, boolean doubtful) {
    if (doubtful) {
      inDoubt++;
      return;
    }
    open += lacking.isEmpty() ? 0 : 1;
    lacks(rule, lacking);
  }

  /** What a rule asks for and the plan does not state. */
  void lacks(Rule rule, Map<Property, Set<Object>> lacking) {
    lacking.forEach((property, things) -> {
      for (Object thing : things) {
        Lack lack = lacks.computeIfAbsent(property, p -> new Lack(Kind.ofThing(thing), new TreeSet<>(), new TreeSet<>()));
        lack.places.add(Facts.calledIn(thing));
        lack.rules.add(rule.name());
      }
    });
  }

  /** @param units in which it is told how a plan would state what is lacking */
  Coverage coverage(int rules, UnitSystem units) {
    return new Coverage(rules, told, open, inDoubt, unstated(units));
  }

  /** What was lacking, by fact; most places first. */
  List<Unstated> unstated(UnitSystem units) {
    List<Unstated> unstated = new ArrayList<>();
    lacks.forEach((property, lack) -> unstated.add(
        new Unstated(lack.kind, property.name(), property.meaning(), property.stated().orElseThrow().in(units), List.copyOf(lack.places),
            List.copyOf(lack.rules))));
    unstated.sort(Comparator.comparing((Unstated u) -> -u.places().size()).thenComparing(Unstated::how));
    return unstated;
  }
}
