package wattle.emit.media.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import wattle.derivation.Derivation;
import wattle.emit.media.text.Escape;
import wattle.emit.media.unfolded.DerivationText;

/** A sheet as a table of HTML; a derived figure opens to how it was come by. */
public final class SheetHtml {
  /** Rows of a table that is not broken over pages. */
  private static final int FEW_ROWS = 8;

  /** Characters of a cell that is not broken over lines where the paper is wide enough, and that a long one needs at least. */
  private static final int SHORT = 20;

  private static final int LEAST = 14;

  /** Characters of a line of a table on paper. */
  private static final int LINE = 96;

  private SheetHtml() {}

  /** The table with its caption and notes, for the body of a page. */
  public static String render(Sheet sheet) {
    return render(sheet, DerivationText::html);
  }

  /**
   * The same.
   *
   * @param steps how a figure was come by, as markup that stands beneath it when it is opened
   */
  public static String render(Sheet sheet, Function<Derivation, String> steps) {
    String scrolled = "<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"" + Escape.xml(sheet.title()) + "\">";
    return scrolled + table(sheet, (shown, d) -> "<details><summary>" + shown + "</summary>" + steps.apply(d) + "</details>") + "</div>\n"
        + notes(sheet);
  }

  /**
   * The same for paper, where nothing opens or scrolls.
   *
   * @param place id of the element that tells how a figure was come by, where one does
   */
  public static String plain(Sheet sheet, Function<Derivation, Optional<String>> place) {
    String table = table(sheet, (shown, d) -> place.apply(d).map(id -> "<a href=\"#" + id + "\">" + shown + "</a>").orElse(shown));
    List<String> kinds = new ArrayList<>();
    kinds.add(sheet.rows().size() <= FEW_ROWS ? "together" : "long");
    if (width(sheet) <= LINE) {
      kinds.add("unbroken");
    }
    return "<div class=\"" + String.join(" ", kinds) + "\">" + table + notes(sheet) + "</div>";
  }

  /** Characters of a line of the table in which no short cell is broken. */
  private static int width(Sheet sheet) {
    int width = 0;
    for (int c = 0; c < sheet.columns().size(); c++) {
      int longest = 0;
      for (Row row : sheet.rows()) {
        int length = Sheet.shown(row.cells().get(c), sheet.columns().get(c)).length();
        longest = Math.max(longest, length <= SHORT ? length : LEAST);
      }
      width += Math.max(longest, LEAST / 2) + 2;
    }
    return width;
  }

  private static String table(Sheet sheet, BiFunction<String, Derivation, String> figures) {
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
        cell(out, sheet.columns().get(c), row.cells().get(c), figures);
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

  private static void cell(StringBuilder out, Column column, Cell cell, BiFunction<String, Derivation, String> figures) {
    String shown = Escape.xml(Sheet.shown(cell, column));
    out.append(column.isFigures() ? "<td class=\"figure\">" : shown.length() <= SHORT ? "<td class=\"short\">" : "<td>");
    if (cell instanceof Cell.Figure figure && figure.derivation().isPresent()) {
      out.append(figures.apply(shown, figure.derivation().get()));
    } else {
      out.append(shown);
    }
    out.append("</td>");
  }
}
