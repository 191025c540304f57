package wattle.emit.media.text;

import java.util.regex.Pattern;

/** Text as each format must have it written so that it stays text. */
public final class Escape {
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+([.,]\\d+)*([eE][+-]?\\d+)?( ?%)?");
  private static final String FORMULA_STARTS = "=+-@|\uFF1D\uFF0B\uFF0D\uFF20";
  private static final String MARKDOWN_SIGNS = "\\`*_{}[]<>#|~&!";

  /**
   * For SVG, XML and HTML, between tags and in quoted attributes. Line ends and tabs stay; what XML cannot carry and
   * what cannot be seen is made visible.
   */
  public static String xml(String text) {
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints().forEach(c -> {
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        case '\n', '\t' -> out.append((char) c);
        default -> {
          if (VisibleText.isHidden(c)) {
            out.append(VisibleText.sign(c));
          } else {
            out.appendCodePoint(c);
          }
        }
      }
    });
    return out.toString();
  }

  /**
   * For a label in graphviz-java, which adds the quotes itself: Graphviz replaces {@code \N}, {@code \n} and such, and
   * HTML entities, even in plain labels. In an HTML-like label use {@link #xml}.
   */
  public static String dotLabel(String text) {
    return VisibleText.of(text).replace("\\", "\\\\").replace("&", "&amp;");
  }

  /** For a label in the DOT language, quotes included. */
  public static String dotString(String text) {
    return '"' + dotLabel(text).replace("\"", "\\\"") + '"';
  }

  /**
   * One cell of a CSV file (RFC 4180), quoted wherever a spreadsheet might split it. A text that a spreadsheet would
   * take for a formula gets an apostrophe in front; a number does not.
   */
  public static String csv(String text) {
    String cell = VisibleText.of(text);
    String bare = cell.stripLeading();
    if (!bare.isEmpty() && FORMULA_STARTS.indexOf(bare.charAt(0)) >= 0 && !NUMBER.matcher(bare).matches()) {
      cell = "'" + cell;
    }
    boolean plain = cell.equals(cell.strip()) && cell.chars().noneMatch(c -> c == ',' || c == ';' || c == '"');
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /** For Markdown, within a line or a cell of a table. */
  public static String markdown(String text) {
    StringBuilder out = new StringBuilder(text.length() + 8);
    VisibleText.of(text).chars().forEach(c -> {
      if (MARKDOWN_SIGNS.indexOf(c) >= 0) {
        out.append('\\');
      }
      out.append((char) c);
    });
    return out.toString();
  }

  private Escape() {}
}
