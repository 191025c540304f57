package wattle.emit.document.directory;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.House;
import wattle.model.Panel;

/** Directories as tables, slot by slot, for what is read and searched rather than hung up. */
public final class DirectorySheets {
  private static final List<Column> COLUMNS = List.of(
      Column.words("slot", "slot"),
      Column.words("what", "what it feeds"),
      Column.words("rooms", "rooms"),
      Column.words("breaker", "breaker"),
      Column.words("notes", "caution"));

  private DirectorySheets() {}

  /** One table a panel, in the order of the plan. */
  public static List<Sheet> of(House house) {
    return house.panels().values().stream().map(p -> of(house, p)).toList();
  }

  private static Sheet of(House house, Panel panel) {
    List<Row> rows = new ArrayList<>();
    for (PanelDirectory.Row row : PanelDirectory.of(house, panel).rows()) {
      row.left().forEach(line -> rows.add(row(line)));
      row.right().forEach(line -> rows.add(row(line)));
    }
    return new Sheet(
        "directory", "Directory of " + panel.title(), COLUMNS, rows,
        List.of(
            "Made from a plan, not from measurements. The inside of a panel stays live when its breakers are off. Prove dead with a "
                + "tester proved before and after."));
  }

  private static Row row(DirectoryLine line) {
    return Row.of(
        Cell.of(line.slots()), Cell.of(line.words()), Cell.of(String.join(", ", line.rooms())), Cell.of(line.breaker()),
        Cell.of(String.join("; ", line.notes())));
  }
}
