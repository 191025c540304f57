package wattle.emit.view.panelfront;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.Protection;
import wattle.words.Caution;

/** The signs that the fronts of a house's panels use. */
final class PanelLegend {
  private PanelLegend() {}

  static Legend of(House house) {
    List<Legend.Item> items = new ArrayList<>();
    if (breakers(house).anyMatch(b -> b.poles().size() > 1)) {
      Sketch bar = new Sketch().add(new Shape.Box(0, -8, 34, 16, 3, Stroke.THIN, Fill.NONE)).line(27, -5, 27, 5, Stroke.THICK);
      items.add(new Legend.Item(bar.shapes(), 34, "handles that move together"));
    }
    if (house.panels().values().stream().anyMatch(PanelLegend::hasEmptySlot)) {
      Sketch empty = new Sketch().add(new Shape.Box(0, -8, 34, 16, 3, Stroke.DASHED, Fill.NONE));
      items.add(new Legend.Item(empty.shapes(), 34, "empty slot"));
    }
    StringBuilder letters = new StringBuilder("Letter of a row: its leg.");
    if (breakers(house).anyMatch(b -> b.protections().contains(Protection.ARC_FAULT))) {
      letters.append(" AFCI: opens on an arc fault.");
    }
    if (breakers(house).anyMatch(b -> b.protections().contains(Protection.GROUND_FAULT))) {
      letters.append(" GFCI: opens on a ground fault.");
    }
    return new Legend(
        items,
        List.of(
            letters.toString(),
            Caution.LONG));
  }

  private static Stream<Breaker> breakers(House house) {
    return house.panels().values().stream().flatMap(p -> p.breakers().stream());
  }

  private static boolean hasEmptySlot(Panel panel) {
    long taken = panel.breakers().stream().flatMap(b -> b.poles().stream()).map(p -> p.slot().number()).distinct().count();
    return taken < PanelRows.slots(panel);
  }
}
