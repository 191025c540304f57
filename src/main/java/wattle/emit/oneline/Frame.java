package wattle.emit.oneline;

import wattle.emit.drawing.Bounds;
import wattle.emit.drawing.Shape.Anchor;
import wattle.emit.drawing.Shape.Stroke;
import wattle.emit.drawing.Sketch;
import wattle.emit.drawing.Symbols;

/** What stands around a one-line diagram: its title above, the legend and the caution below. */
final class Frame {
  private static final double SIZE = 10;

  private Frame() {}

  static void around(Sketch sketch, String title) {
    Bounds inner = sketch.bounds();
    double left = inner.left();
    sketch.fitted(left, inner.top() - 26, title, 16, true, Anchor.START, Math.max(inner.width(), 500));
    double y = inner.bottom() + 30;
    sketch.line(left, y - 14, Math.max(inner.right(), left + 620), y - 14, Stroke.FAINT);
    double x = left;
    sketch.line(x, y + 7, x, y - 7, Stroke.THICK).line(x, y, x + 16, y).dot(x, y);
    x = words(sketch, x + 22, y, "tapped from this leg");
    Symbols.breaker(sketch, x, y);
    x = words(sketch, x + 30, y, "breaker");
    Symbols.fuse(sketch, x, y);
    x = words(sketch, x + 30, y, "fuse");
    sketch.line(x, y, x + 24, y);
    Symbols.strokes(sketch, x + 8, y, 2);
    x = words(sketch, x + 30, y, "a stroke for each hot; service run: for each wire");
    Symbols.earth(sketch, x + 9, y - 8);
    words(sketch, x + 26, y, "earth electrode");
    sketch.text(left, y + 22, "AFCI: opens on an arc fault. GFCI: opens on a ground fault. Length: from the panel to the farthest box.", SIZE);
    sketch.text(left, y + 37, "An aid to planning: the adopted local code and a licensed person decide. Switch off, lock, and prove dead before work.", SIZE);
  }

  private static double words(Sketch sketch, double x, double y, String words) {
    sketch.text(x, y + 3.5, words, SIZE);
    return x + wattle.emit.drawing.Fit.width(words, SIZE, false) + 22;
  }
}
