package wattle.emit.sheet.figures;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import wattle.emit.media.table.SheetFigure;
import wattle.emit.media.text.Json;
import wattle.emit.media.unfolded.StepsJson;

/** Figures as JSON, by {@code schema/figures.schema.json}. */
public final class FiguresJson {
  /** Version of the format; it grows when a reader would have to change. */
  public static final int VERSION = 2;

  private FiguresJson() {}

  /** @param unfolded whether each figure comes with the steps that led to it */
  public static String render(List<SheetFigure> figures, boolean unfolded) {
    ObjectNode root = Json.document("wattle-figures", VERSION);
    ArrayNode array = root.putArray("figures");
    StepsJson steps = new StepsJson(root.putArray("steps"));
    for (SheetFigure figure : figures) {
      ObjectNode node = array.addObject();
      node.put("name", figure.name()).put("table", figure.sheet()).put("column", figure.column()).put("shown", figure.shown());
      if (unfolded) {
        figure.derivation().ifPresent(d -> node.put("derivation", steps.place(d)));
      }
    }
    return Json.text(root);
  }
}
