package wattle.emit.view.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.text.VisibleText;

/**
 * The columns of the schedule, alike in every room, and the lines that their cells are broken into.
 *
 * @param widths with what is left free at either side
 * @param torn whether lines of columns are broken that are whole where there is room
 */
record RoomColumns(List<Double> widths, boolean torn) {
  static final List<String> NAMES = List.of("Box", "Device", "Load", "Branch", "Breaker", "Slot and leg", "Protection");
  static final double SIZE = 9.5;
  static final double PAD = 7;

  private static final double WIDEST = 250;

  /** Beyond this a single word may be cut. */
  private static final double WIDEST_WORD = 150;

  private static final double STEP = 4;

  /** Columns whose lines are not broken. */
  private static final Set<String> WHOLE = Set.of("Box", "Load");

  /** Likewise, where that leaves the table no wider than there is room. */
  private static final Set<String> BETTER_WHOLE = Set.of("Slot and leg", "Protection");

  /** Those whose lines are broken after commas, so that a figure stays with its unit. */
  private static final Set<String> LISTS = Set.of("Branch", "Breaker", "Slot and leg");

  RoomColumns {
    widths = List.copyOf(widths);
  }

  /**
   * As wide as the cells need; where that is more than there is, the widest give way and break their lines. Where even
   * single words need more, the table is wider than the room.
   */
  static RoomColumns fitting(List<RoomRow> rows, double room) {
    RoomColumns whole = fitting(rows, room, false);
    return whole.width() > room ? fitting(rows, room, true) : whole;
  }

  private static boolean isWhole(int column, boolean torn) {
    return WHOLE.contains(NAMES.get(column)) || !torn && BETTER_WHOLE.contains(NAMES.get(column));
  }

  private static RoomColumns fitting(List<RoomRow> rows, double room, boolean torn) {
    List<Double> widths = new ArrayList<>();
    List<Double> least = new ArrayList<>();
    for (int c = 0; c < NAMES.size(); c++) {
      double line = Fit.width(NAMES.get(c), SIZE, true);
      double word = line;
      for (RoomRow row : rows) {
        for (String text : row.cells().get(c)) {
          line = Math.max(line, Fit.width(text, SIZE, c == 0));
          for (String part : parts(text, c, torn)) {
            word = Math.max(word, Fit.width(part, SIZE, c == 0));
          }
        }
      }
      widths.add(Math.min(WIDEST, line) + 2 * PAD);
      least.add(Math.min(WIDEST_WORD, word) + 2 * PAD);
    }
    while (sum(widths) > room) {
      int widest = -1;
      for (int c = 0; c < widths.size(); c++) {
        if (widths.get(c) > least.get(c) && (widest < 0 || widths.get(c) > widths.get(widest))) {
          widest = c;
        }
      }
      if (widest < 0) {
        break;
      }
      widths.set(widest, Math.max(least.get(widest), widths.get(widest) - STEP));
    }
    return new RoomColumns(widths, torn);
  }

  /** What is not torn. */
  private static List<String> parts(String line, int column, boolean torn) {
    String name = NAMES.get(column);
    if (isWhole(column, torn)) {
      return List.of(line);
    }
    return List.of(line.split(LISTS.contains(name) && line.contains(", ") ? "(?<=,) " : " "));
  }

  private static double sum(List<Double> widths) {
    return widths.stream().mapToDouble(Double::doubleValue).sum();
  }

  double width() {
    return sum(widths);
  }

  /**
   * The lines of a cell, broken at spaces, or where it lists things, after commas; a thing wider than the column is broken
   * at its spaces, and a word that is wider than the column is cut when it is drawn.
   */
  List<String> lines(RoomRow row, int column) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : row.cells().get(column)) {
      String line = "";
      for (String word : fitting(parts(VisibleText.of(paragraph), column, torn), column)) {
        String longer = line.isEmpty() ? word : line + " " + word;
        if (!line.isEmpty() && Fit.width(longer, SIZE, column == 0) > widths.get(column) - 2 * PAD) {
          lines.add(line);
          line = word;
        } else {
          line = longer;
        }
      }
      lines.add(line);
    }
    return lines;
  }

  private List<String> fitting(List<String> parts, int column) {
    if (isWhole(column, torn)) {
      return parts;
    }
    double room = widths.get(column) - 2 * PAD;
    return parts.stream()
        .flatMap(p -> Fit.width(p.strip(), SIZE, column == 0) > room ? Stream.of(p.split(" ")) : Stream.of(p))
        .toList();
  }
}
