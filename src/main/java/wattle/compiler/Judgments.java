package wattle.compiler;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Undecided;
import wattle.model.Doubt;
import wattle.model.Doubts;
import wattle.model.House;
import wattle.rules.Judgment;

/**
 * What the phases that judge a house have found.
 *
 * @param findings that bind it as it is, those that its plan silences marked
 * @param ifNew what rules would find besides if existing work were new
 * @param undecided what could not be looked for, or not decided, after mistakes in the plan
 * @param ruled what the rules alone have found; absent where a bug of ours ended them
 */
public record Judgments(List<Finding> findings, List<Finding> ifNew, Undecided undecided, Optional<Judgment> ruled) {
  public Judgments {
    findings = List.copyOf(findings);
    ifNew = List.copyOf(ifNew);
  }

  static Undecided undecided(House house, Set<Undecided.Question> questions) {
    Doubts doubts = house.doubts();
    if (doubts.isEmpty()) {
      return Undecided.NOTHING;
    }
    Set<String> whole = new HashSet<>(Set.of("silence-idle"));
    if (doubts.ofCurrents()) {
      whole.addAll(Compiler.COMPUTED);
      whole.addAll(Set.of("expectation-failed", "panel-overfull"));
    }
    boolean leftOut = doubts.has(Doubt.DEVICES) || doubts.has(Doubt.BRANCHES) || doubts.has(Doubt.ROOMS) || doubts.has(Doubt.PANELS)
        || doubts.has(Doubt.SERVICES) || doubts.has(Doubt.SLOTS);
    boolean anything = doubts.has(Doubt.SERVICES) && doubts.has(Doubt.PANELS) && doubts.has(Doubt.ROOMS) && doubts.has(Doubt.DWELLING);
    Set<String> named = doubts.names().getOrDefault(Doubt.BRANCHES, Set.of());
    return new Undecided(questions, whole, name -> anything || leftOut && (!has(house, name) || named.contains(name)));
  }

  private static boolean has(House house, String name) {
    return house.services().containsKey(name) || house.panels().containsKey(name) || house.branches().containsKey(name)
        || house.rooms().containsKey(name) || house.boxes().containsKey(name) || house.devices().containsKey(name)
        || house.panels().values().stream().flatMap(p -> p.breakers().stream()).anyMatch(b -> b.id().toString().equals(name));
  }
}
