package wattle.emit.document.findings;

import java.util.Locale;
import wattle.emit.media.text.DisplayWidth;
import wattle.finding.Source;

/**
 * One line of a source as it is shown: control and direction characters made visible, long lines cut around the part
 * that matters, and a row of marks under it that stands right beneath what it points at.
 */
final class DisplayLine {
  /** Longest excerpt, in columns of a terminal. */
  static final int WIDEST = 100;

  private static final int BEFORE_MARK = 40;

  /** Characters on either side of what must stay in sight that are looked at: of a line of a million the others never show. */
  private static final int LOOKED_AT = 2000;

  private final int widest;
  private final String shown;
  private final int[] columnOf;

  /** Characters at the start of the line that were not looked at. */
  private final int left;

  /** Columns to the left of those looked at that were cut, and replaced by an ellipsis. */
  private final int cut;

  /**
   * @param line 1-based
   * @param focus offset in the source that must stay in sight
   * @param widest columns that may be shown
   */
  DisplayLine(Source source, int line, int focus, int widest) {
    this.widest = widest;
    String whole = source.line(line);
    int at = Math.max(0, Math.min(focus - source.startOfLine(line), whole.length()));
    left = wholeSign(whole, Math.max(0, at - LOOKED_AT));
    String text = whole.substring(left, wholeSign(whole, Math.min(whole.length(), at + LOOKED_AT)));
    StringBuilder visible = new StringBuilder();
    columnOf = new int[text.length() + 1];
    int column = 0;
    for (int i = 0; i < text.length();) {
      int codePoint = text.codePointAt(i);
      String piece = visible(codePoint);
      int next = i + Character.charCount(codePoint);
      for (int j = i; j < next; j++) {
        columnOf[j] = column;
      }
      visible.append(piece);
      column += piece.equals("\t") ? 8 - column % 8 : DisplayWidth.of(piece);
      i = next;
    }
    columnOf[text.length()] = column;
    String expanded = expandTabs(visible.toString());
    int focusColumn = columnOf[at - left];
    if (column <= widest) {
      cut = 0;
      shown = expanded;
    } else {
      cut = Math.max(0, Math.min(focusColumn - Math.min(BEFORE_MARK, widest / 2), column - widest));
      shown = slice(expanded, cut, cut + widest);
    }
  }

  /** The same place, or the one before it where it lies within a sign of two characters. */
  private static int wholeSign(String text, int at) {
    return at > 0 && at < text.length() && Character.isLowSurrogate(text.charAt(at)) && Character.isHighSurrogate(text.charAt(at - 1))
        ? at - 1
        : at;
  }

  String text() {
    return shown;
  }

  /** Column, from 0, at which an offset within the line is shown. */
  int column(int offsetInLine) {
    int at = columnOf[Math.max(0, Math.min(offsetInLine - left, columnOf.length - 1))];
    return Math.max(0, Math.min(at - cut + (cut > 0 ? 1 : 0), widest));
  }

  private static String visible(int codePoint) {
    boolean turnsText = codePoint >= 0x202A && codePoint <= 0x202E || codePoint >= 0x2066 && codePoint <= 0x2069
        || codePoint == 0x200E || codePoint == 0x200F;
    if (codePoint != '\t' && (Character.isISOControl(codePoint) || turnsText)) {
      return String.format(Locale.ROOT, "<U+%04X>", codePoint);
    }
    return Character.toString(codePoint);
  }

  private static String expandTabs(String text) {
    if (text.indexOf('\t') < 0) {
      return text;
    }
    StringBuilder expanded = new StringBuilder();
    int column = 0;
    for (int codePoint : text.codePoints().toArray()) {
      if (codePoint == '\t') {
        int spaces = 8 - column % 8;
        expanded.append(" ".repeat(spaces));
        column += spaces;
      } else {
        expanded.appendCodePoint(codePoint);
        column += DisplayWidth.of(codePoint);
      }
    }
    return expanded.toString();
  }

  private static String slice(String text, int from, int to) {
    StringBuilder slice = new StringBuilder(from > 0 ? "…" : "");
    int column = 0;
    boolean more = false;
    for (int codePoint : text.codePoints().toArray()) {
      if (column >= from && column < to) {
        slice.appendCodePoint(codePoint);
      }
      more |= column >= to;
      column += DisplayWidth.of(codePoint);
    }
    return slice + (more ? "…" : "");
  }
}
