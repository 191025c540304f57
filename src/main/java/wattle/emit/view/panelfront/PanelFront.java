package wattle.emit.view.panelfront;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.model.House;
import wattle.model.Panel;

/**
 * Draws the front of each panel of a house. A breaker of several poles whose slots lie under each other is one box over
 * all of them; where they do not, each pole is a box that names the slots it moves with. Slots without a breaker are
 * outlined in dashes and say that they are empty.
 */
public final class PanelFront implements View {
  private static final double APART = 60;
  private static final double AROUND_ONE = 12;
  /** Where a row of panels ends: about as wide as three large ones. */
  public static final double MOST_ACROSS = 3600;

  private final House house;
  private final Map<String, BreakerState> states;

  public PanelFront(House house) {
    this(house, Map.of());
  }

  /** @param states of breakers and mains that are not simply on, by name, such as {@code P/2+4} and {@code main P} */
  public PanelFront(House house, Map<String, BreakerState> states) {
    this.house = house;
    this.states = Map.copyOf(states);
  }

  /** One panel, in a width if it can be made so narrow. */
  public Drawing drawing(Panel panel, double width) {
    Sketch sketch = new PanelPart(house, panel, PanelRows.all(panel), width - 2 * AROUND_ONE, states).sketch();
    String words = "Front of panel " + panel.name() + " with " + PanelRows.slots(panel) + " slots and " + panel.breakers().size()
        + " breakers.";
    return sketch.drawing(AROUND_ONE, "Panel " + panel.name(), words);
  }

  /** All panels, side by side and row by row. */
  public Drawing drawing() {
    return drawing(MOST_ACROSS);
  }

  /** @param most width of a row of panels, of which there is at least one in a row */
  public Drawing drawing(double most) {
    Sketch sketch = new Sketch();
    double x = 0;
    double y = 0;
    double tallest = 0;
    for (Panel panel : house.panels().values()) {
      Sketch one = new PanelPart(house, panel, PanelRows.all(panel), Double.MAX_VALUE, states).sketch();
      if (x > 0 && x + one.bounds().width() > most) {
        x = 0;
        y += tallest + APART;
        tallest = 0;
      }
      sketch.add(one, x - one.bounds().left(), y - (y > 0 ? one.bounds().top() : 0));
      x += one.bounds().width() + APART;
      tallest = Math.max(tallest, one.bounds().height());
    }
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    return new Plate(sketch.shapes(), legend(), title(), plan, scale(), description()).drawing();
  }

  @Override
  public String title() {
    return "Panel front";
  }

  @Override
  public String scale() {
    return Plate.NO_SCALE;
  }

  @Override
  public Legend legend() {
    return PanelLegend.of(house);
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    List<Piece> pieces = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      for (PanelRows rows : PanelRows.within(panel, height)) {
        pieces.add(new Piece(rows.piece(), new PanelPart(house, panel, rows, width, states).sketch().shapes()));
      }
    }
    return pieces;
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      words.add("panel " + panel.name() + " with " + PanelRows.slots(panel) + " slots and " + panel.breakers().size() + " breakers");
    }
    return String.join("; ", words) + ".";
  }
}
