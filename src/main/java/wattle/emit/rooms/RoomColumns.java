package wattle.emit.rooms;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.drawing.Fit;
import wattle.emit.text.VisibleText;

/**
 * The columns of the schedule, alike in every room, and the lines that their cells are broken into.
 *
 * @param widths with what is left free at either side
 */
record RoomColumns(List<Double> widths) {
  static final List<String> NAMES = List.of("Box", "Device", "Load", "Branch", "Breaker", "Slot and leg", "Protection");
  static final double SIZE = 9.5;
  static final double PAD = 7;

  private static final double WIDEST = 250;

  /** So narrow that a cell still holds a word or two. */
  private static final double NARROWEST = 74;

  RoomColumns {
    widths = List.copyOf(widths);
  }

  /** As wide as the cells need; where that is more than there is, the widest give way and break their lines. */
  static RoomColumns fitting(List<RoomRow> rows, double room) {
    List<Double> widths = new ArrayList<>();
    for (int c = 0; c < NAMES.size(); c++) {
      double wide = Fit.width(NAMES.get(c), SIZE, true);
      for (RoomRow row : rows) {
        for (String line : row.cells().get(c)) {
          wide = Math.max(wide, Fit.width(line, SIZE, c == 0));
        }
      }
      widths.add(Math.min(WIDEST, wide) + 2 * PAD);
    }
    double most = widths.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    while (sum(widths) > room && most > NARROWEST) {
      double cap = Math.max(NARROWEST, most - 4);
      most = cap;
      widths.replaceAll(w -> Math.min(w, cap));
    }
    return new RoomColumns(widths);
  }

  private static double sum(List<Double> widths) {
    return widths.stream().mapToDouble(Double::doubleValue).sum();
  }

  double width() {
    return sum(widths);
  }

  /** The lines of a cell, broken at spaces; a word that is wider than the column is cut when it is drawn. */
  List<String> lines(RoomRow row, int column) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : row.cells().get(column)) {
      String line = "";
      for (String word : VisibleText.of(paragraph).split(" ")) {
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
}
