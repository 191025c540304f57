package wattle.emit.media.table;

import java.util.List;

/**
 * A row of a sheet.
 *
 * @param sum whether it sums up rows above it, which readers that add up a column must leave out
 * @param subject what the row is about, in the names of its figures; empty where they have none
 */
public record Row(List<Cell> cells, boolean sum, String subject) {
  public Row {
    cells = List.copyOf(cells);
  }

  public Row(List<Cell> cells, boolean sum) {
    this(cells, sum, "");
  }

  public static Row of(Cell... cells) {
    return new Row(List.of(cells), false);
  }

  public static Row sum(Cell... cells) {
    return new Row(List.of(cells), true);
  }

  /** The same, as being about a thing. */
  public Row about(String thing) {
    return new Row(cells, sum, thing);
  }
}
