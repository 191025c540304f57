package wattle.emit.media.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import wattle.emit.media.text.DisplayWidth;

/** How wide the columns of a table are as text, and which of them stand beside each other. */
final class TextColumns {
  private static final int GAP = 2;
  private static final int MOST_TELLING = 3;

  private final int[] natural;
  private final int[] least;
  private final boolean[] figures;

  /** How many columns at the left tell the rows apart. */
  private final int telling;

  /**
   * Columns of a table that stand beside each other.
   *
   * @param columns their places in the table
   * @param widths of each, in characters of a terminal
   */
  record Part(List<Integer> columns, int[] widths) {
    int width() {
      return Arrays.stream(widths).sum() + GAP * Math.max(0, widths.length - 1);
    }
  }

  /**
   * @param lines headings, then the cells of each row
   * @param narrowest to which a column of words may be taken
   */
  TextColumns(Sheet sheet, List<List<String>> lines, int narrowest) {
    int count = sheet.columns().size();
    natural = new int[count];
    least = new int[count];
    figures = new boolean[count];
    for (int c = 0; c < count; c++) {
      int column = c;
      figures[c] = sheet.columns().get(c).isFigures();
      natural[c] = lines.stream().mapToInt(l -> DisplayWidth.of(l.get(column))).max().orElse(0);
      int heading = Arrays.stream(lines.get(0).get(c).split(" ")).mapToInt(DisplayWidth::of).max().orElse(0);
      // A figure stays whole; what is broken is its heading.
      int whole = figures[c] ? lines.stream().skip(1).mapToInt(l -> DisplayWidth.of(l.get(column))).max().orElse(0) : narrowest;
      least[c] = Math.min(natural[c], Math.max(heading, whole));
    }
    telling = telling(lines, count);
  }

  private static int telling(List<List<String>> lines, int count) {
    for (int columns = 1; columns <= Math.min(count - 1, MOST_TELLING); columns++) {
      int taken = columns;
      if (lines.stream().map(l -> l.subList(0, taken)).distinct().count() == lines.size()) {
        return columns;
      }
    }
    return Math.min(1, count);
  }

  /**
   * All columns as one part where they fit, or must.
   *
   * @param widest characters of a line
   * @param splits whether what does not fit goes on beneath, rather than over the edge; headings of figures are broken then too
   */
  List<Part> parts(int widest, boolean splits) {
    List<Integer> all = IntStream.range(0, natural.length).boxed().toList();
    if (!splits) {
      return List.of(new Part(all, narrowed(all, widest, false)));
    }
    List<Integer> left = all.subList(0, sum(all.subList(0, telling)) <= widest / 2 ? telling : Math.min(1, telling));
    List<Part> parts = new ArrayList<>();
    List<Integer> part = new ArrayList<>();
    for (int c : all) {
      if (part.size() > (parts.isEmpty() ? 0 : left.size()) && sum(part) + GAP + least[c] > widest) {
        parts.add(new Part(List.copyOf(part), narrowed(part, widest, true)));
        part = new ArrayList<>(left);
      }
      part.add(c);
    }
    parts.add(new Part(List.copyOf(part), narrowed(part, widest, true)));
    return parts;
  }

  /** Characters of a line with each column as narrow as it can be. */
  private int sum(List<Integer> columns) {
    return columns.stream().mapToInt(c -> least[c]).sum() + GAP * (columns.size() - 1);
  }

  /** Takes room from the widest columns, until a line fits or none can give more. */
  private int[] narrowed(List<Integer> columns, int widest, boolean figuresToo) {
    int[] widths = columns.stream().mapToInt(c -> natural[c]).toArray();
    int over = Arrays.stream(widths).sum() + GAP * (widths.length - 1) - widest;
    while (over > 0) {
      int most = -1;
      for (int i = 0; i < widths.length; i++) {
        int column = columns.get(i);
        boolean gives = widths[i] > least[column] && (figuresToo || !figures[column]);
        if (gives && (most < 0 || widths[i] > widths[most])) {
          most = i;
        }
      }
      if (most < 0) {
        break;
      }
      widths[most]--;
      over--;
    }
    return widths;
  }
}
