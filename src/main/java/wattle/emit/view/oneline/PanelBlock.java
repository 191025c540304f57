package wattle.emit.view.oneline;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.loads.ConnectedLoads;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Status;

/**
 * A panel: one upright bar for each leg, and from the bars one line for each breaker. A dot on a bar says that the line
 * is connected to that leg; the letters at its left say the same, so that nothing hangs on color.
 */
final class PanelBlock {
  static final double ENTRY = 77;

  private static final double SIZE = PanelColumns.SIZE;
  private static final double LEAST_ROW = 19;
  private static final double FIRST_ROW = 107;
  private static final double BELOW = 18;

  /** Rows that a part beneath a service has at least. */
  private static final int FEWEST = 2;

  private static final double WIDEST_HEADING = 460;

  private final List<PanelRow> rows;
  private final PanelColumns columns;
  private final String figures;
  private final double width;
  private final double rowHeight;
  private final String name;

  /** @param figures its calculated load and fault current, in words */
  PanelBlock(House house, ConnectedLoads loads, Panel panel, String figures) {
    this.figures = figures;
    name = panel.name();
    rows = panel.breakers().stream()
        .sorted(Comparator.comparingInt(PanelBlock::slot).thenComparing(b -> b.id().slotText()))
        .map(b -> PanelRow.of(house, loads, b))
        .toList();
    boolean feeds = rows.stream().anyMatch(r -> !r.panel().isEmpty());
    columns = new PanelColumns(panel, rows, feeds ? Fit.width(Shape.Continuation.WIDEST, SIZE, false) : 0);
    rowHeight = LEAST_ROW + columns.more();
    double heading = Math.max(Fit.width(columns.title() + " (continued)", 13, true),
        Math.max(Fit.width(columns.facts(), SIZE, false), Fit.width(figures, SIZE, false)));
    width = Math.max(columns.loadEnd(), Math.min(WIDEST_HEADING, heading) + 20);
  }

  /**
   * What a part of a panel says of the other parts, and of what lies on other sheets.
   *
   * @param before the piece that this one continues
   * @param after the piece that continues this one
   * @param sheetOf the piece in which a panel, by its name, begins
   */
  record Links(Optional<String> before, Optional<String> after, Function<String, String> sheetOf) {}

  double width() {
    return width;
  }

  int rows() {
    return rows.size();
  }

  /** Whether a height holds the head of the panel and a few of its rows. */
  boolean hasRoomIn(double height) {
    return height >= FIRST_ROW + BELOW + rowHeight * Math.min(rows.size(), FEWEST);
  }

  /** How many rows there is room for in a part of a height; at least one. */
  int rowsWithin(double height) {
    return Math.max(1, (int) Math.floor((height - FIRST_ROW - BELOW - rowHeight) / rowHeight) + 1);
  }

  /** Which row feeds a panel; absent where none does. */
  Optional<Integer> rowOf(String fed) {
    return rows.stream().filter(r -> r.panel().equals(fed)).findFirst().map(rows::indexOf);
  }

  /** The whole panel as a node of the graph. */
  Block block(String id) {
    Map<String, Block.Exit> exits = new HashMap<>();
    BlockLabel label = new BlockLabel(width);
    label.row(FIRST_ROW - rowHeight / 2, "in", columns.title() + "  " + columns.facts() + "  " + figures);
    for (int i = 0; i < rows.size(); i++) {
      PanelRow row = rows.get(i);
      double y = FIRST_ROW + rowHeight * i;
      String port = "";
      if (!row.panel().isEmpty()) {
        port = "out" + exits.size();
        exits.put(row.panel(), new Block.Exit(port, y));
      }
      label.row(y + rowHeight / 2, port, row.words());
    }
    return new Block(id, draw(0, rows.size(), Optional.empty()), width, lastRow(rows.size()) + BELOW, ENTRY, exits, label.toString());
  }

  private double lastRow(int count) {
    return FIRST_ROW + rowHeight * Math.max(0, count - 1);
  }

  /**
   * The panel with some of its rows, its upper left corner at the origin.
   *
   * @param links for a part that stands on a sheet of several; absent for the whole, whose feeders the diagram draws
   */
  Sketch draw(int from, int to, Optional<Links> links) {
    Sketch sketch = new Sketch();
    boolean begins = links.isEmpty() || links.get().before().isEmpty();
    Optional<String> after = links.flatMap(Links::after);
    double lastRow = lastRow(to - from) + (after.isPresent() ? rowHeight : 0);
    heading(sketch, begins ? "" : " (continued)");
    columns.bars(sketch, ENTRY, lastRow);
    if (begins) {
      columns.entry(sketch, ENTRY);
    } else {
      sheet(sketch, columns.wall() + 6, ENTRY, "continued from ", links.get().before().get(), Anchor.START);
    }
    for (int i = from; i < to; i++) {
      row(sketch, rows.get(i), FIRST_ROW + rowHeight * (i - from), links);
    }
    after.ifPresent(next -> sheet(sketch, columns.wall() + 6, lastRow, "continues on ", next, Anchor.START));
    return sketch;
  }

  private void row(Sketch sketch, PanelRow row, double y, Optional<Links> links) {
    sketch.add(new Shape.Spot(0, y - 4, 10, 8, row.breaker().id().toString()));
    Stroke stroke = row.breaker().status() == Status.TO_REMOVE ? Stroke.DASHED : Stroke.THIN;
    boolean feeds = row.leaves() && !row.panel().isEmpty();
    double nameEnd = columns.row(sketch, row, y, stroke, Fill.INK, feeds);
    if (!feeds) {
      return;
    }
    if (links.isEmpty()) {
      sketch.line(nameEnd, y, width, y, stroke);
      return;
    }
    double end = columns.loadEnd() - Fit.width(Shape.Continuation.WIDEST, SIZE, false) - 5;
    sketch.line(nameEnd, y, end - 8, y, stroke);
    Symbols.head(sketch, end, y);
    sheet(sketch, end + 5, y, "", links.get().sheetOf().apply(row.panel()), Anchor.START);
  }

  /** Words that end in where it goes on, level with a line. */
  static void sheet(Sketch sketch, double x, double y, String words, String piece, Anchor anchor) {
    sketch.add(new Shape.Continuation(x, y + 3.6, words, piece, "", SIZE, anchor, WIDEST_HEADING));
  }

  private static int slot(Breaker breaker) {
    return breaker.poles().stream().mapToInt(p -> p.slot().number()).min().orElse(0);
  }

  /** The lines over a panel. */
  private void heading(Sketch sketch, String more) {
    sketch.add(new Shape.Spot(0, 3, 10, 9, "main " + name));
    double room = Math.max(WIDEST_HEADING, width);
    sketch.fitted(0, 12, columns.title() + more, 13, true, Anchor.START, room);
    sketch.fitted(0, 29, columns.facts(), SIZE, false, Anchor.START, room);
    sketch.fitted(0, 44, figures, SIZE, false, Anchor.START, room);
  }
}
