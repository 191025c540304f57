package wattle.emit.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/**
 * Tables in the units of a plan, for people. Programs get them as they are: their keys and members name one unit, whatever
 * a plan is written in.
 */
public final class SheetUnits {
  private SheetUnits() {}

  /** The same tables in other units. */
  public static List<Sheet> shown(List<Sheet> sheets, UnitSystem units) {
    return sheets.stream().map(s -> shown(s, units)).toList();
  }

  /** The same table; a column stays where another has its figures in the other unit already. */
  public static Sheet shown(Sheet sheet, UnitSystem units) {
    List<Optional<Unit>> from = sheet.columns().stream().map(c -> converted(c, sheet, units)).toList();
    if (from.stream().allMatch(Optional::isEmpty)) {
      return sheet;
    }
    List<Column> columns = new ArrayList<>();
    for (int c = 0; c < from.size(); c++) {
      Column column = sheet.columns().get(c);
      String unit = from.get(c).map(u -> units.shown(u).symbol()).orElse(column.unit());
      columns.add(new Column(column.key(), column.title(), unit, column.decimals(), column.naming()));
    }
    List<Row> rows = sheet.rows().stream().map(r -> new Row(cells(r, from, units), r.sum(), r.subject())).toList();
    return new Sheet(sheet.name(), sheet.title(), columns, rows, sheet.notes());
  }

  private static Optional<Unit> converted(Column column, Sheet sheet, UnitSystem units) {
    return Optional.of(column.unit())
        .filter(symbol -> !symbol.isEmpty())
        .flatMap(Units::find)
        .filter(unit -> !units.shown(unit).equals(unit))
        .filter(unit -> sheet.columns().stream().noneMatch(c -> c.title().equals(column.title()) && c.unit().equals(units.shown(unit).symbol())));
  }

  private static List<Cell> cells(Row row, List<Optional<Unit>> from, UnitSystem units) {
    List<Cell> cells = new ArrayList<>();
    for (int c = 0; c < from.size(); c++) {
      Cell cell = row.cells().get(c);
      boolean changes = from.get(c).isPresent() && cell instanceof Cell.Figure;
      cells.add(changes ? in(units, (Cell.Figure) cell, from.get(c).get()) : cell);
    }
    return cells;
  }

  private static Cell in(UnitSystem units, Cell.Figure figure, Unit unit) {
    return new Cell.Figure(units.shown(Quantity.of(figure.value(), unit)).value(), figure.derivation());
  }
}
