package wattle.emit.media.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lines for a terminal of a width. A line that is too wide is broken at blanks, and goes on beneath its last column where that leaves
 * room, else a little further in than it began. A word that is longer than a line, such as an address, stays whole, so that it can be
 * copied.
 */
public final class FoldedLines {
  private static final Pattern COLOR = Pattern.compile("\u001b\\[[0-9;]*m");

  /** The gap in front of a column; the sign of an item in a list ends as one. */
  private static final Pattern GAP = Pattern.compile("(?<=\\S) {2,}(?=\\S)");

  /** A sentence that begins at the edge goes on there. */
  private static final Pattern PROSE = Pattern.compile("\\p{Lu}[^:]*\\.");

  /** Of the width, the most that may be left of the last column. */
  private static final double MOST_LEFT = 0.65;

  /** From this indent on a line stands in a column of a table. */
  private static final int LEAST_COLUMN = 8;

  private static final String CONTINUED = " \\";

  private final int columns;

  public FoldedLines(int columns) {
    this.columns = columns;
  }

  /** A text of several lines, each ended. */
  public String ofText(String text) {
    StringBuilder out = new StringBuilder();
    text.lines().forEach(line -> of(line).forEach(part -> out.append(part).append('\n')));
    return out.toString();
  }

  /** The same of a text with commands in it, indented: one that is broken can still be copied to a shell. */
  public String ofCommands(String text) {
    FoldedLines narrower = new FoldedLines(columns - CONTINUED.length());
    StringBuilder out = new StringBuilder();
    text.lines().forEach(line -> {
      boolean command = line.startsWith("  ");
      out.append(String.join(command ? CONTINUED + "\n" : "\n", (command && width(line) > columns ? narrower : this).of(line)));
      out.append('\n');
    });
    return out.toString();
  }

  /** A line, without its end, as one or more. */
  List<String> of(String line) {
    if (width(line) <= columns) {
      return List.of(line);
    }
    int own = line.length() - line.stripLeading().length();
    String hanging = " ".repeat(hanging(line, own));
    List<String> lines = new ArrayList<>();
    StringBuilder now = new StringBuilder(line.substring(0, own));
    int used = own;
    boolean begun = false;
    for (String word : line.substring(own).split("(?<=\\S)(?= )")) {
      String bare = word.stripLeading();
      int wide = width(word);
      if (begun && used + wide > columns) {
        lines.add(now.toString().stripTrailing());
        now = new StringBuilder(hanging).append(bare);
        used = hanging.length() + width(bare);
      } else {
        now.append(word);
        used += wide;
      }
      begun = true;
    }
    lines.add(now.toString());
    return lines;
  }

  private int hanging(String line, int own) {
    if (PROSE.matcher(line).matches()) {
      return 0;
    }
    int at = Math.min(own >= LEAST_COLUMN ? own : own + 2, columns / 2);
    Matcher gap = GAP.matcher(line);
    while (gap.find()) {
      int column = width(line.substring(0, gap.end()));
      if (column <= columns * MOST_LEFT) {
        at = column;
      }
    }
    return at;
  }

  private static int width(String text) {
    return DisplayWidth.of(text.indexOf(0x1B) < 0 ? text : COLOR.matcher(text).replaceAll(""));
  }
}
