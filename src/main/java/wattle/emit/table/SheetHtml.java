package wattle.emit.table;

import wattle.emit.text.Escape;
import wattle.emit.unfolded.Unfolded;

/** A sheet as a table of HTML; a derived figure opens to how it was come by. */
public final class SheetHtml {
  private SheetHtml() {}

  /** The table with its caption and notes, for the body of a page. */
  public static String render(Sheet sheet) {
    StringBuilder out = new StringBuilder("<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"");
    out.append(Escape.xml(sheet.title())).append("\"><table><caption>").append(Escape.xml(sheet.title()));
    out.append("</caption>\n<thead><tr>");
    for (Column column : sheet.columns()) {
      out.append("<th scope=\"col\"").append(column.isFigures() ? " class=\"figure\">" : ">");
      out.append(Escape.xml(column.heading())).append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (Row row : sheet.rows()) {
      out.append(row.sum() ? "<tr class=\"sum\">" : "<tr>");
      for (int c = 0; c < row.cells().size(); c++) {
        cell(out, sheet.columns().get(c), row.cells().get(c));
      }
      out.append("</tr>\n");
    }
    out.append("</tbody></table></div>\n");
    for (String note : sheet.notes()) {
      out.append("<p class=\"note\">").append(Escape.xml(note)).append("</p>\n");
    }
    return out.toString();
  }

  private static void cell(StringBuilder out, Column column, Cell cell) {
    String shown = Escape.xml(Sheet.shown(cell, column));
    out.append(column.isFigures() ? "<td class=\"figure\">" : "<td>");
    if (cell instanceof Cell.Figure figure && figure.derivation().isPresent()) {
      out.append("<details><summary>").append(shown).append("</summary>");
      out.append(Unfolded.html(figure.derivation().get())).append("</details>");
    } else {
      out.append(shown);
    }
    out.append("</td>");
  }
}
