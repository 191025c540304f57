package wattle.emit.document.report;

import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;

/** A table for paper, whose lines are shorter than those of a screen: it loses what it can without losing a figure that is looked for. */
final class PaperSheet {
  private PaperSheet() {}

  /** Without the columns that stand aside, and those in which no row has anything. */
  static Sheet narrow(Sheet sheet) {
    return columns(sheet, c -> !sheet.columns().get(c).aside() && !isBlank(sheet, c));
  }

  /**
   * Without the notes that stand beneath an earlier table of the part.
   *
   * @param said notes that were printed; those of the table are added
   */
  static Sheet saidOnce(Sheet sheet, Set<String> said) {
    return new Sheet(sheet.name(), sheet.title(), sheet.columns(), sheet.rows(), sheet.notes().stream().filter(said::add).toList());
  }

  private static boolean isBlank(Sheet sheet, int column) {
    return !sheet.rows().isEmpty() && sheet.rows().stream().allMatch(r -> r.cells().get(column).equals(Cell.BLANK));
  }

  private static Sheet columns(Sheet sheet, IntPredicate kept) {
    List<Integer> columns = IntStream.range(0, sheet.columns().size()).filter(kept).boxed().toList();
    List<Row> rows = sheet.rows().stream()
        .map(r -> new Row(columns.stream().map(r.cells()::get).toList(), r.sum(), r.subject())).toList();
    return new Sheet(sheet.name(), sheet.title(), columns.stream().map(sheet.columns()::get).toList(), rows, sheet.notes());
  }
}
