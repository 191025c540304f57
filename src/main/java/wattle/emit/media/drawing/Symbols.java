package wattle.emit.media.drawing;

import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;

/**
 * Symbols of one-line diagrams, drawn after the published standards: IEC 60617 for the transformer (two circles that
 * overlap), the fuse (a rectangle with the line through it), the earth, the generator and the strokes that count
 * conductors; IEEE 315 for the low-voltage breaker (an arc over an open gap between two terminals) and the switch.
 */
public final class Symbols {
  /** Length along the line that a breaker, fuse or switch takes. */
  public static final double DEVICE = 24;

  private Symbols() {}

  /** A breaker on a horizontal line, from x to x + {@link #DEVICE}. */
  public static void breaker(Sketch to, double x, double y) {
    double left = x + 5;
    double right = x + DEVICE - 5;
    to.line(x, y, left - 1.6, y).line(right + 1.6, y, x + DEVICE, y);
    terminal(to, left, y);
    terminal(to, right, y);
    to.add(new Shape.Curve(left, y - 3, (left + right) / 2, y - 12, right, y - 3, Stroke.THIN));
  }

  private static void terminal(Sketch to, double x, double y) {
    to.add(new Shape.Circle(x, y, 1.6, Stroke.THIN, Fill.PAPER));
  }

  /** A fuse on a horizontal line. */
  public static void fuse(Sketch to, double x, double y) {
    to.line(x, y, x + DEVICE, y).box(x + 3, y - 4, DEVICE - 6, 8, Stroke.THIN, Fill.NONE);
  }

  /** An open blade on a horizontal line. */
  public static void blade(Sketch to, double x, double y) {
    to.line(x, y, x + 4, y).line(x + DEVICE - 4, y, x + DEVICE, y).line(x + 4, y, x + DEVICE - 5, y - 7);
    terminal(to, x + DEVICE - 4, y);
  }

  /** A contact that goes over between two others, from left to right, {@link #DEVICE} long. */
  public static void changeover(Sketch to, double x, double y) {
    to.line(x, y, x + 4, y).line(x + DEVICE - 4, y, x + DEVICE, y).line(x + 5, y, x + DEVICE - 5, y);
    terminal(to, x + 4, y);
    terminal(to, x + 4, y - 7);
    terminal(to, x + DEVICE - 4, y);
  }

  /** So many strokes across a horizontal line: one for each conductor that the line stands for. */
  public static void strokes(Sketch to, double x, double y, int count) {
    for (int i = 0; i < count; i++) {
      to.line(x + 4 * i, y + 4, x + 4 * i + 4, y - 4);
    }
  }

  /** A transformer on a horizontal line, centerd; 34 long. */
  public static void transformer(Sketch to, double x, double y) {
    to.add(new Shape.Circle(x + 12, y, 10, Stroke.THIN, Fill.NONE));
    to.add(new Shape.Circle(x + 24, y, 10, Stroke.THIN, Fill.NONE));
  }

  /** A generator, centerd at x + 12; 24 long. */
  public static void generator(Sketch to, double x, double y) {
    to.add(new Shape.Circle(x + 12, y, 12, Stroke.THIN, Fill.PAPER));
    to.text(x + 12, y + 4, "G", 12, false, Anchor.MIDDLE);
  }

  /** Length along the line that a meter takes. */
  public static final double METER = 16;

  /** A meter on a horizontal line, from x to x + {@link #METER}. */
  public static void meter(Sketch to, double x, double y) {
    to.add(new Shape.Circle(x + METER / 2, y, METER / 2, Stroke.THIN, Fill.PAPER));
    to.text(x + METER / 2, y + 3.8, "M", 10.5, false, Anchor.MIDDLE);
  }

  /** Earth, hanging from a point: three lines, each shorter than the one above. */
  public static void earth(Sketch to, double x, double y) {
    to.line(x, y, x, y + 8).line(x - 9, y + 8, x + 9, y + 8).line(x - 6, y + 11.5, x + 6, y + 11.5);
    to.line(x - 3, y + 15, x + 3, y + 15);
  }

  /** The head of an arrow that points to the right and ends at x. */
  public static void head(Sketch to, double x, double y) {
    to.add(new Shape.Triangle(x, y, x - 8, y - 3.5, x - 8, y + 3.5));
  }
}
