package wattle.emit.media.table;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import wattle.derivation.DerivationUnits;
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

  /** The same table, and how its figures were come by. Of two columns that are alike but for the unit, one is left. */
  public static Sheet shown(Sheet sheet, UnitSystem units) {
    if (units == UnitSystem.METRIC) {
      return sheet;
    }
    DerivationUnits steps = new DerivationUnits(units);
    List<Column> columns = sheet.columns();
    List<Integer> kept = IntStream.range(0, columns.size()).filter(c -> !isTwin(columns.get(c), columns, units)).boxed().toList();
    List<Row> rows = sheet.rows().stream()
        .map(r -> new Row(kept.stream().map(c -> shown(r.cells().get(c), columns.get(c), units, steps)).toList(), r.sum(), r.subject()))
        .toList();
    return new Sheet(sheet.name(), sheet.title(), kept.stream().map(c -> shown(columns.get(c), units)).toList(), rows, sheet.notes());
  }

  /** Whether another column has the same figures, and will be shown in the unit of this one. */
  private static boolean isTwin(Column column, List<Column> columns, UnitSystem units) {
    return columns.stream()
        .anyMatch(c -> c.title().equals(column.title())
            && converted(c, units).filter(u -> units.shown(u).symbol().equals(column.unit())).isPresent());
  }

  private static Optional<Unit> converted(Column column, UnitSystem units) {
    return Optional.of(column.unit()).filter(s -> !s.isEmpty()).flatMap(Units::find).filter(u -> !units.shown(u).equals(u));
  }

  private static Column shown(Column column, UnitSystem units) {
    String unit = converted(column, units).map(u -> units.shown(u).symbol()).orElse(column.unit());
    return column.in(unit);
  }

  private static Cell shown(Cell cell, Column column, UnitSystem units, DerivationUnits steps) {
    if (!(cell instanceof Cell.Figure figure)) {
      return cell;
    }
    double value = converted(column, units).map(u -> units.shown(Quantity.of(figure.value(), u)).value()).orElse(figure.value());
    return new Cell.Figure(value, figure.derivation().map(steps::shown));
  }
}
