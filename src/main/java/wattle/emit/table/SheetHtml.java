package wattle.emit.table;

import wattle.emit.text.Escape;
import wattle.emit.unfolded.Unfolded;

/** A sheet as a table of HTML; a derived figure opens to how it was come by. */
public final class SheetHtml {
  private SheetHtml() {}

  /** The table with its caption and notes, for the body of a page. */
  public static String render(Sheet sheet) {
    String scrolled = "<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" + Escape.xml(sheet.title()) + "\">";
    return scrolled + table(sheet, true) + "</div>\n" + notes(sheet);
  }

  /** The same for paper, where nothing opens or scrolls. */
  public static String plain(Sheet sheet) {
    return table(sheet, false) + notes(sheet);
  }

  private static String table(Sheet sheet, boolean opens) {
    StringBuilder out = new StringBuilder("<table><caption>").append(Escape.xml(sheet.title()));
    out.append("</caption>\n<thead><tr>");
    for (Column column : sheet.columns()) {
      out.append("<th scope=\"col\"").append(column.isFigures() ? " class=\"figure\">" : ">");
      out.append(Escape.xml(column.heading())).append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (Row row : sheet.rows()) {
      out.append(row.sum() ? "<tr class=\"sum\">" : "<tr>");
      for (int c = 0; c < row.cells().size(); c++) {
        cell(out, sheet.columns().get(c), row.cells().get(c), opens);
      }
      out.append("</tr>\n");
    }
    return out.append("</tbody></table>\n").toString();
  }

  private static String notes(Sheet sheet) {
    StringBuilder out = new StringBuilder();
    for (String note : sheet.notes()) {
      out.append("<p class=\"note\">").append(Escape.xml(note)).append("</p>\n");
    }
    return out.toString();
  }

  private static void cell(StringBuilder out, Column column, Cell cell, boolean opens) {
    String shown = Escape.xml(Sheet.shown(cell, column));
    out.append(column.isFigures() ? "<td class=\"figure\">" : "<td>");
    if (opens && cell instanceof Cell.Figure figure && figure.derivation().isPresent()) {
      out.append("<details><summary>").append(shown).append("</summary>");
      out.append(Unfolded.html(figure.derivation().get())).append("</details>");
    } else {
      out.append(shown);
    }
    out.append("</td>");
  }
}
