package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.Section;

/**
 * One box, drawn, with its upper left corner at the origin.
 *
 * @param entry height at which the middle of the arriving cable lies
 * @param leaving the cables onward, from the top
 * @param exits the height of the middle of each
 * @param crossings how often wires cross in it
 * @param hasOpenTerminal whether a terminal of a device is joined to nothing
 */
record BoxCard(Sketch sketch, double width, double height, double entry, List<Section> leaving, List<Double> exits, int crossings,
    boolean hasOpenTerminal) {
  /** How round the ends of a wire connector are. */
  static final double CONNECTOR = 7;

  private static final double NOTE = 9.5;

  static BoxCard of(Branch branch, BoxWiring read, Spacing spacing) {
    Function<Net.Conductor, String> labels = c -> ConductorLabel.of(branch, c.use());
    String facts = String.join(", ", read.facts());
    double least = 120;
    for (String text : List.of(read.title(), facts)) {
      least = Math.max(least, Math.min(320, Fit.width(text, 12, true)) + 24);
    }
    for (String note : read.notes()) {
      least = Math.max(least, Math.min(420, Fit.width(note, NOTE, true)) + 24);
    }
    BoxWiring box = read;
    BoxLayout layout = layout(box, labels, least, spacing);
    for (int cable = 1; cable < read.leaving().size() && layout.crossings() > 0; cable++) {
      BoxWiring otherwise = read.withFirst(cable);
      BoxLayout other = layout(otherwise, labels, least, spacing);
      if (other.crossings() < layout.crossings()) {
        box = otherwise;
        layout = other;
      }
    }
    return drawn(box, layout, spacing);
  }

  private static BoxLayout layout(BoxWiring box, Function<Net.Conductor, String> labels, double least, Spacing spacing) {
    Measures measures = new Measures(box, labels, least, spacing);
    return new BoxLayout(box, Orders.best(box, o -> new BoxLayout(box, o, measures).crossings()), measures);
  }

  private static BoxCard drawn(BoxWiring box, BoxLayout layout, Spacing spacing) {
    Sketch sketch = new Sketch();
    double width = layout.width();
    double height = layout.bottom() + 14 * box.notes().size();
    sketch.add(new Shape.Box(0, 0, width, height, 6, box.boxed() ? Stroke.THIN : Stroke.DASHED, Fill.NONE));
    sketch.fitted(12, 19, box.title(), 12, true, Anchor.START, width - 20);
    sketch.fitted(12, 34, String.join(", ", box.facts()), NOTE, false, Anchor.START, width - 20);
    layout.routes().ways().stream().filter(w -> w.wire().corners().size() == 2 && isLevel(w.wire())).forEach(w -> sketch.add(w.wire()));
    layout.routes().bars()
        .forEach(b -> sketch.add(new Shape.Box(b.left(), b.y() - 7, b.right() - b.left(), 14, CONNECTOR, Stroke.THIN, Fill.SHADE)));
    layout.routes().ways().stream().filter(w -> !(w.wire().corners().size() == 2 && isLevel(w.wire()))).forEach(w -> sketch.add(w.wire()));
    layout.placed().forEach(p -> fixture(sketch, box, layout, p));
    layout.routes().bars()
        .forEach(b -> sketch.text(b.countAt(), b.y() + 3.4, Integer.toString(b.net().ends()), BoxLayout.LABEL, true, Anchor.MIDDLE));
    double inset = spacing.wall() + 1.5;
    for (BoxLayout.Pin pin : layout.pins()) {
      boolean left = pin.cable() == 0;
      double room = ConductorLabel.width(pin.label());
      sketch.fitted(left ? inset : width - inset, pin.y() - 5.5, pin.label(), ConductorLabel.SIZE, false, left ? Anchor.START : Anchor.END,
          room + 0.5);
    }
    for (int n = 0; n < box.notes().size(); n++) {
      sketch.fitted(12, layout.bottom() + 14 * n + 4, box.notes().get(n), NOTE, true, Anchor.START, width - 20);
    }
    caps(sketch, layout);
    boolean open = box.fixtures().stream().flatMap(f -> f.terminals().stream()).anyMatch(t -> !box.isJoined(t));
    double entry = sheath(sketch, layout, 0, 0);
    List<Double> exits = new ArrayList<>();
    for (int cable = 1; cable <= box.leaving().size(); cable++) {
      exits.add(sheath(sketch, layout, cable, width));
    }
    return new BoxCard(sketch, width, height, entry, box.leaving(), exits, layout.crossings(), open);
  }

  private static boolean isLevel(Shape.Wire wire) {
    return wire.corners().get(0).y() == wire.corners().get(1).y();
  }

  /** The end of a cable's jacket at the wall, as high as its conductors lie apart; its middle comes back. */
  private static double sheath(Sketch sketch, BoxLayout layout, int cable, double x) {
    List<Double> heights = layout.pins().stream().filter(p -> p.cable() == cable).map(BoxLayout.Pin::y).sorted().toList();
    if (heights.isEmpty()) {
      return 0;
    }
    double top = heights.get(0) - 6;
    double bottom = heights.get(heights.size() - 1) + 6;
    sketch.add(new Shape.Box(x - 4, top, 8, bottom - top, 3, Stroke.THIN, Fill.SHADE));
    return (top + bottom) / 2;
  }

  private static void caps(Sketch sketch, BoxLayout layout) {
    for (Routes.Way way : layout.routes().ways()) {
      if (way.net() instanceof BoxLayout.Pin) {
        Shape.Corner end = way.wire().corners().get(way.wire().corners().size() - 1);
        sketch.add(new Shape.Box(end.x() - 5, end.y() - 5, 10, 10, 3, Stroke.THIN, Fill.INK));
      }
    }
  }

  private static void fixture(Sketch sketch, BoxWiring box, BoxLayout layout, BoxLayout.Placed placed) {
    double top = layout.bodyTop();
    double bottom = layout.bodyBottom();
    Fixture fixture = placed.fixture();
    Stroke stroke = fixture.dashed() ? Stroke.DASHED : Stroke.THIN;
    sketch.add(new Shape.Box(placed.x(), top, placed.width(), bottom - top, 4, stroke, Fill.PAPER));
    double y = top + (placed.above().isEmpty() ? 15 : 30);
    double middle = placed.x() + placed.width() / 2;
    sketch.fitted(middle, y, fixture.title(), BoxLayout.SIZE, true, Anchor.MIDDLE, placed.width() - 8);
    for (String line : fixture.lines()) {
      y += 13;
      sketch.fitted(middle, y, line, BoxLayout.LABEL, false, Anchor.MIDDLE, placed.width() - 8);
    }
    if (fixture.tab() != Fixture.Tab.NONE) {
      tab(sketch, placed, top);
    }
    terminals(sketch, box, placed.above(), placed.aboveX(), top, top + 15);
    terminals(sketch, box, placed.below(), placed.belowX(), bottom, bottom - 8);
  }

  /** The tab lies between the brass screws; broken off it has a gap in the middle. */
  private static void tab(Sketch sketch, BoxLayout.Placed placed, double y) {
    double left = placed.aboveX().get(0);
    double right = placed.aboveX().get(placed.aboveX().size() - 1);
    if (placed.fixture().tab() == Fixture.Tab.BROKEN && right > left) {
      double middle = (left + right) / 2;
      sketch.line(left, y, middle - 6, y, Stroke.THICK).line(middle + 6, y, right, y, Stroke.THICK);
      sketch.add(new Shape.Box(middle - 6, y - 3, 12, 6, 0, Stroke.DASHED, Fill.PAPER));
    }
  }

  private static void terminals(Sketch sketch, BoxWiring box, List<Terminal> terminals, List<Double> middles, double y, double textY) {
    for (int t = 0; t < terminals.size(); t++) {
      Terminal terminal = terminals.get(t);
      Fill fill = switch (terminal.make()) {
        case BRASS -> Fill.BRASS;
        case DARK -> Fill.DARK;
        case SILVER -> Fill.SILVER;
        case GREEN -> Fill.GREEN;
        case LEAD -> Fill.PAPER;
        case CLAMP -> Fill.SHADE;
      };
      double x = middles.get(t);
      sketch.add(new Shape.Circle(x, y, 4.4, Stroke.THIN, fill));
      if (!box.isJoined(terminal)) {
        sketch.line(x - 3, y - 3, x + 3, y + 3).line(x - 3, y + 3, x + 3, y - 3);
      }
      sketch.text(x, textY, terminal.name(), BoxLayout.LABEL, false, Anchor.MIDDLE);
    }
  }
}
