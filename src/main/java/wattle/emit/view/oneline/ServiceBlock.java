package wattle.emit.view.oneline;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.model.Electrode;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.model.Source;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** The supply: what feeds it, the run to the house, its meter, the earth electrodes. */
final class ServiceBlock {
  private static final double SIZE = 10.5;
  private static final double LINE = 62;
  private static final double WIDEST = 420;

  private ServiceBlock() {}

  static Block of(Service service, List<Panel> fed, boolean metered, String id, UnitSystem units) {
    Sketch sketch = new Sketch();
    String title = "Service " + service.name() + service.label().map(l -> "  " + l).orElse("");
    String facts = service.system().words() + service.rating().map(r -> ", " + r).orElse("");
    String source = service.source().map(ServiceBlock::source).orElse("source not stated");
    String run = service.run().map(r -> r.wiring().text() + ", "
        + r.length().map(l -> PanelRow.length(l.si(), units)).orElse("? " + units.shown(Units.METER).symbol())).orElse("");
    double width = Math.max(190, Fit.width(run, SIZE, false) + 20);
    for (String text : List.of(title, facts, source)) {
      width = Math.max(width, Math.min(WIDEST, Fit.width(text, 13, true)) + 20);
    }
    sketch.add(new Shape.Spot(0, 3, 10, 9, service.name()));
    sketch.fitted(0, 12, title, 13, true, Anchor.START, WIDEST);
    sketch.fitted(0, 29, facts, SIZE, false, Anchor.START, WIDEST);
    double afterSource = sourceSymbol(sketch, service);
    double meter = width - 44;
    if (metered) {
      sketch.line(afterSource, LINE, meter, LINE).line(meter + Symbols.METER, LINE, width, LINE);
      Symbols.meter(sketch, meter, LINE);
    } else {
      sketch.line(afterSource, LINE, width, LINE);
    }
    int wires = service.run().map(r -> r.wiring().wires().size()).orElse(0);
    Symbols.strokes(sketch, afterSource + 14, LINE, wires);
    sketch.fitted(0, LINE + 26, source, SIZE, false, Anchor.START, WIDEST);
    double y = LINE + 26;
    if (!run.isEmpty()) {
      y += 15;
      sketch.text(0, y, run, SIZE);
    }
    double bottom = electrodes(sketch, service, width - 12, y + 12);
    BlockLabel label = new BlockLabel(width);
    label.row(LINE + 9, "out", title + "  " + facts).row(Math.max(bottom, y + 8), "", source + "  " + run);
    Map<String, Block.Exit> exits = new HashMap<>();
    fed.forEach(p -> exits.put(p.name(), new Block.Exit("out", LINE)));
    return new Block(id, sketch, width, Math.max(bottom, y + 8), LINE, exits, label.toString());
  }

  /** Draws what stands at the far end of the run; the end of its symbol on the line comes back. */
  private static double sourceSymbol(Sketch sketch, Service service) {
    if (service.source().isPresent() && service.source().get() instanceof Source.Generator) {
      Symbols.generator(sketch, 0, LINE);
      return 24;
    }
    if (service.source().isPresent() && service.source().get() instanceof Source.Transformer) {
      sketch.line(0, LINE, 8, LINE);
      Symbols.transformer(sketch, 6, LINE);
      return 40;
    }
    sketch.add(new wattle.emit.media.drawing.Shape.Circle(4, LINE, 4, Stroke.THIN, Fill.PAPER));
    return 8;
  }

  private static String source(Source source) {
    if (source instanceof Source.Transformer t) {
      return "transformer " + t.rating() + ", " + t.impedance();
    }
    if (source instanceof Source.Available a) {
      return "available fault current " + a.faultCurrent();
    }
    if (source instanceof Source.Generator g) {
      return "generator " + g.rating() + g.impedance().map(z -> ", " + z).orElse("");
    }
    throw new AssertionError(source);
  }

  private static double electrodes(Sketch sketch, Service service, double tap, double from) {
    double y = from;
    double last = LINE;
    for (Electrode electrode : service.electrodes()) {
      String words = electrode.kind() + electrode.conductor().map(w -> " by " + w.text()).orElse("")
          + electrode.resistance().map((Quantity r) -> ", " + r).orElse("");
      sketch.line(tap, last, tap, y).line(tap - 18, y, tap, y);
      Symbols.earth(sketch, tap - 18, y);
      sketch.fitted(tap - 36, y + 10, words, SIZE, false, Anchor.END, tap - 40);
      last = y;
      y += 26;
    }
    if (!service.electrodes().isEmpty()) {
      sketch.dot(tap, LINE);
    }
    return service.electrodes().isEmpty() ? from : y;
  }
}
