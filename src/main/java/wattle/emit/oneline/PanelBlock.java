package wattle.emit.oneline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import wattle.emit.drawing.Fit;
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
  private static final double SIZE = 10.5;
  private static final double ROW = 19;
  private static final double BAR_GAP = 14;
  private static final double ENTRY = 62;
  private static final double FIRST_ROW = 92;
  private static final double WIDEST_WIRING = 210;
  private static final double WIDEST_NAME = 220;

  private PanelBlock() {}

  static Block of(House house, ConnectedLoads loads, Panel panel, String id) {
    List<PanelRow> rows =
        panel.breakers().stream()
            .sorted(Comparator.comparingInt(PanelBlock::slot).thenComparing(b -> b.id().slotText()))
            .map(b -> PanelRow.of(house, loads, b))
            .toList();
    Sketch sketch = new Sketch();
    double slots = widest(rows, PanelRow::slots, 1000);
    double legs = widest(rows, PanelRow::legs, 1000);
    double rating = widest(rows, PanelRow::rating, 1000);
    double wiring = widest(rows, PanelRow::wiring, WIDEST_WIRING);
    double name = widest(rows, PanelRow::what, WIDEST_NAME);
    double load = widest(rows, PanelRow::load, 1000);
    double bars = Math.max(14 + slots + 10 + legs + 10, 46);
    double lastBar = bars + BAR_GAP * (panel.legs().size() - 1);
    double breaker = lastBar + 14;
    double ratingAt = breaker + Symbols.DEVICE + 6;
    double wall = Math.max(ratingAt + rating, lastBar + 12 + Fit.width(mainWords(panel), SIZE, false)) + 10;
    double wiringAt = wall + 26;
    double headAt = wiringAt + wiring + 28;
    double loadEnd = headAt + 6 + name + 14 + load;
    double heading = heading(sketch, panel);
    double width = Math.max(loadEnd, heading + 20);
    double lastRow = FIRST_ROW + ROW * Math.max(0, rows.size() - 1);
    double height = lastRow + 18;

    for (int i = 0; i < panel.legs().size(); i++) {
      double x = bars + BAR_GAP * i;
      sketch.line(x, ENTRY, x, lastRow + 6, Stroke.THICK);
      sketch.dot(x, ENTRY);
    }
    entry(sketch, panel, bars, lastBar);
    Map<String, Block.Exit> exits = new HashMap<>();
    BlockLabel label = new BlockLabel(width);
    label.row(FIRST_ROW - ROW / 2, "in", String.join("  ", headingWords(panel)));
    for (int i = 0; i < rows.size(); i++) {
      PanelRow row = rows.get(i);
      double y = FIRST_ROW + ROW * i;
      String port = "";
      if (!row.panel().isEmpty()) {
        port = "out" + exits.size();
        exits.put(row.panel(), new Block.Exit(port, y));
      }
      label.row(y + ROW / 2, port, row.words());
      text(sketch, 14 + slots, y, row.slots(), Anchor.END);
      text(sketch, 14 + slots + 10, y, row.legs(), Anchor.START);
      List<Leg> taps = row.taps();
      double start = lastBar;
      for (Leg leg : taps) {
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
        continue;
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
      } else {
        double nameEnd = headAt + 6 + Math.min(WIDEST_NAME, Fit.width(row.what(), SIZE, true)) + 5;
        sketch.line(nameEnd, y, width, y, stroke);
      }
    }
    sketch.box(0, ENTRY - 24, wall, lastRow + 12 - (ENTRY - 24), Stroke.DASHED, Fill.NONE);
    return new Block(id, sketch, width, height, ENTRY, exits, label.toString());
  }

  private static int slot(Breaker breaker) {
    return breaker.poles().stream().mapToInt(p -> p.slot().number()).min().orElse(0);
  }

  private static double widest(List<PanelRow> rows, Function<PanelRow, String> text, double most) {
    return Math.min(most, rows.stream().mapToDouble(r -> Fit.width(text.apply(r), SIZE, true)).max().orElse(0));
  }

  private static void text(Sketch sketch, double x, double y, String text, Anchor anchor) {
    if (!text.isEmpty()) {
      sketch.text(x, y + 3.6, text, SIZE, false, anchor);
    }
  }

  /** Where the supply comes in: a line from the left through the main to every bar, and what is known of it. */
  private static void entry(Sketch sketch, Panel panel, double bars, double lastBar) {
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
      sketch.text(bars + BAR_GAP * i, ENTRY - 9, panel.legs().get(i).name(), SIZE, true, Anchor.MIDDLE);
    }
    sketch.text(lastBar + 12, ENTRY + 3.6, mainWords(panel), SIZE);
  }

  private static String mainWords(Panel panel) {
    return panel
        .main()
        .map(m -> BreakerText.main(m) + m.interrupting().map(k -> ", " + k).orElse(""))
        .orElse("no main");
  }

  private static List<String> headingWords(Panel panel) {
    List<String> facts = new ArrayList<>();
    facts.add(panel.system().text());
    panel.busRating().ifPresent(b -> facts.add("bus " + b));
    panel.slotCount().ifPresent(s -> facts.add(s + " slots"));
    facts.add(panel.bonded() ? "neutral and ground joined here" : "neutral and ground apart");
    return List.of(
        "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse(""), String.join(", ", facts));
  }

  /** The two lines over a panel; their width comes back. */
  private static double heading(Sketch sketch, Panel panel) {
    List<String> words = headingWords(panel);
    double width = 460;
    sketch.fitted(0, 12, words.get(0), 13, true, Anchor.START, width);
    sketch.fitted(0, 29, words.get(1), SIZE, false, Anchor.START, width);
    return Math.min(width, Math.max(Fit.width(words.get(0), 13, true), Fit.width(words.get(1), SIZE, false)));
  }
}
