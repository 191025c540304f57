package wattle.emit.media.table;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import wattle.emit.media.text.Json;
import wattle.emit.media.unfolded.StepsJson;

/** Sheets as JSON, by {@code schema/tables.schema.json}; every derived figure with the steps that led to it. */
public final class SheetJson {
  /** Version of the format; it grows when a reader would have to change. */
  public static final int VERSION = 2;

  private SheetJson() {}

  /** The whole document. */
  public static String render(List<Sheet> sheets) {
    ObjectNode root = Json.document("wattle-tables", VERSION);
    ArrayNode array = root.putArray("tables");
    StepsJson steps = new StepsJson(root.putArray("steps"));
    sheets.forEach(sheet -> sheet(array.addObject(), sheet, steps));
    return Json.text(root);
  }

  private static void sheet(ObjectNode node, Sheet sheet, StepsJson steps) {
    node.put("name", sheet.name()).put("title", sheet.title());
    ArrayNode columns = node.putArray("columns");
    for (Column column : sheet.columns()) {
      ObjectNode each = columns.addObject().put("key", column.key()).put("title", column.title());
      if (!column.unit().isEmpty()) {
        each.put("unit", column.unit());
      }
    }
    ArrayNode rows = node.putArray("rows");
    for (Row row : sheet.rows()) {
      row(rows.addObject(), sheet, row, steps);
    }
    sheet.notes().forEach(node.putArray("notes")::add);
  }

  private static void row(ObjectNode node, Sheet sheet, Row row, StepsJson steps) {
    if (row.sum()) {
      node.put("sum", true);
    }
    ObjectNode values = node.putObject("values");
    ObjectNode derivations = Json.object();
    for (int c = 0; c < row.cells().size(); c++) {
      String key = sheet.columns().get(c).key();
      Cell cell = row.cells().get(c);
      if (cell instanceof Cell.Words words) {
        values.put(key, words.text());
      } else if (cell instanceof Cell.Figure figure) {
        values.put(key, figure.value());
        figure.derivation().ifPresent(d -> derivations.put(key, steps.place(d)));
      } else if (cell instanceof Cell.Blank) {
        values.putNull(key);
      } else {
        throw new AssertionError(cell);
      }
    }
    if (!derivations.isEmpty()) {
      node.set("derivations", derivations);
    }
  }
}
