package wattle.emit.table;

import java.util.List;

/**
 * A row of a sheet.
 *
 * @param sum whether it sums up rows above it, which readers that add up a column must leave out
 */
public record Row(List<Cell> cells, boolean sum) {
  public Row {
    cells = List.copyOf(cells);
  }

  public static Row of(Cell... cells) {
    return new Row(List.of(cells), false);
  }

  public static Row sum(Cell... cells) {
    return new Row(List.of(cells), true);
  }
}
