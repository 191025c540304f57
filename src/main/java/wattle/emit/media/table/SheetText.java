package wattle.emit.media.table;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import wattle.emit.media.text.DisplayWidth;
import wattle.emit.media.text.Escape;
import wattle.emit.media.text.VisibleText;

/** Sheets as text for a terminal, as Markdown, and as CSV. */
public final class SheetText {
  /** Columns of characters that a line of a terminal may take before words are broken into more lines. */
  private static final int WIDEST = 150;

  /** No column of words becomes narrower for that, */
  private static final int NARROWEST = 24;

  /** but on a terminal that has fewer columns. */
  private static final int NARROWEST_ON_A_TERMINAL = 12;

  /** A figure and its unit stay together. */
  private static final Pattern UNIT = Pattern.compile("(\\d) ((?:m?A|k?V|k?W|k?VA|AWG|Ω|%|s|ft|in|m)\\b|%)");
  private static final String TOGETHER = "\u00a0";

  private SheetText() {}

  /** Columns set out with spaces; a rule stands under the headings and above sums. */
  public static String plain(List<Sheet> sheets) {
    return plain(sheets, OptionalInt.empty());
  }

  /**
   * The same for a terminal. A table with more columns than fit goes on beneath itself, each part beside the columns that tell the
   * rows apart.
   *
   * @param columns that no line exceeds; absent where no terminal shows it
   */
  public static String plain(List<Sheet> sheets, OptionalInt columns) {
    StringBuilder out = new StringBuilder();
    for (Sheet sheet : sheets) {
      if (out.length() > 0) {
        out.append('\n');
      }
      plain(out, sheet, columns);
    }
    return out.toString();
  }

  private static void plain(StringBuilder out, Sheet sheet, OptionalInt terminal) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(sheet.columns().stream().map(Column::heading).toList());
    sheet.rows().forEach(row -> lines.add(cells(sheet, row)));
    TextColumns columns = new TextColumns(sheet, lines, terminal.isPresent() ? NARROWEST_ON_A_TERMINAL : NARROWEST);
    out.append(VisibleText.of(sheet.title())).append("\n");
    for (TextColumns.Part part : columns.parts(terminal.orElse(WIDEST), terminal.isPresent())) {
      out.append('\n');
      part(out, sheet, lines, part);
    }
    if (!sheet.notes().isEmpty()) {
      out.append('\n');
      sheet.notes().forEach(note -> out.append(VisibleText.of(note)).append('\n'));
    }
  }

  private static void part(StringBuilder out, Sheet sheet, List<List<String>> lines, TextColumns.Part part) {
    int[] widths = part.widths();
    String rule = "─".repeat(part.width()) + "\n";
    boolean sum = false;
    for (int i = 0; i < lines.size(); i++) {
      boolean starts = i > 0 && sheet.rows().get(i - 1).sum() && !sum;
      if (i == 1 || starts) {
        out.append(rule);
      }
      sum = i > 0 && sheet.rows().get(i - 1).sum();
      List<String> all = lines.get(i);
      for (List<String> line : broken(part.columns().stream().map(all::get).toList(), widths)) {
        out.append(line(part.columns().stream().map(sheet.columns()::get).toList(), line, widths)).append('\n');
      }
    }
  }

  /** A line of cells as so many lines that every cell fits its column; only what is too wide is broken, at its spaces. */
  private static List<List<String>> broken(List<String> cells, int[] widths) {
    List<List<String>> columns = new ArrayList<>();
    int most = 1;
    for (int c = 0; c < widths.length; c++) {
      columns.add(broken(cells.get(c), widths[c]));
      most = Math.max(most, columns.get(c).size());
    }
    List<List<String>> lines = new ArrayList<>();
    for (int i = 0; i < most; i++) {
      List<String> line = new ArrayList<>();
      for (List<String> column : columns) {
        line.add(i < column.size() ? column.get(i) : "");
      }
      lines.add(line);
    }
    return lines;
  }

  private static List<String> broken(String cell, int width) {
    if (DisplayWidth.of(cell) <= width) {
      return List.of(cell);
    }
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : UNIT.matcher(cell).replaceAll("$1" + TOGETHER + "$2").split(" ")) {
      String rest = word.replace(TOGETHER, " ");
      if (!line.isEmpty() && DisplayWidth.of(line) + 1 + DisplayWidth.of(rest) <= width) {
        line += " " + rest;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      while (DisplayWidth.of(rest) > width) {
        int cut = rest.offsetByCodePoints(0, fitting(rest, width));
        lines.add(rest.substring(0, cut));
        rest = rest.substring(cut);
      }
      line = rest;
    }
    lines.add(line);
    return lines;
  }

  /** Code points of a word that fit a width; one at least. */
  private static int fitting(String word, int width) {
    int points = 1;
    while (points < word.codePointCount(0, word.length())
        && DisplayWidth.of(word.substring(0, word.offsetByCodePoints(0, points + 1))) <= width) {
      points++;
    }
    return points;
  }

  private static List<String> cells(Sheet sheet, Row row) {
    List<String> cells = new ArrayList<>();
    for (int c = 0; c < row.cells().size(); c++) {
      cells.add(VisibleText.of(Sheet.shown(row.cells().get(c), sheet.columns().get(c))));
    }
    return cells;
  }

  private static String line(List<Column> columns, List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int c = 0; c < widths.length; c++) {
      String pad = " ".repeat(widths[c] - DisplayWidth.of(cells.get(c)));
      line.append(c > 0 ? "  " : "");
      line.append(columns.get(c).isFigures() ? pad + cells.get(c) : cells.get(c) + pad);
    }
    return line.toString().stripTrailing();
  }

  /** Sheets as Markdown tables under headings. */
  public static String markdown(List<Sheet> sheets) {
    StringBuilder out = new StringBuilder();
    for (Sheet sheet : sheets) {
      out.append(out.length() > 0 ? "\n" : "").append("## ").append(Escape.markdown(sheet.title())).append("\n\n");
      markdownLine(out, sheet.columns().stream().map(Column::heading).toList(), false);
      out.append('|');
      sheet.columns().forEach(c -> out.append(c.isFigures() ? " ---: |" : " --- |"));
      out.append('\n');
      sheet.rows().forEach(row -> markdownLine(out, cells(sheet, row), row.sum()));
      if (!sheet.notes().isEmpty()) {
        out.append('\n').append(Escape.markdown(String.join(" ", sheet.notes()))).append('\n');
      }
    }
    return out.toString();
  }

  private static void markdownLine(StringBuilder out, List<String> cells, boolean strong) {
    out.append('|');
    for (String cell : cells) {
      String text = Escape.markdown(cell);
      out.append(' ').append(strong && !text.isEmpty() ? "**" + text + "**" : text).append(" |");
    }
    out.append('\n');
  }

  /**
   * Sheets as CSV (RFC 4180), figures with all their digits. Sheets with the same columns follow each other under one
   * heading; an empty line stands before others. Notes are left out.
   */
  public static String csv(List<Sheet> sheets) {
    StringBuilder out = new StringBuilder();
    List<Column> columns = List.of();
    for (Sheet sheet : sheets) {
      if (!sheet.columns().equals(columns)) {
        columns = sheet.columns();
        out.append(out.length() > 0 ? "\r\n" : "");
        out.append(String.join(",", columns.stream().map(c -> Escape.csv(c.key())).toList())).append("\r\n");
      }
      for (Row row : sheet.rows()) {
        out.append(String.join(",", row.cells().stream().map(SheetText::exact).toList())).append("\r\n");
      }
    }
    return out.toString();
  }

  private static String exact(Cell cell) {
    if (cell instanceof Cell.Words words) {
      return Escape.csv(words.text());
    }
    if (cell instanceof Cell.Figure figure) {
      return wattle.quantity.Quantity.plain(figure.value(), 12);
    }
    if (cell instanceof Cell.Blank) {
      return "";
    }
    throw new AssertionError(cell);
  }
}
