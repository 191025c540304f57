package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.Symbols;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Protection;
import wattle.model.Service;
import wattle.model.Source;
import wattle.model.Status;
import wattle.words.Caution;

/** The symbols that a one-line diagram uses, and no others. */
final class OneLineLegend {
  private final House house;
  private final List<Legend.Item> items = new ArrayList<>();

  private OneLineLegend(House house) {
    this.house = house;
  }

  static Legend of(House house) {
    return new OneLineLegend(house).legend();
  }

  private Legend legend() {
    boolean any = breakers().findAny().isPresent();
    item(any, 18, "tapped from this leg", s -> s.line(2, 7, 2, -7, Stroke.THICK).line(2, 0, 18, 0).dot(2, 0));
    item(
        breakers().anyMatch(b -> b.device() == Breaker.Device.BREAKER) || mains(MainDevice.Kind.BREAKER),
        Symbols.DEVICE, "breaker", s -> Symbols.breaker(s, 0, 0));
    item(
        breakers().anyMatch(b -> b.device() == Breaker.Device.FUSE) || mains(MainDevice.Kind.FUSE),
        Symbols.DEVICE, "fuse", s -> Symbols.fuse(s, 0, 0));
    item(mains(MainDevice.Kind.SWITCH), Symbols.DEVICE, "switch", s -> Symbols.blade(s, 0, 0));
    item(
        mains(MainDevice.Kind.TRANSFER), Symbols.DEVICE, "transfer switch: on its supply, or on its own source",
        s -> Symbols.changeover(s, 0, 0));
    item(any, 24, "a stroke for each hot; on the service run, for each wire", s -> {
      s.line(0, 0, 24, 0);
      Symbols.strokes(s, 8, 0, 2);
    });
    item(!house.services().isEmpty(), Symbols.METER, "meter", s -> Symbols.meter(s, 0, 0));
    item(sources(Source.Transformer.class), 40, "transformer", s -> Symbols.transformer(s, 1, 0));
    item(sources(Source.Generator.class), 24, "generator", s -> Symbols.generator(s, 0, 0));
    item(
        house.services().values().stream()
            .anyMatch(v -> v.source().filter(x -> x instanceof Source.Transformer || x instanceof Source.Generator).isEmpty()),
        18, "supply", s -> s.line(8, 0, 18, 0).add(new wattle.emit.media.drawing.Shape.Circle(4, 0, 4, Stroke.THIN, Fill.PAPER)));
    item(
        house.services().values().stream().map(Service::electrodes).anyMatch(e -> !e.isEmpty()),
        18, "grounding electrode", s -> Symbols.earth(s, 9, -8));
    item(breakers().anyMatch(b -> b.status() == Status.TO_REMOVE), 24, "to be removed", s -> s.line(0, 0, 24, 0, Stroke.DASHED));
    List<String> notes = new ArrayList<>();
    notes.add(abbreviations(house) + "Length: from the panel to the farthest box. VA: all connected load.");
    notes.add(Caution.LONG);
    return new Legend(items, notes);
  }

  /** What the short words for protection mean, where a breaker has it. */
  private static String abbreviations(House house) {
    StringBuilder words = new StringBuilder();
    if (has(house, Protection.ARC_FAULT)) {
      words.append("AFCI: opens on an arc fault. ");
    }
    if (has(house, Protection.GROUND_FAULT)) {
      words.append("GFCI: opens on a ground fault. ");
    }
    return words.toString();
  }

  private static boolean has(House house, Protection protection) {
    return house.panels().values().stream().flatMap(p -> p.breakers().stream()).anyMatch(b -> b.protections().contains(protection));
  }

  private Stream<Breaker> breakers() {
    return house.panels().values().stream().flatMap(p -> p.breakers().stream());
  }

  private boolean mains(MainDevice.Kind kind) {
    return house.panels().values().stream().flatMap(p -> p.main().stream()).anyMatch(m -> m.kind() == kind);
  }

  private boolean sources(Class<? extends Source> kind) {
    return house.services().values().stream().flatMap(s -> s.source().stream()).anyMatch(kind::isInstance);
  }

  private void item(boolean used, double width, String words, Consumer<Sketch> sign) {
    if (used) {
      Sketch sketch = new Sketch();
      sign.accept(sketch);
      items.add(new Legend.Item(sketch.shapes(), width, words));
    }
  }
}
