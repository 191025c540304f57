package wattle.emit.view.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Room;

/** The table of a room, or of some of its rows where they do not all fit on a sheet. */
final class RoomCard {
  private static final double LINE = 13;
  private static final double HEADING = 26;
  private static final double HEAD = 20;
  private static final double FOOT = 18;

  private final Room room;
  private final List<RoomRow> rows;
  private final RoomColumns columns;
  private final double voltAmperes;

  RoomCard(Room room, List<RoomRow> rows, RoomColumns columns, double voltAmperes) {
    this.room = room;
    this.rows = rows;
    this.columns = columns;
    this.voltAmperes = voltAmperes;
  }

  /** Where the rows are torn so that no part is higher than there is room for: the first row of each part, and the end. */
  List<Integer> seams(double height) {
    List<Integer> seams = new ArrayList<>(List.of(0));
    double free = height - HEADING - HEAD - FOOT;
    double used = 0;
    for (int i = 0; i < rows.size(); i++) {
      double own = height(rows.get(i));
      if (used + own > free && i > seams.get(seams.size() - 1)) {
        seams.add(i);
        used = 0;
      }
      used += own;
    }
    seams.add(rows.size());
    return seams;
  }

  private double height(RoomRow row) {
    int lines = 1;
    for (int c = 0; c < row.cells().size(); c++) {
      lines = Math.max(lines, columns.lines(row, c).size());
    }
    return lines * LINE + 8;
  }

  /**
   * Some rows under the heading of the room, its upper left corner at the origin.
   *
   * @param before the piece that these rows continue
   * @param after the piece that continues them
   */
  Sketch sketch(int from, int to, Optional<String> before, Optional<String> after) {
    Sketch sketch = new Sketch();
    double width = columns.width();
    String load = voltAmperes > 0 ? Math.round(voltAmperes) + " VA connected" : "nothing stated as connected";
    double loadWidth = Fit.width(load, RoomColumns.SIZE, false);
    sketch.fitted(0, 14, heading() + (before.isPresent() ? " (continued)" : ""), 13, true, Anchor.START, width - loadWidth - 20);
    if (before.isEmpty()) {
      sketch.text(width, 14, load, RoomColumns.SIZE, false, Anchor.END);
    } else {
      sketch.add(new Shape.Continuation(width, 14, "from ", before.get(), "", RoomColumns.SIZE, Anchor.END, loadWidth + 20));
    }
    double y = HEADING;
    sketch.box(0, y, width, HEAD, Stroke.THIN, Fill.SHADE);
    cells(sketch, RoomColumns.NAMES.stream().map(List::of).toList(), y, true);
    y += HEAD;
    double top = y;
    for (int i = from; i < to; i++) {
      RoomRow row = rows.get(i);
      List<List<String>> lines = new ArrayList<>();
      for (int c = 0; c < row.cells().size(); c++) {
        lines.add(columns.lines(row, c));
      }
      boolean sameBox = row.cells().get(0).isEmpty();
      if (i > from) {
        sketch.line(sameBox ? columns.widths().get(0) : 0, y, width, y, Stroke.FAINT);
      }
      cells(sketch, lines, y + 1, false);
      sketch.add(new Shape.Spot(0, y, width, height(row), row.thing()));
      y += height(row);
    }
    double x = 0;
    for (double wide : columns.widths().subList(0, columns.widths().size() - 1)) {
      x += wide;
      sketch.line(x, top, x, y, Stroke.FAINT);
    }
    sketch.box(0, HEADING, width, y - HEADING, Stroke.THIN, Fill.NONE);
    double below = y;
    after.ifPresent(
        a -> sketch.add(new Shape.Continuation(width, below + 13, "continues on ", a, "", RoomColumns.SIZE, Anchor.END, width)));
    return sketch;
  }

  private void cells(Sketch sketch, List<List<String>> lines, double y, boolean head) {
    double x = 0;
    for (int c = 0; c < lines.size(); c++) {
      double room = columns.widths().get(c) - 2 * RoomColumns.PAD;
      for (int l = 0; l < lines.get(c).size(); l++) {
        if (!lines.get(c).get(l).isEmpty()) {
          sketch.fitted(
              x + RoomColumns.PAD, y + 13.5 + LINE * l, lines.get(c).get(l), RoomColumns.SIZE, head || c == 0 && l == 0, Anchor.START,
              room + 0.01);
        }
      }
      x += columns.widths().get(c);
    }
  }

  private String heading() {
    List<String> words = new ArrayList<>();
    words.add(room.title() + (room.title().equalsIgnoreCase(room.name()) ? "" : " (" + room.name() + ")"));
    room.kind().filter(k -> !k.equalsIgnoreCase(room.title()) && !k.equals(room.name())).ifPresent(words::add);
    new TreeMap<>(room.facts()).forEach((name, value) -> words.add(name.replace('-', ' ') + " " + value));
    return String.join(", ", words);
  }
}
