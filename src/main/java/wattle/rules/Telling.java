package wattle.rules;

import java.util.List;

/**
 * What a rule says where it is broken.
 *
 * @param places that a finding points at, the first of them as its own
 */
record Telling(Template headline, List<Rule.Place> places, List<Template> notes, List<RuleFix> fixes) {
  Telling {
    places = List.copyOf(places);
    notes = List.copyOf(notes);
    fixes = List.copyOf(fixes);
  }
}
