package wattle.emit.sheet.coverage;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.rules.Coverage;
import wattle.rules.Unstated;

/** What the plan does not state, so that rules could not be told: by fact, with how many things lack it and which. */
public final class CoverageSheet {
  /** Places that a row names; the rest it counts. */
  private static final int MOST_PLACES = 6;

  /** Where more than these lack a fact, nearly all of their kind do, and the first two say what kind that is. */
  private static final int MANY = 12;
  private static final int OF_MANY = 2;

  private static final List<Column> COLUMNS = List.of(
      Column.words("of", "of"),
      Column.words("fact", "what is not stated"),
      Column.figures("places", "places", "", 0),
      Column.words("where", "where"),
      Column.words("how", "how a plan states it"),
      Column.words("rules", "rules not checked").onTheSide());

  private CoverageSheet() {}

  public static Sheet of(Coverage coverage) {
    List<Row> rows = new ArrayList<>();
    for (Unstated fact : coverage.unstated()) {
      rows.add(
          Row.of(
              Cell.of(fact.kind().word()), Cell.of(fact.fact() + ": " + fact.meaning()), Cell.of(fact.places().size()),
              Cell.of(places(fact.places())),
              Cell.of(fact.how()), Cell.of(String.join(", ", fact.rules()))));
    }
    return new Sheet("unstated", "Not checked: missing from the plan", COLUMNS, rows, List.of(summary(coverage)));
  }

  /** What was tried, in words. */
  public static String summary(Coverage coverage) {
    if (coverage.rules() == 0) {
      return "No rule was checked: the plan names no code and no rule.";
    }
    String doubt = coverage.inDoubt() == 0 ? "" : " At " + coverage.inDoubt() + " more, an error in the plan leaves them in doubt.";
    return coverage.rules() + " rules were checked at " + coverage.told() + (coverage.told() == 1 ? " place" : " places") + ". At "
        + coverage.open()
        + (coverage.open() == 1 ? " place" : " places") + " they were not checked, because the plan does not give what they need." + doubt;
  }

  private static String places(List<String> places) {
    List<String> shown = places.subList(0, Math.min(places.size() > MANY ? OF_MANY : MOST_PLACES, places.size()));
    int more = places.size() - shown.size();
    return String.join(", ", shown) + (more > 0 ? " and " + more + " more" : "");
  }
}
