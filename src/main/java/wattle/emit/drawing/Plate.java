package wattle.emit.drawing;

import java.util.List;

/**
 * A view before it is put on paper: what it shows, and the legend that belongs to it.
 *
 * @param shapes anywhere on the plane
 * @param title what it shows, of which plan
 * @param description a sentence or more that says in words what a reader would see
 */
public record Plate(List<Shape> shapes, Legend legend, String title, String description) {
  private static final double MARGIN = 24;
  private static final double NARROWEST = 560;

  public Plate {
    shapes = List.copyOf(shapes);
  }

  /** All of it as one drawing of its own size: the title above, the legend below. */
  public Drawing drawing() {
    Sketch sketch = new Sketch();
    shapes.forEach(sketch::add);
    Bounds inner = sketch.bounds();
    double width = Math.max(inner.width(), NARROWEST);
    sketch.fitted(inner.left(), inner.top() - 24, title, 16, true, Shape.Anchor.START, width);
    sketch.line(inner.left(), inner.bottom() + 18, inner.left() + width, inner.bottom() + 18, Shape.Stroke.FAINT);
    sketch.add(legend.sketch(width), inner.left(), inner.bottom() + 30);
    return sketch.drawing(MARGIN, title, description);
  }
}
