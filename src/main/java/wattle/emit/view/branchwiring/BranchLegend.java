package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wattle.emit.media.drawing.Insulation;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Section;
import wattle.words.Caution;

/** The conductors that a branch has, and the signs of its boxes. */
final class BranchLegend {
  private BranchLegend() {}

  /** The signs that are used in the boxes of branches. */
  static Legend of(List<Branch> branches, List<BoxCard> cards) {
    Set<Fill> screws = EnumSet.noneOf(Fill.class);
    List<Shape> shapes = cards.stream().flatMap(c -> c.sketch().shapes().stream()).toList();
    shapes.stream().filter(s -> s instanceof Shape.Circle).forEach(s -> screws.add(((Shape.Circle) s).fill()));
    boolean connectors = shapes.stream().anyMatch(s -> s instanceof Shape.Box b && b.corner() == BoxCard.CONNECTOR);
    boolean caps = shapes.stream().anyMatch(s -> s instanceof Shape.Box b && b.fill() == Fill.INK);
    boolean open = cards.stream().anyMatch(BoxCard::hasOpenTerminal);
    Map<Insulation, String> seen = new EnumMap<>(Insulation.class);
    for (Section section : branches.stream().flatMap(b -> b.sections().stream()).toList()) {
      section.wiring().wires().forEach(w -> seen.putIfAbsent(Insulation.of(w.color()), w.color()));
      for (ConductorUse use : section.conductors()) {
        seen.putIfAbsent(Net.insulation(use), use.reidentified() ? "white, marked as a hot at both ends" : use.wire().color());
      }
    }
    List<Legend.Item> items = new ArrayList<>();
    seen.forEach((insulation, words) -> items.add(new Legend.Item(new Sketch().wire(insulation, 0, 0, 34, 0).shapes(), 34, words)));
    items.add(new Legend.Item(new Sketch().wire(Insulation.SHEATH, 0, 0, 34, 0).shapes(), 34, "cable"));
    if (connectors) {
      Sketch connector = new Sketch().add(new Shape.Box(0, -7, 34, 14, BoxCard.CONNECTOR, Stroke.THIN, Fill.SHADE));
      connector.text(17, 3.4, "3", 9, true, Shape.Anchor.MIDDLE);
      items.add(new Legend.Item(connector.shapes(), 34, "wire connector, with the number of wires in it"));
    }
    if (caps) {
      items.add(new Legend.Item(new Sketch().add(new Shape.Box(0, -5, 10, 10, 3, Stroke.THIN, Fill.INK)).shapes(), 10, "capped"));
    }
    screw(items, screws, Fill.BRASS, "brass screw");
    screw(items, screws, Fill.SILVER, "silver screw");
    screw(items, screws, Fill.GREEN, "green screw");
    screw(items, screws, Fill.DARK, "dark screw (common)");
    screw(items, screws, Fill.PAPER, "lead or marked terminal");
    screw(items, screws, Fill.SHADE, "terminal of a breaker or bar");
    if (open) {
      Sketch crossed = new Sketch().add(new Shape.Circle(5, 0, 4.4, Stroke.THIN, Fill.PAPER)).line(2, -3, 8, 3).line(2, 3, 8, -3);
      items.add(new Legend.Item(crossed.shapes(), 10, "not joined here"));
    }
    return new Legend(
        items,
        List.of(
            "A wire from a connector to a screw is a pigtail of the same size as the cable. Wires that cross without a connector are "
                + "not joined. A metal box is also joined to the ground.",
            Caution.LONG));
  }

  private static void screw(List<Legend.Item> items, Set<Fill> used, Fill fill, String words) {
    if (!used.contains(fill)) {
      return;
    }
    items.add(new Legend.Item(new Sketch().add(new Shape.Circle(5, 0, 4.4, Stroke.THIN, fill)).shapes(), 10, words));
  }
}
