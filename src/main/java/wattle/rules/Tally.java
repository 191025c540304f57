package wattle.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import wattle.quantity.UnitSystem;

/**
 * Counts where rules were told, and gathers what they lacked where not. What lacks something is named when somebody asks, since there
 * may be thousands, and an editor asks of few.
 */
final class Tally {
  /** Where a fact is lacking, and for which rules. */
  private record Lack(Map<Object, Boolean> things, Set<String> rules) {}

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
      Lack lack = at(property);
      things.forEach(t -> lack.things.put(t, true));
      lack.rules.add(rule.name());
    });
  }

  private Lack at(Property property) {
    return lacks.computeIfAbsent(property, p -> new Lack(new IdentityHashMap<>(), new HashSet<>()));
  }

  /** Adds what another has counted. */
  void add(Tally other) {
    told += other.told;
    open += other.open;
    inDoubt += other.inDoubt;
    other.lacks.forEach((property, lack) -> {
      at(property).things.putAll(lack.things);
      at(property).rules.addAll(lack.rules);
    });
  }

  /** @param units in which it is told how a plan would state what is lacking */
  Coverage coverage(int rules, UnitSystem units) {
    return new Coverage(rules, told, open, inDoubt, unstated(units));
  }

  /** What was lacking, by fact; most places first. */
  List<Unstated> unstated(UnitSystem units) {
    List<Unstated> unstated = new ArrayList<>();
    lacks.forEach((property, lack) -> unstated.add(unstated(property, lack, units)));
    unstated.sort(Comparator.comparing((Unstated u) -> -u.places().size()).thenComparing(Unstated::how).thenComparing(Unstated::kind)
        .thenComparing(Unstated::fact));
    return unstated;
  }

  private static Unstated unstated(Property property, Lack lack, UnitSystem units) {
    Set<String> places = new TreeSet<>();
    lack.things.keySet().forEach(t -> places.add(Facts.calledIn(t)));
    Kind kind = Kind.ofThing(lack.things.keySet().iterator().next());
    return new Unstated(kind, property.name(), property.meaning(), property.stated().orElseThrow().in(units), List.copyOf(places),
        List.copyOf(new TreeSet<>(lack.rules)));
  }
}
