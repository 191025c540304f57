package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Expectation;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.trials.Judged;

/** What a plan expects beside what was found. */
public final class ExpectationSheets {
  private ExpectationSheets() {}

  public static Sheet of(List<Judged> judged) {
    List<Row> rows = new ArrayList<>();
    for (Judged each : judged) {
      Expectation expected = each.expectation();
      rows.add(
          Row.of(
              Cell.of(expected.measure().replace('-', ' ') + expected.subject().map(s -> " of " + s).orElse("")),
              Cell.of(expected.trial().orElse("as stated")), Cell.of(bound(expected)), found(each.found(), unit(each)),
              Cell.of(unit(each).symbol()), Cell.of(each.holds() ? "met" : each.found().isPresent() ? "not met" : "not measured")));
    }
    return new Sheet(
        "expectations", "Expectations of the plan",
        List.of(
            Column.words("measure", "what"), Column.words("trial", "in"), Column.words("expected", "expected"),
            Column.figures("found", "found", "", 3), Column.words("unit", "unit"), Column.words("outcome", "outcome")),
        rows, List.of("Without a stated tolerance, a figure may differ by 1 %."));
  }

  /** That of the value; of protection that of the figure which was found. */
  private static Unit unit(Judged judged) {
    return judged.expectation().value().or(() -> judged.found().flatMap(Derivation::quantity)).map(Quantity::unit).orElse(Units.ONE);
  }

  private static String bound(Expectation expected) {
    String within = expected.within().map(w -> " within " + w).orElse("");
    return switch (expected.bound()) {
      case EQUAL -> value(expected) + within;
      case AT_MOST -> "at most " + value(expected) + within;
      case AT_LEAST -> "at least " + value(expected) + within;
      case TRIPS -> "trips";
      case HOLDS -> "holds";
    };
  }

  private static Quantity value(Expectation expected) {
    return expected.value().orElseThrow();
  }

  private static Cell found(Optional<Derivation> found, Unit unit) {
    Optional<Quantity> figure = found.flatMap(Derivation::quantity);
    return figure.map(q -> q.in(unit)).filter(Double::isFinite).map(v -> Cell.of(v, found.orElseThrow())).orElse(Cell.BLANK);
  }
}
