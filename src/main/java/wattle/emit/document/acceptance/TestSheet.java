package wattle.emit.document.acceptance;

import java.util.ArrayList;
import java.util.List;
import wattle.acceptance.Measurement;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;
import wattle.words.Caution;

/** The measurements as a table; its CSV is what is filled in and read back. */
public final class TestSheet {
  private static final List<Column> COLUMNS = List.of(
      Column.words("test", "test"),
      Column.words("breaker", "breaker"),
      Column.words("at", "at"),
      Column.words("measure", "measure"),
      Column.words("between", "between"),
      Column.words("expected", "expected"),
      Column.words("unit", "unit"),
      Column.figures("least", "least", "", 2),
      Column.figures("most", "most", "", 2),
      Column.words("reading", "reading"),
      Column.words("note", "note"));

  private TestSheet() {}

  /** @param units of the plan, for the temperature at which loops are expected */
  public static Sheet of(List<Measurement> measurements, UnitSystem units) {
    List<Row> rows = new ArrayList<>();
    for (Measurement m : measurements) {
      rows.add(
          Row.of(
              Cell.of(m.key()), Cell.of(m.breakers()), Cell.of(m.at()), Cell.of(m.kind().word()), Cell.of(m.between()),
              Cell.of(m.expected()), Cell.of(m.unit()), m.least().map(Cell::of).orElse(Cell.BLANK),
              m.most().map(Cell::of).orElse(Cell.BLANK),
              Cell.BLANK, Cell.BLANK));
    }
    return new Sheet(
        "tests", "Measurements after the work", COLUMNS, rows,
        List.of(
            "Continuity, bonds, insulation and torque are done dead: open, lock and prove dead first. Voltage, rotation, polarity and trips"
                + " are measured live, by a qualified person.",
            "Loops are expected at " + units.known(Quantity.of(20, Units.CELSIUS))
                + "; voltages with nothing drawing, from the solved network. " + Caution.SHORT));
  }
}
