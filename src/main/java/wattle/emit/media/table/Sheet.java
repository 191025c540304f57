package wattle.emit.media.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/**
 * A table, ready to be written in any format.
 *
 * @param name for programs, such as {@code loads}
 * @param title for people
 * @param notes sentences to be printed beneath: what was assumed, cautions
 */
public record Sheet(String name, String title, List<Column> columns, List<Row> rows, List<String> notes) {
  public Sheet {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
    for (Row row : rows) {
      if (row.cells().size() != columns.size()) {
        throw new IllegalArgumentException("sheet " + name + " has a row of " + row.cells().size() + " cells");
      }
    }
  }

  /** A cell as people read it: figures to the digits of their column. */
  static String shown(Cell cell, Column column) {
    if (cell instanceof Cell.Words words) {
      return words.text();
    }
    if (cell instanceof Cell.Figure figure) {
      return BigDecimal.valueOf(figure.value()).setScale(Math.max(0, column.decimals()), RoundingMode.HALF_UP).toPlainString();
    }
    if (cell instanceof Cell.Blank) {
      return "";
    }
    throw new AssertionError(cell);
  }
}
