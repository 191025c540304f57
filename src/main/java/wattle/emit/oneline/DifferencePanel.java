package wattle.emit.oneline;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import wattle.compare.Thing;
import wattle.emit.drawing.Fit;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Fill;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.emit.drawing.Symbols;
import wattle.emit.schedule.BreakerText;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;

/**
 * A panel of two revisions: the lines of both, each on a ground and with a sign that say whether it came, went or changed,
 * and beneath a changed one what it was.
 */
final class DifferencePanel {
  private static final double SIZE = 10.5;
  private static final double SMALL = 9;
  private static final double ROW = 21;
  private static final double WAS = 13;
  private static final double BAR_GAP = 14;
  private static final double WIDEST_WIRING = 210;
  private static final double WIDEST_NAME = 220;
  private static final double HEADING = 430;

  /** Where the signs stand, left of the panel. */
  private static final double SIGNS = -22;

  private final Panel panel;
  private final List<DifferenceRow> rows;
  private final Sketch sketch = new Sketch();
  private final double slots;
  private final double bars;
  private final double lastBar;
  private final double breaker;
  private final double ratingAt;
  private final double wall;
  private final double wiringAt;
  private final double headAt;
  private final double width;
  private final double loadEnd;
  private final double entry;

  private DifferencePanel(Revisions revisions, String key) {
    panel = revisions.panel(key);
    rows = revisions.rows(key);
    slots = widest(PanelRow::slots, 1000);
    bars = Math.max(14 + slots + 10 + widest(PanelRow::legs, 1000) + 10, 46);
    lastBar = bars + BAR_GAP * (panel.legs().size() - 1);
    breaker = lastBar + 14;
    ratingAt = breaker + Symbols.DEVICE + 6;
    wall = Math.max(ratingAt + widest(PanelRow::rating, 1000), lastBar + 12 + Fit.width(main(), SIZE, false)) + 10;
    wiringAt = wall + 26;
    headAt = wiringAt + widest(PanelRow::wiring, WIDEST_WIRING) + 28;
    loadEnd = headAt + 6 + widest(PanelRow::what, WIDEST_NAME) + 14 + widest(PanelRow::load, 1000);
    width = Math.max(loadEnd + 6, HEADING);
    Difference difference = revisions.ofPanel(key);
    String was = revisions.was(Thing.Kind.PANEL, key);
    String title = "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse("");
    double tall = was.isEmpty() ? 37 : 51;
    difference.ground(SIGNS - 4, -6, width - SIGNS + 4, tall).forEach(sketch::add);
    difference.sign(sketch, SIGNS, 8);
    sketch.fitted(0, 12, title, 13, true, Anchor.START, HEADING - 20);
    sketch.fitted(0, 26, facts(), SMALL, false, Anchor.START, HEADING - 20);
    if (!was.isEmpty()) {
      sketch.fitted(0, 40, was, SMALL, false, Anchor.START, width - 8);
    }
    entry = tall + 28;
  }

  /** @param y of each panel that this one feeds, by its key */
  record Drawn(Sketch sketch, double width, double height, double entry, Map<String, Double> exits, Map<String, Difference> feeders) {}

  static Drawn of(Revisions revisions, String key) {
    return new DifferencePanel(revisions, key).draw();
  }

  private double widest(Function<PanelRow, String> text, double most) {
    return Math.min(most, rows.stream().mapToDouble(r -> Fit.width(text.apply(r.row()), SIZE, true)).max().orElse(0));
  }

  private String main() {
    return panel.main().map(m -> BreakerText.main(m) + m.interrupting().map(k -> ", " + k).orElse("")).orElse("no main");
  }

  private String facts() {
    return panel.system().text() + panel.busRating().map(b -> ", bus " + b).orElse("") + panel.slotCount().map(s -> ", " + s + " slots").orElse("")
        + (panel.bonded() ? ", neutral and ground joined here" : ", neutral and ground apart");
  }

  private Drawn draw() {
    Map<String, Double> exits = new HashMap<>();
    Map<String, Difference> feeders = new LinkedHashMap<>();
    double y = entry + 30;
    double last = entry;
    Sketch lines = new Sketch();
    for (DifferenceRow row : rows) {
      double tall = ROW - 2 + (row.was().isEmpty() ? 0 : WAS);
      row.difference().ground(SIGNS - 4, y - ROW / 2 + 1, width - SIGNS + 4, tall).forEach(sketch::add);
      row.difference().sign(lines, SIGNS, y);
      line(lines, row, y);
      if (!row.was().isEmpty()) {
        lines.fitted(wall + 8, y + 3.2 + WAS, row.was(), SMALL, false, Anchor.START, width - wall - 14);
      }
      if (!row.panel().isEmpty() && (row.difference() != Difference.REMOVED || !exits.containsKey(row.panel()))) {
        exits.put(row.panel(), y);
        feeders.put(row.panel(), row.difference());
      }
      last = y;
      y += tall + 2;
    }
    bars(last);
    sketch.add(lines, 0, 0);
    return new Drawn(sketch, width, y, entry, exits, feeders);
  }

  private void bars(double last) {
    sketch.box(0, entry - 24, wall, last + 12 - (entry - 24), Stroke.DASHED, Fill.NONE);
    sketch.line(0, entry, 6, entry);
    panel.main().ifPresentOrElse(
        main -> {
          switch (main.kind()) {
            case BREAKER -> Symbols.breaker(sketch, 6, entry);
            case FUSE -> Symbols.fuse(sketch, 6, entry);
            case SWITCH -> Symbols.blade(sketch, 6, entry);
            case LUGS -> sketch.line(6, entry, 6 + Symbols.DEVICE, entry);
          }
        },
        () -> sketch.line(6, entry, 6 + Symbols.DEVICE, entry));
    sketch.line(6 + Symbols.DEVICE, entry, lastBar, entry);
    for (int i = 0; i < panel.legs().size(); i++) {
      double x = bars + BAR_GAP * i;
      sketch.line(x, entry, x, last + 6, Stroke.THICK).dot(x, entry);
      sketch.text(x, entry - 9, panel.legs().get(i).name(), SIZE, true, Anchor.MIDDLE);
    }
    sketch.text(lastBar + 12, entry + 3.6, main(), SIZE);
  }

  private void line(Sketch to, DifferenceRow difference, double y) {
    PanelRow row = difference.row();
    Stroke stroke = difference.difference().line();
    text(to, 14 + slots, y, row.slots(), Anchor.END);
    text(to, 14 + slots + 10, y, row.legs(), Anchor.START);
    double start = lastBar;
    for (Leg leg : row.taps()) {
      double x = bars + BAR_GAP * Math.max(0, panel.legs().indexOf(leg));
      // What is gone is tapped no longer: a ring, not a dot.
      to.add(new Shape.Circle(x, y, 2.6, Stroke.THIN, difference.difference() == Difference.REMOVED ? Fill.PAPER : Fill.INK));
      start = Math.min(start, x);
    }
    to.line(start, y, breaker, y, stroke);
    if (row.breaker().device() == Breaker.Device.FUSE) {
      Symbols.fuse(to, breaker, y);
    } else {
      Symbols.breaker(to, breaker, y);
    }
    text(to, ratingAt, y, row.rating(), Anchor.START);
    if (!row.leaves()) {
      to.fitted(wiringAt, y + 3.6, row.what(), SIZE, false, Anchor.START, WIDEST_NAME);
      return;
    }
    to.line(ratingAt + Fit.width(row.rating(), SIZE, false) + 5, y, wiringAt - 5, y, stroke);
    to.fitted(wiringAt, y + 3.6, row.wiring(), SIZE, false, Anchor.START, WIDEST_WIRING);
    double wiringEnd = wiringAt + Math.min(WIDEST_WIRING, Fit.width(row.wiring(), SIZE, false)) + 5;
    boolean feeder = !difference.panel().isEmpty();
    to.line(wiringEnd, y, headAt - (feeder ? 0 : 8), y, stroke);
    to.fitted(headAt + 6, y + 3.6, row.what(), SIZE, true, Anchor.START, WIDEST_NAME);
    if (feeder) {
      double nameEnd = headAt + 6 + Math.min(WIDEST_NAME, Fit.width(row.what(), SIZE, true)) + 5;
      to.line(nameEnd, y, width, y, stroke);
    } else {
      Symbols.head(to, headAt, y);
      text(to, loadEnd, y, row.load(), Anchor.END);
    }
  }

  private static void text(Sketch to, double x, double y, String text, Anchor anchor) {
    if (!text.isEmpty()) {
      to.text(x, y + 3.6, text, SIZE, false, anchor);
    }
  }
}
