package wattle.rules;

import java.util.List;

/**
 * What a rule says where it is broken.
 *
 * @param compared figures that its requirements compare
 * @param places that a finding points at, the first of them as its own
 */
record Telling(List<Term> compared, Template headline, List<Rule.Place> places, List<Template> notes, List<RuleFix> fixes) {
  Telling {
    compared = List.copyOf(compared);
    places = List.copyOf(places);
    notes = List.copyOf(notes);
    fixes = List.copyOf(fixes);
  }
}
