package wattle.emit.view.oneline;

import java.util.List;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/**
 * How a part of a diagram stands in two revisions. Each has a sign and an outline of its own, so that it is told on
 * paper without color: a square with a plus, a circle with a minus, a filled triangle.
 */
enum Difference {
  SAME(Fill.NONE, Stroke.THIN), ADDED(Fill.ADDED, Stroke.THIN), REMOVED(Fill.REMOVED, Stroke.DASHED), CHANGED(Fill.CHANGED, Stroke.FAINT);

  /** Width and height of a sign. */
  static final double SIGN = 11;

  private final Fill fill;
  private final Stroke outline;

  Difference(Fill fill, Stroke outline) {
    this.fill = fill;
    this.outline = outline;
  }

  /** What lies beneath a part: nothing under one that is the same in both. */
  List<Shape> ground(double left, double top, double width, double height) {
    return this == SAME ? List.of() : List.of(new Shape.Box(left, top, width, height, 2, outline, fill));
  }

  /** Draws the sign, its left edge at x and its middle at y. */
  void sign(Sketch to, double x, double y) {
    double middle = x + SIGN / 2;
    switch (this) {
      case SAME -> {
      }
      case ADDED ->
        to.box(x, y - SIGN / 2, SIGN, SIGN, Stroke.THIN, Fill.PAPER).line(x + 2.5, y, x + SIGN - 2.5, y).line(middle, y - 3, middle, y + 3);
      case REMOVED -> to.add(new Shape.Circle(middle, y, SIGN / 2, Stroke.THIN, Fill.PAPER)).line(x + 2.5, y, x + SIGN - 2.5, y);
      case CHANGED -> to.add(new Shape.Triangle(middle, y - SIGN / 2, x, y + SIGN / 2, x + SIGN, y + SIGN / 2));
    }
  }

  /** As lines: those of what is gone are dashed. */
  Stroke line() {
    return this == REMOVED ? Stroke.DASHED : Stroke.THIN;
  }
}
