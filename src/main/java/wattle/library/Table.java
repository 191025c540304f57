package wattle.library;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.finding.Citation;
import wattle.quantity.Unit;

/**
 * A published table as the library holds it.
 *
 * @param name by which computations and rules ask for it, such as {@code ampacity}
 * @param label what it is, for readers
 * @param columns in order
 * @param rows in the order written, each with one cell for every column
 * @param citations where it was published
 */
public record Table(String name, String label, List<Column> columns, List<Row> rows, List<Citation> citations) {
  /**
   * @param unit of its figures; absent for plain numbers, words and sizes
   * @param sizes whether its cells are sizes of wire
   */
  public record Column(String name, Optional<Unit> unit, boolean sizes) {}

  /** @param fromMemory whether the row was written from memory and is to be verified */
  public record Row(List<Cell> cells, boolean fromMemory) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    citations = List.copyOf(citations);
    for (Row row : rows) {
      if (row.cells.size() != columns.size()) {
        throw new IllegalArgumentException("table " + name + " has a row of " + row.cells.size() + " cells");
      }
    }
  }

  /** Place of a column, from 0; empty where the table has none of that name. */
  public Optional<Integer> indexOf(String column) {
    for (int i = 0; i < columns.size(); i++) {
      if (columns.get(i).name.equals(column)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** The row that fits all keys; of several the nearest, and of equally near ones the first. */
  public Optional<Row> row(Key... keys) {
    int[] places = new int[keys.length];
    for (int k = 0; k < keys.length; k++) {
      Optional<Integer> place = indexOf(keys[k].column());
      if (place.isEmpty()) {
        return Optional.empty();
      }
      places[k] = place.get();
    }
    Row best = null;
    double least = Double.POSITIVE_INFINITY;
    for (Row row : rows) {
      double distance = 0;
      for (int k = 0; k < keys.length; k++) {
        distance += keys[k].distance(row.cells.get(places[k]));
      }
      if (distance < least) {
        least = distance;
        best = row;
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * Looks a figure, size or word up.
   *
   * @param what the name of the result in derivations
   * @param symbol its symbol there
   * @param column where it stands
   * @return empty where no row fits, the table has no such column, or the cell is empty
   */
  public Optional<Derivation> find(String what, String symbol, String column, Key... keys) {
    Optional<Integer> index = indexOf(column);
    Optional<Row> row = row(keys);
    if (index.isEmpty() || row.isEmpty() || row.get().cells.get(index.get()) instanceof Cell.None) {
      return Optional.empty();
    }
    return Optional.of(derive(row.get(), index.get(), what, symbol, keys));
  }

  private Derivation derive(Row row, int column, String what, String symbol, Key... keys) {
    List<Derivation> sought = new ArrayList<>();
    StringBuilder where = new StringBuilder("table ").append(name);
    for (Key key : keys) {
      sought.add(key.sought());
      where.append(", ").append(key.column()).append(' ').append(row.cells.get(indexOf(key.column()).orElseThrow()).text());
    }
    where.append(", column ").append(columns.get(column).name);
    return Derivation.lookedUp(what, symbol, row.cells.get(column).value(), where.toString(), sought, sourcesOf(row));
  }

  /** The sources of a row: those of the table, marked for one written from memory. */
  public List<Citation> sourcesOf(Row row) {
    return row.fromMemory
        ? citations.stream().map(c -> new Citation(c.work(), c.place(), true)).toList()
        : citations;
  }
}
