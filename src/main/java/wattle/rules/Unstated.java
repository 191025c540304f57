package wattle.rules;

import java.util.List;

/**
 * A fact that rules asked for and that the plan does not state.
 *
 * @param kind of the things that lack it
 * @param fact its name, as rules have it
 * @param meaning of the fact, in words
 * @param how the words by which a plan states it
 * @param places names of the things that lack it, in the order of the alphabet
 * @param rules names of the rules that could not be told for want of it
 */
public record Unstated(Kind kind, String fact, String meaning, String how, List<String> places, List<String> rules) {
  public Unstated {
    places = List.copyOf(places);
    rules = List.copyOf(rules);
  }
}
