package wattle.conductors;

import java.util.List;
import java.util.Optional;
import wattle.library.Cell;
import wattle.library.Table;
import wattle.quantity.WireSize;

/** Sizes of a table that have a figure in a column. */
final class Sizes {
  private Sizes() {}

  static List<WireSize> listed(Table table, String column, String figure) {
    Optional<Integer> sizes = table.indexOf(column);
    Optional<Integer> figures = table.indexOf(figure);
    if (sizes.isEmpty() || figures.isEmpty()) {
      return List.of();
    }
    return table.rows().stream()
        .filter(row -> !(row.cells().get(figures.get()) instanceof Cell.None))
        .map(row -> row.cells().get(sizes.get()))
        .filter(Cell.Size.class::isInstance)
        .map(cell -> ((Cell.Size) cell).size())
        .sorted()
        .toList();
  }
}
