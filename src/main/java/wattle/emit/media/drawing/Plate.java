package wattle.emit.media.drawing;

import java.util.List;

/**
 * A view in one piece: what it shows, and the legend that belongs to it.
 *
 * @param shapes anywhere on the plane
 * @param title what it shows
 * @param plan of which plan, in words that follow the title; empty where the title says it
 * @param scale to what scale it is drawn, in the words of a title block
 * @param description a sentence or more that says in words what a reader would see
 */
public record Plate(List<Shape> shapes, Legend legend, String title, String plan, String scale, String description) implements View {
  /** What title blocks say of a diagram. */
  public static final String NO_SCALE = "not to scale";

  private static final double MARGIN = 24;
  private static final double TITLE = 16;
  private static final double TITLE_LINE = 21;
  private static final double NARROWEST = 560;

  public Plate {
    shapes = List.copyOf(shapes);
  }

  /** A diagram, which has no scale, whose title says of which plan it is. */
  public Plate(List<Shape> shapes, Legend legend, String title, String description) {
    this(shapes, legend, title, "", NO_SCALE, description);
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    return shapes.isEmpty() ? List.of() : List.of(new Piece("whole", shapes));
  }

  /** Its shapes alone, for a page that says the rest beside it. */
  public Drawing bare() {
    Sketch sketch = new Sketch();
    shapes.forEach(sketch::add);
    return sketch.drawing(2, plan.isEmpty() ? title : title + ": " + plan, description);
  }

  /** All of it as one drawing of its own size: the title above, the legend below. */
  public Drawing drawing() {
    return drawing(NARROWEST);
  }

  /** The same where its title and legend may be no wider than its shapes, or than this. */
  public Drawing drawing(double narrowest) {
    Sketch sketch = new Sketch();
    shapes.forEach(sketch::add);
    Bounds inner = sketch.bounds();
    double width = Math.max(inner.width(), narrowest);
    String heading = plan.isEmpty() ? title : title + ": " + plan;
    // A long title goes on in lines above the picture, so that nothing of it is cut.
    List<String> lines = Fit.lines(heading, TITLE, true, width);
    for (int i = 0; i < lines.size(); i++) {
      double up = (lines.size() - 1 - i) * TITLE_LINE;
      sketch.fitted(inner.left(), inner.top() - 24 - up, lines.get(i), TITLE, true, Shape.Anchor.START, width);
    }
    sketch.line(inner.left(), inner.bottom() + 18, inner.left() + width, inner.bottom() + 18, Shape.Stroke.FAINT);
    sketch.add(legend.sketch(width), inner.left(), inner.bottom() + 30);
    return sketch.drawing(MARGIN, heading, description);
  }
}
