package wattle.begin;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A column of a panel schedule, by the headings that people give it. */
enum ScheduleColumn {
  SLOT("slot", "slots", "circuit", "ckt", "cct", "cir", "position", "pos", "space", "number", "no", "breakerno", "breakernumber"), //
  RATING("rating", "amps", "amp", "a", "amperes", "amperage", "trip", "breaker", "breakersize", "size", "ocpd", "breakerrating", "fuse"), //
  POLES("poles", "pole", "p", "noofpoles", "numberofpoles"), //
  DESCRIPTION(
      "description", "desc", "load", "loads", "loaddescription", "serves", "feeds", "label", "name", "use", "served", "loadserved"), //
  PROTECTION("protection", "type", "breakertype", "afci", "gfci", "afcigfci", "gfciafci");

  private final List<String> headings;

  ScheduleColumn(String... headings) {
    this.headings = List.of(headings);
  }

  /** The column with a heading such as {@code Ckt #} or {@code Breaker (A)}; absent for one that a plan has no use for. */
  static Optional<ScheduleColumn> of(String heading) {
    String letters = heading.toLowerCase(Locale.ROOT).replaceAll("\\((a|amps?|amperes?)\\)", "").replaceAll("[^a-z]", "");
    String bare = letters.replaceFirst("^(circuit|ckt)(slot|no|number|description|load|breaker|poles?|rating|amps)$", "$2");
    boolean number = heading.strip().equals("#");
    return number ? Optional.of(SLOT) : Arrays.stream(values()).filter(c -> c.headings.contains(bare)).findFirst();
  }
}
