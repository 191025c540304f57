package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.text.VisibleText;

/** Collects shapes while a view is drawn; the only mutable thing of a drawing, and it does not leave its view. */
public final class Sketch {
  private final List<Shape> shapes = new ArrayList<>();

  public Sketch add(Shape shape) {
    shapes.add(shape);
    return this;
  }

  /** All shapes of another sketch, moved. */
  public Sketch add(Sketch other, double x, double y) {
    other.shapes.forEach(s -> shapes.add(s.moved(x, y)));
    return this;
  }

  public Sketch line(double x1, double y1, double x2, double y2, Stroke stroke) {
    return add(new Shape.Line(x1, y1, x2, y2, stroke));
  }

  public Sketch line(double x1, double y1, double x2, double y2) {
    return line(x1, y1, x2, y2, Stroke.THIN);
  }

  public Sketch box(double x, double y, double width, double height, Stroke stroke, Fill fill) {
    return add(new Shape.Box(x, y, width, height, 0, stroke, fill));
  }

  /** A wire through points given as x and y in turn. */
  public Sketch wire(Insulation insulation, double... xy) {
    List<Shape.Corner> corners = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      corners.add(new Shape.Corner(xy[i], xy[i + 1]));
    }
    return add(new Shape.Wire(corners, insulation));
  }

  public Sketch dot(double x, double y) {
    return add(new Shape.Circle(x, y, 2.6, Stroke.THIN, Fill.INK));
  }

  public Sketch text(double x, double y, String text, double size, boolean bold, Anchor anchor) {
    return add(new Shape.Text(x, y, VisibleText.of(text), size, bold, anchor, ""));
  }

  public Sketch text(double x, double y, String text, double size) {
    return text(x, y, text, size, false, Anchor.START);
  }

  /** Text that is cut where it would be wider than so much; then the whole of it is shown on hovering. */
  public Sketch fitted(double x, double y, String text, double size, boolean bold, Anchor anchor, double width) {
    String fitting = Fit.within(text, size, bold, width);
    boolean cut = !fitting.equals(VisibleText.of(text));
    return add(new Shape.Text(x, y, fitting, size, bold, anchor, cut ? VisibleText.of(text) : ""));
  }

  public List<Shape> shapes() {
    return List.copyOf(shapes);
  }

  /** The same, larger or smaller. */
  public Sketch scaled(double by) {
    Sketch scaled = new Sketch();
    shapes.forEach(s -> scaled.add(s.scaled(by)));
    return scaled;
  }

  /** What holds every shape; a point at the origin for none. */
  public Bounds bounds() {
    return shapes.stream().map(Shape::bounds).reduce(Bounds::with).orElse(new Bounds(0, 0, 0, 0));
  }

  /** The finished drawing, as large as its shapes and a margin around them. */
  public Drawing drawing(double margin, String title, String description) {
    Bounds all = bounds();
    double x = margin - all.left();
    double y = margin - all.top();
    List<Shape> placed = shapes.stream().map(s -> s.moved(x, y)).toList();
    return new Drawing(all.width() + 2 * margin, all.height() + 2 * margin, placed, title, description);
  }
}
