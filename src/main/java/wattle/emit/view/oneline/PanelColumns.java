package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.words.BondWords;
import wattle.words.BreakerWords;

/** Where the columns of a panel stand, as wide as its rows need them; and the drawing of a row, the bars and the way in. */
final class PanelColumns {
  static final double SIZE = 10.5;

  private static final double LEFT = 6;
  private static final double BAR_GAP = 14;
  private static final double WIDEST_NAME = 220;

  /** Wiring that is longer, such as raceway with its conductors, stands in lines. */
  private static final double WIDEST_WIRING = 130;

  private static final int MOST_LINES = 3;

  /** Likewise, of what is said of the main. */
  private static final double WIDEST_MAIN = 112;

  private static final double LINE = 11.5;

  /** What a row has above and beneath a single line. */
  private static final double SPARE = 3.5;

  private static final double STROKES = 24;
  private static final double METER = 24;

  /** Of the arrow between the name of a feeder and the sheet on which it goes on. */
  private static final double ONWARD = 24;

  private final Panel panel;
  private final double slots;
  private final double bars;
  private final double lastBar;
  private final double breaker;
  private final double ratingAt;
  private final double wall;
  private final double wiringAt;
  private final double headAt;
  private final int most;
  private final double loadEnd;

  /** @param leastLoad width that the column of loads has at least */
  PanelColumns(Panel panel, List<PanelRow> rows, double leastLoad) {
    this.panel = panel;
    slots = widest(rows, PanelRow::slots);
    bars = Math.max(LEFT + slots + 10 + widest(rows, PanelRow::legs) + 10, 46);
    lastBar = bars + BAR_GAP * (panel.legs().size() - 1);
    breaker = lastBar + 11;
    ratingAt = breaker + Symbols.DEVICE + 6;
    wall = Math.max(ratingAt + widest(rows, PanelRow::rating),
        besideBars() + mainLines().stream().mapToDouble(l -> Fit.width(l, SIZE, false)).max().orElse(0)) + 7;
    wiringAt = wall + STROKES + (PanelRow.hasMeters(panel) ? METER : 0);
    headAt = wiringAt + rows.stream().mapToDouble(PanelColumns::wiring).max().orElse(0) + 19;
    most = rows.stream().mapToInt(r -> wiringLines(r).size()).max().orElse(1);
    // A long name has room where its own load is short.
    loadEnd = headAt + 6 + rows.stream().mapToDouble(r -> nameAndLoad(r, leastLoad)).max().orElse(leastLoad);
  }

  /** What is added to the height of each row, so that the lines of wiring of one do not touch those of the next. */
  double more() {
    return most > 1 ? (most - 1) * LINE - SPARE : 0;
  }

  /** The wiring of a row: one line, or a few. */
  static List<String> wiringLines(PanelRow row) {
    double width = WIDEST_WIRING;
    while (Fit.lines(row.wiring(), SIZE, width).size() > MOST_LINES) {
      width += 10;
    }
    return row.wiring().isEmpty() ? List.of() : Fit.lines(row.wiring(), SIZE, width);
  }

  private static double wiring(PanelRow row) {
    return wiringLines(row).stream().mapToDouble(l -> Fit.width(l, SIZE, false)).max().orElse(0);
  }

  private static double nameAndLoad(PanelRow row, double leastLoad) {
    double name = Math.min(WIDEST_NAME, Fit.width(row.what(), SIZE, true));
    double load = Fit.width(row.load(), SIZE, false);
    return row.panel().isEmpty() ? name + 8 + load : name + ONWARD + Math.max(load, leastLoad);
  }

  private static double widest(List<PanelRow> rows, Function<PanelRow, String> text) {
    return rows.stream().mapToDouble(r -> Fit.width(text.apply(r), SIZE, false)).max().orElse(0);
  }

  /** The right side of the enclosure. */
  double wall() {
    return wall;
  }

  /** Where words beside the bars begin. */
  private double besideBars() {
    return lastBar + 12;
  }

  /** The right end of the column of loads. */
  double loadEnd() {
    return loadEnd;
  }

  /** Name and label of the panel. */
  String title() {
    return "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse("");
  }

  /** Voltage, bus, slots, and whether neutral and ground are joined. */
  String facts() {
    return Stream.of(
        Stream.of(panel.system().text()), panel.busRating().map(b -> "bus " + b).stream(),
        panel.slotCount().map(s -> s + " slots").stream(),
        Stream.of(BondWords.of(panel)))
        .flatMap(s -> s)
        .collect(Collectors.joining(", "));
  }

  private List<String> mainLines() {
    String main = panel.main().map(BreakerWords::main).orElse("no main");
    String interrupting = panel.main().flatMap(MainDevice::interrupting).map(Object::toString).orElse("");
    String line = interrupting.isEmpty() ? main : main + ", " + interrupting;
    if (interrupting.isEmpty() || Fit.width(line, SIZE, false) <= WIDEST_MAIN) {
      return Fit.lines(line, SIZE, WIDEST_MAIN);
    }
    List<String> lines = new ArrayList<>(Fit.lines(main + ",", SIZE, WIDEST_MAIN));
    lines.add(interrupting);
    return lines;
  }

  /** The enclosure, and one upright bar for each leg. */
  void bars(Sketch sketch, double top, double last) {
    sketch.box(0, top - 24, wall, last + 12 - (top - 24), Stroke.DASHED, Fill.NONE);
    for (int i = 0; i < panel.legs().size(); i++) {
      double x = bars + BAR_GAP * i;
      sketch.line(x, top, x, last + 6, Stroke.THICK);
      sketch.text(x, top - 9, panel.legs().get(i).name(), SIZE, true, Anchor.MIDDLE);
    }
  }

  /** Where the supply comes in: a line from the left through the main to every bar, and what is known of it. */
  void entry(Sketch sketch, double y) {
    boolean device = panel.main().isPresent() && panel.main().get().kind() != MainDevice.Kind.LUGS;
    sketch.line(0, y, 6, y).line(6 + (device ? Symbols.DEVICE : 0), y, lastBar, y);
    panel.main().ifPresent(main -> {
      switch (main.kind()) {
        case BREAKER -> Symbols.breaker(sketch, 6, y);
        case FUSE -> Symbols.fuse(sketch, 6, y);
        case SWITCH -> Symbols.blade(sketch, 6, y);
        case TRANSFER -> Symbols.changeover(sketch, 6, y);
        case LUGS -> {
        }
      }
    });
    for (int i = 0; i < panel.legs().size(); i++) {
      sketch.dot(bars + BAR_GAP * i, y);
    }
    List<String> words = mainLines();
    for (int i = 0; i < words.size(); i++) {
      text(sketch, besideBars(), y + (i - (words.size() - 1) / 2.0) * LINE, words.get(i), Anchor.START);
    }
  }

  /**
   * A row, up to its name; of a branch also the arrow before it and its load.
   *
   * @param tap how the joints to the bars are filled
   * @param feeds whether it feeds a panel, so that its line goes on behind its name
   * @return where the name ends, and the line of a feeder may go on
   */
  double row(Sketch sketch, PanelRow row, double y, Stroke stroke, Fill tap, boolean feeds) {
    text(sketch, LEFT + slots, y, row.slots(), Anchor.END);
    text(sketch, LEFT + slots + 10, y, row.legs(), Anchor.START);
    double start = lastBar;
    for (Leg leg : row.taps()) {
      double x = bars + BAR_GAP * Math.max(0, panel.legs().indexOf(leg));
      sketch.add(new Shape.Circle(x, y, 2.6, Stroke.THIN, tap));
      start = Math.min(start, x);
    }
    sketch.line(start, y, breaker, y, stroke);
    if (row.breaker().device() == Breaker.Device.FUSE) {
      Symbols.fuse(sketch, breaker, y);
    } else {
      Symbols.breaker(sketch, breaker, y);
    }
    text(sketch, ratingAt, y, row.rating(), Anchor.START);
    if (!row.leaves()) {
      sketch.fitted(wiringAt, y + 3.6, row.what(), SIZE, false, Anchor.START, Math.max(WIDEST_NAME, loadEnd - wiringAt));
      return wiringAt;
    }
    double leaves = ratingAt + Fit.width(row.rating(), SIZE, false) + 5;
    if (PanelRow.hasMeters(panel) && !row.panel().isEmpty()) {
      double meter = wall + STROKES - 2;
      sketch.line(leaves, y, meter, y, stroke).line(meter + Symbols.METER, y, wiringAt - 5, y, stroke);
      Symbols.meter(sketch, meter, y);
    } else {
      sketch.line(leaves, y, wiringAt - 5, y, stroke);
    }
    Symbols.strokes(sketch, wall + 6, y, row.breaker().poles().size());
    List<String> wiring = wiringLines(row);
    double line = y + 3.6 - (wiring.size() - 1) * LINE / 2;
    double wiringEnd = wiringAt;
    for (String words : wiring) {
      sketch.text(wiringAt, line, words, SIZE);
      wiringEnd = Math.max(wiringEnd, wiringAt + Fit.width(words, SIZE, false) + 5);
      line += LINE;
    }
    sketch.line(wiringEnd, y, headAt - (feeds ? 0 : 8), y, stroke);
    // A name may go on to the load of its own row, which is seldom as wide as the widest.
    double room = feeds ? WIDEST_NAME : loadEnd - Fit.width(row.load(), SIZE, false) - 6 - (headAt + 6);
    sketch.fitted(headAt + 6, y + 3.6, row.what(), SIZE, true, Anchor.START, Math.max(WIDEST_NAME, room));
    if (!feeds) {
      Symbols.head(sketch, headAt, y);
      text(sketch, loadEnd, y, row.load(), Anchor.END);
    }
    return headAt + 6 + Math.min(WIDEST_NAME, Fit.width(row.what(), SIZE, true)) + 5;
  }

  private static void text(Sketch sketch, double x, double y, String text, Anchor anchor) {
    if (!text.isEmpty()) {
      sketch.text(x, y + 3.6, text, SIZE, false, anchor);
    }
  }
}
