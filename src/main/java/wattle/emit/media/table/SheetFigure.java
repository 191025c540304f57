package wattle.emit.media.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * A figure of a sheet under the name by which it can be asked for.
 *
 * @param name such as {@code voltage of kitchen.c1.upper at full load}; figures of like rows may share one
 * @param subject what its row is about
 * @param sheet name of the sheet
 * @param column key of the column
 * @param shown the figure with its unit, as the sheet shows it
 * @param derivation absent where the sheet leaves it out for its length
 */
public record SheetFigure(
    String name, String subject, String sheet, String column, String shown, Optional<Derivation> derivation) {
  /** All figures of sheets that have names, sheet by sheet and row by row. */
  public static List<SheetFigure> of(Collection<Sheet> sheets) {
    List<SheetFigure> figures = new ArrayList<>();
    for (Sheet sheet : sheets) {
      for (Row row : sheet.rows()) {
        for (int c = 0; c < row.cells().size(); c++) {
          Column column = sheet.columns().get(c);
          String name = column.nameIn(row);
          if (!name.isEmpty() && row.cells().get(c) instanceof Cell.Figure figure) {
            figures.add(
                new SheetFigure(name, row.subject(), sheet.name(), column.key(), shown(figure, column), figure.derivation()));
          }
        }
      }
    }
    return figures;
  }

  // Where the column has no one unit, the figure brings its own.
  private static String shown(Cell.Figure figure, Column column) {
    return column.unit().isEmpty()
        ? figure.derivation().map(d -> d.value().text()).orElseGet(() -> Sheet.shown(figure, column))
        : Sheet.shown(figure, column) + " " + column.unit();
  }
}
