package wattle.emit.oneline;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import wattle.emit.drawing.Fit;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Fill;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.emit.drawing.Symbols;
import wattle.emit.schedule.BreakerText;
import wattle.loads.ConnectedLoads;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.model.Status;

/**
 * A panel: one upright bar for each leg, and from the bars one line for each breaker. A dot on a bar says that the line
 * is connected to that leg; the letters at its left say the same, so that nothing hangs on colour.
 */
final class PanelBlock {
  static final double ENTRY = 62;

  private static final double SIZE = 10.5;
  private static final double ROW = 19;
  private static final double BAR_GAP = 14;
  private static final double FIRST_ROW = 92;
  private static final double BELOW = 18;
  private static final double WIDEST_WIRING = 210;
  private static final double WIDEST_NAME = 220;
  private static final double WIDEST_HEADING = 460;

  private final Panel panel;
  private final List<PanelRow> rows;
  private final double slots;
  private final double bars;
  private final double lastBar;
  private final double breaker;
  private final double ratingAt;
  private final double wall;
  private final double wiringAt;
  private final double headAt;
  private final double loadEnd;
  private final double width;

  PanelBlock(House house, ConnectedLoads loads, Panel panel) {
    this.panel = panel;
    rows =
        panel.breakers().stream()
            .sorted(Comparator.comparingInt(PanelBlock::slot).thenComparing(b -> b.id().slotText()))
            .map(b -> PanelRow.of(house, loads, b))
            .toList();
    slots = widest(PanelRow::slots, 1000);
    double legs = widest(PanelRow::legs, 1000);
    bars = Math.max(14 + slots + 10 + legs + 10, 46);
    lastBar = bars + BAR_GAP * (panel.legs().size() - 1);
    breaker = lastBar + 14;
    ratingAt = breaker + Symbols.DEVICE + 6;
    wall = Math.max(ratingAt + widest(PanelRow::rating, 1000), lastBar + 12 + Fit.width(mainWords(), SIZE, false)) + 10;
    wiringAt = wall + 26;
    headAt = wiringAt + widest(PanelRow::wiring, WIDEST_WIRING) + 28;
    boolean feeds = rows.stream().anyMatch(r -> !r.panel().isEmpty());
    double load = Math.max(widest(PanelRow::load, 1000), feeds ? Fit.width("sheet 888", SIZE, false) : 0);
    loadEnd = headAt + 6 + widest(PanelRow::what, WIDEST_NAME) + 14 + load;
    List<String> heading = headingWords();
    double headingWidth = Math.max(Fit.width(heading.get(0) + " (continued)", 13, true), Fit.width(heading.get(1), SIZE, false));
    width = Math.max(loadEnd, Math.min(WIDEST_HEADING, headingWidth) + 20);
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

  /** How many rows there is room for in a part of a height; at least one. */
  static int rowsWithin(double height) {
    return Math.max(1, (int) Math.floor((height - FIRST_ROW - BELOW - ROW) / ROW) + 1);
  }

  /** Which row feeds a panel; absent where none does. */
  Optional<Integer> rowOf(String fed) {
    return rows.stream().filter(r -> r.panel().equals(fed)).findFirst().map(rows::indexOf);
  }

  /** The whole panel as a node of the graph. */
  Block block(String id) {
    Map<String, Block.Exit> exits = new HashMap<>();
    BlockLabel label = new BlockLabel(width);
    label.row(FIRST_ROW - ROW / 2, "in", String.join("  ", headingWords()));
    for (int i = 0; i < rows.size(); i++) {
      PanelRow row = rows.get(i);
      double y = FIRST_ROW + ROW * i;
      String port = "";
      if (!row.panel().isEmpty()) {
        port = "out" + exits.size();
        exits.put(row.panel(), new Block.Exit(port, y));
      }
      label.row(y + ROW / 2, port, row.words());
    }
    return new Block(id, draw(0, rows.size(), Optional.empty()), width, lastRow(rows.size()) + BELOW, ENTRY, exits, label.toString());
  }

  private static double lastRow(int count) {
    return FIRST_ROW + ROW * Math.max(0, count - 1);
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
    double lastRow = lastRow(to - from) + (after.isPresent() ? ROW : 0);
    heading(sketch, begins ? "" : " (continued)");
    for (int i = 0; i < panel.legs().size(); i++) {
      double x = bars + BAR_GAP * i;
      sketch.line(x, ENTRY, x, lastRow + 6, Stroke.THICK);
      sketch.text(x, ENTRY - 9, panel.legs().get(i).name(), SIZE, true, Anchor.MIDDLE);
    }
    if (begins) {
      entry(sketch);
    } else {
      sheet(sketch, lastBar + 12, ENTRY, "continued from sheet ", links.get().before().get(), Anchor.START);
    }
    for (int i = from; i < to; i++) {
      row(sketch, rows.get(i), FIRST_ROW + ROW * (i - from), links);
    }
    after.ifPresent(next -> sheet(sketch, lastBar + 12, lastRow, "continues on sheet ", next, Anchor.START));
    sketch.box(0, ENTRY - 24, wall, lastRow + 12 - (ENTRY - 24), Stroke.DASHED, Fill.NONE);
    return sketch;
  }

  private void row(Sketch sketch, PanelRow row, double y, Optional<Links> links) {
    text(sketch, 14 + slots, y, row.slots(), Anchor.END);
    text(sketch, 14 + slots + 10, y, row.legs(), Anchor.START);
    double start = lastBar;
    for (Leg leg : row.taps()) {
      double x = bars + BAR_GAP * Math.max(0, panel.legs().indexOf(leg));
      sketch.dot(x, y);
      start = Math.min(start, x);
    }
    Stroke stroke = row.breaker().status() == Status.TO_REMOVE ? Stroke.DASHED : Stroke.THIN;
    sketch.line(start, y, breaker, y, stroke);
    if (row.breaker().device() == Breaker.Device.FUSE) {
      Symbols.fuse(sketch, breaker, y);
    } else {
      Symbols.breaker(sketch, breaker, y);
    }
    text(sketch, ratingAt, y, row.rating(), Anchor.START);
    if (!row.leaves()) {
      sketch.fitted(wiringAt, y + 3.6, row.what(), SIZE, false, Anchor.START, WIDEST_NAME);
      return;
    }
    sketch.line(ratingAt + Fit.width(row.rating(), SIZE, false) + 5, y, wiringAt - 5, y, stroke);
    Symbols.strokes(sketch, wall + 6, y, row.breaker().poles().size());
    sketch.fitted(wiringAt, y + 3.6, row.wiring(), SIZE, false, Anchor.START, WIDEST_WIRING);
    double wiringEnd = wiringAt + Math.min(WIDEST_WIRING, Fit.width(row.wiring(), SIZE, false)) + 5;
    sketch.line(wiringEnd, y, headAt - (row.panel().isEmpty() ? 8 : 0), y, stroke);
    sketch.fitted(headAt + 6, y + 3.6, row.what(), SIZE, true, Anchor.START, WIDEST_NAME);
    if (row.panel().isEmpty()) {
      Symbols.head(sketch, headAt, y);
      text(sketch, loadEnd, y, row.load(), Anchor.END);
      return;
    }
    double nameEnd = headAt + 6 + Math.min(WIDEST_NAME, Fit.width(row.what(), SIZE, true)) + 5;
    if (links.isEmpty()) {
      sketch.line(nameEnd, y, width, y, stroke);
      return;
    }
    double end = loadEnd - Fit.width("sheet 888", SIZE, false) - 5;
    sketch.line(nameEnd, y, end - 8, y, stroke);
    Symbols.head(sketch, end, y);
    sheet(sketch, end + 5, y, "sheet ", links.get().sheetOf().apply(row.panel()), Anchor.START);
  }

  /** Words that end in the number of a sheet, level with a line. */
  static void sheet(Sketch sketch, double x, double y, String words, String piece, Anchor anchor) {
    sketch.add(new Shape.Continuation(x, y + 3.6, words, piece, "", SIZE, anchor, WIDEST_HEADING));
  }

  private static int slot(Breaker breaker) {
    return breaker.poles().stream().mapToInt(p -> p.slot().number()).min().orElse(0);
  }

  private double widest(Function<PanelRow, String> text, double most) {
    return Math.min(most, rows.stream().mapToDouble(r -> Fit.width(text.apply(r), SIZE, true)).max().orElse(0));
  }

  private static void text(Sketch sketch, double x, double y, String text, Anchor anchor) {
    if (!text.isEmpty()) {
      sketch.text(x, y + 3.6, text, SIZE, false, anchor);
    }
  }

  /** Where the supply comes in: a line from the left through the main to every bar, and what is known of it. */
  private void entry(Sketch sketch) {
    boolean device = panel.main().isPresent() && panel.main().get().kind() != MainDevice.Kind.LUGS;
    sketch.line(0, ENTRY, 6, ENTRY).line(6 + (device ? Symbols.DEVICE : 0), ENTRY, lastBar, ENTRY);
    panel.main().ifPresent(main -> {
      switch (main.kind()) {
        case BREAKER -> Symbols.breaker(sketch, 6, ENTRY);
        case FUSE -> Symbols.fuse(sketch, 6, ENTRY);
        case SWITCH -> Symbols.blade(sketch, 6, ENTRY);
        case LUGS -> { }
      }
    });
    for (int i = 0; i < panel.legs().size(); i++) {
      sketch.dot(bars + BAR_GAP * i, ENTRY);
    }
    text(sketch, lastBar + 12, ENTRY, mainWords(), Anchor.START);
  }

  private String mainWords() {
    return panel
        .main()
        .map(m -> BreakerText.main(m) + m.interrupting().map(k -> ", " + k).orElse(""))
        .orElse("no main");
  }

  private List<String> headingWords() {
    List<String> facts = new java.util.ArrayList<>();
    facts.add(panel.system().text());
    panel.busRating().ifPresent(b -> facts.add("bus " + b));
    panel.slotCount().ifPresent(s -> facts.add(s + " slots"));
    facts.add(panel.bonded() ? "neutral and ground joined here" : "neutral and ground apart");
    return List.of(
        "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse(""), String.join(", ", facts));
  }

  /** The two lines over a panel. */
  private void heading(Sketch sketch, String more) {
    List<String> words = headingWords();
    sketch.fitted(0, 12, words.get(0) + more, 13, true, Anchor.START, WIDEST_HEADING);
    sketch.fitted(0, 29, words.get(1), SIZE, false, Anchor.START, WIDEST_HEADING);
  }
}
