package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;

/** A long table cut to what a page can bear; it says what is left out and how to see it. */
final class Cut {
  private Cut() {}

  /**
   * @param most rows that stay; sums beneath them go with what they sum up
   * @param command that prints all rows
   */
  static Sheet of(Sheet sheet, int most, String command) {
    if (sheet.rows().size() <= most) {
      return sheet;
    }
    List<Row> rows = sheet.rows().subList(0, most);
    List<String> notes = new ArrayList<>();
    notes.add("The first " + most + " of " + sheet.rows().size() + " rows; " + command
        + " prints all of them.");
    notes.addAll(sheet.notes());
    return new Sheet(sheet.name(), sheet.title(), sheet.columns(), rows, notes);
  }
}
