package wattle.emit.view.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.loads.ConnectedLoads;
import wattle.loads.LegLoads;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.words.Caution;

/** Draws the current of each leg of each panel, with all that is connected on, as bars on one scale, with the rating of the main. */
public final class LegsPlot implements View {
  private static final double WIDE = 400;
  private static final double ROW = 26;
  private static final double BAR = 16;
  private static final double LEFT = 90;
  private static final double TYPE = 10;

  private final House house;
  private final ConnectedLoads loads;
  private final LinearScale scale;

  private LegsPlot(House house, ConnectedLoads loads) {
    this.house = house;
    this.loads = loads;
    double most = 1;
    for (Panel panel : house.panels().values()) {
      LegLoads load = loads.panel(panel.name());
      most = Math.max(most, unplaced(panel, load));
      most = Math.max(most, load.heaviestAmperes(panel.system()));
      most = Math.max(most, mainAmperes(panel).orElse(0.0));
    }
    scale = new LinearScale(0, most * 1.02, 0, WIDE);
  }

  public static Drawing of(House house, ConnectedLoads loads) {
    LegsPlot plot = new LegsPlot(house, loads);
    List<Panel> all = List.copyOf(house.panels().values());
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    return new Plate(plot.part(all).shapes(), plot.legend(), plot.title(), plan, plot.scale(), plot.description()).drawing();
  }

  /** The bars for sheets: as many panels on each as there is room for. */
  public static View view(House house, ConnectedLoads loads) {
    return new LegsPlot(house, loads);
  }

  @Override
  public String title() {
    return "Load of each leg";
  }

  @Override
  public String scale() {
    return TripPlot.BY_AXES;
  }

  @Override
  public Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    items.add(new Legend.Item(new Sketch().box(0, -5, 24, 10, Stroke.THIN, Fill.SHADE).shapes(), 24, "connected load"));
    if (house.panels().values().stream().anyMatch(p -> mainAmperes(p).isPresent())) {
      items.add(new Legend.Item(new Sketch().line(0, 0, 24, 0, Stroke.DASHED).shapes(), 24, "rating of the main"));
    }
    if (house.panels().values().stream().anyMatch(this::isAboveMain)) {
      items.add(new Legend.Item(new Sketch().box(0, -5, 24, 10, Stroke.THICK, Fill.ALARM).shapes(), 24, "above the rating of the main"));
    }
    return new Legend(
        items,
        List.of(
            "Everything connected on at once, at nominal voltage; for the calculated load, see the load worksheet.",
            Caution.SHORT));
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    List<Piece> pieces = new ArrayList<>();
    List<Panel> own = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      List<Panel> longer = new ArrayList<>(own);
      longer.add(panel);
      if (!own.isEmpty() && part(longer).bounds().height() > height) {
        pieces.add(new Piece("legs " + pieces.size(), part(own).shapes()));
        own.clear();
      }
      own.add(panel);
    }
    pieces.add(new Piece("legs " + pieces.size(), part(own).shapes()));
    return pieces;
  }

  /** Some panels over one axis. */
  private Sketch part(List<Panel> panels) {
    Sketch sketch = new Sketch();
    double y = 0;
    for (Panel panel : panels) {
      y = panel(sketch, panel, y) + 20;
    }
    axis(sketch, y);
    return sketch;
  }

  private double panel(Sketch sketch, Panel panel, double top) {
    LegLoads load = loads.panel(panel.name());
    String title = "Panel " + panel.name() + panel.label().map(l -> "  " + l).orElse("");
    String balance = panel.legs().size() > 1
        ? "out of balance by " + Quantity.plain(load.imbalance(panel.system()) * 100, 2) + " %"
        : "";
    sketch.fitted(-LEFT, top, title, 12, true, Anchor.START, LEFT + WIDE + 100 - Fit.width(balance, TYPE, false) - 4);
    if (!balance.isEmpty()) {
      sketch.text(WIDE + 100, top, balance, TYPE, false, Anchor.END);
    }
    Optional<Double> main = mainAmperes(panel).map(scale::at);
    double y = top + (main.isPresent() ? 30 : 12);
    double first = y;
    List<String> names = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    List<String> words = new ArrayList<>();
    for (Leg leg : panel.legs()) {
      names.add("leg " + leg);
      values.add(load.amperes(leg, panel.system()));
      words.add(kilo(load.on(leg)) + ", " + amperes(load.amperes(leg, panel.system())));
    }
    if (load.unplaced() > 0) {
      names.add("on no leg yet");
      values.add(unplaced(panel, load));
      words.add(kilo(load.unplaced()));
    }
    for (int i = 0; i < names.size(); i++) {
      double end = scale.at(values.get(i));
      sketch.text(-8, y + BAR - 4, names.get(i), TYPE, false, Anchor.END);
      if (end > 0) {
        boolean above = main.isPresent() && end > main.get();
        sketch.box(0, y, end, BAR, above ? Stroke.THICK : Stroke.THIN, above ? Fill.ALARM : Fill.SHADE);
      }
      y += ROW;
    }
    double last = y - ROW + BAR + 4;
    sketch.line(0, first - 4, 0, last);
    main.ifPresent(x -> {
      sketch.line(x, first - 4, x, last, Stroke.DASHED);
      sketch.text(x, first - 8, "main " + amperes(mainAmperes(panel).orElseThrow()), TYPE, false, Anchor.MIDDLE);
    });
    for (int i = 0; i < names.size(); i++) {
      figure(sketch, first + i * ROW, scale.at(values.get(i)), main, words.get(i));
    }
    return y;
  }

  /** The figure stands behind its bar, or behind the mark of the main where that would run through it. */
  private void figure(Sketch sketch, double y, double end, Optional<Double> main, String words) {
    double wide = Fit.width(words, TYPE, false);
    double x = end + 6;
    boolean struck = main.isPresent() && main.get() > x - 3 && main.get() < x + wide + 3;
    sketch.text(struck ? main.get() + 6 : x, y + BAR - 4, words, TYPE);
  }

  private void axis(Sketch sketch, double y) {
    sketch.line(0, y, WIDE, y);
    for (double tick : scale.ticks(scale.step(6))) {
      sketch.line(scale.at(tick), y, scale.at(tick), y + 5);
      sketch.text(scale.at(tick), y + 18, amperes(tick), TYPE, false, Anchor.MIDDLE);
    }
  }

  private static double unplaced(Panel panel, LegLoads load) {
    return load.unplaced() / panel.system().legToNeutralVolts();
  }

  private static Optional<Double> mainAmperes(Panel panel) {
    return panel.main()
        .filter(m -> m.kind() == MainDevice.Kind.BREAKER || m.kind() == MainDevice.Kind.FUSE)
        .flatMap(MainDevice::rating)
        .map(Quantity::si);
  }

  private boolean isAboveMain(Panel panel) {
    LegLoads load = loads.panel(panel.name());
    double most = Math.max(load.heaviestAmperes(panel.system()), unplaced(panel, load));
    return mainAmperes(panel).filter(m -> most > m).isPresent();
  }

  private static String amperes(double amperes) {
    return Quantity.plain(amperes, 3) + " A";
  }

  private static String kilo(double voltAmperes) {
    return voltAmperes < 1000 ? Quantity.plain(voltAmperes, 3) + " VA" : Quantity.plain(voltAmperes / 1000, 3) + " kVA";
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      List<String> legs = panel.legs().stream().map(l -> kilo(loads.panel(panel.name()).on(l)) + " on leg " + l).toList();
      words.add("panel " + panel.name() + ": " + String.join(", ", legs));
    }
    return "Bars of connected load. " + String.join("; ", words) + ".";
  }
}
