package wattle.emit.view.panelfront;

import wattle.emit.media.file.Mark;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.text.Escape;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.loads.ConnectedLoads;
import wattle.model.House;

/** The schedules of the panels as a graph in the DOT language, one table a panel, for those who draw with it. */
public final class PanelGraph {
  private PanelGraph() {}

  public static String dot(House house, ConnectedLoads loads) {
    StringBuilder out = new StringBuilder("digraph {\n  node [shape=plain, fontname=\"DejaVu Sans\", fontsize=9];\n");
    int number = 0;
    for (Sheet sheet : PanelSchedule.of(house, loads)) {
      out.append("  n").append(number++).append(" [label=<<TABLE BORDER=\"1\" CELLBORDER=\"1\" CELLSPACING=\"0\">");
      out.append("<TR><TD COLSPAN=\"5\">").append(Escape.xml(sheet.title())).append("</TD></TR>");
      for (Row row : sheet.rows()) {
        out.append("<TR>");
        for (int c = 1; c <= 6; c++) {
          if (c != 5) {
            String text = row.cells().get(c) instanceof Cell.Words words ? words.text() : "";
            out.append("<TD ALIGN=\"LEFT\">").append(text.isEmpty() ? " " : Escape.xml(text)).append("</TD>");
          }
        }
        out.append("</TR>");
      }
      out.append("</TABLE>>];\n");
    }
    return Mark.dot(out.append("}\n").toString());
  }
}
