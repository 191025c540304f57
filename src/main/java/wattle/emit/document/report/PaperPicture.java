package wattle.emit.document.report;

import java.util.Locale;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.page.Markup;

/** A picture on a sheet of its own, turned whichever way shows it larger, and made smaller where it would not fit. */
public final class PaperPicture {
  /** What the margins leave of a letter sheet, in CSS pixels of 1/96 inch. */
  private static final double LONG = 950;

  private static final double SHORT = 710;

  /** At which type of nine pixels is printed with six points; larger a picture takes more paper and is read no better. */
  private static final double LARGEST = 0.9;

  /** At which type of nine pixels is printed with somewhat less than six points. */
  private static final double LEAST_IN_TEXT = 0.85;

  private static final double HEADING = 70;

  private PaperPicture() {}

  /** Whether both, one above the other under their headings, find room on the turned sheet of the first. */
  static boolean shareASheet(Drawing first, Drawing second) {
    return isTurned(first) && isLarge(first)
        && shared(first) + shared(second) <= SHORT && scale(second, LONG, SHORT) >= LEAST_IN_TEXT;
  }

  private static double shared(Drawing drawing) {
    return trimmed(drawing).height() * scale(drawing, LONG, SHORT) + HEADING;
  }

  /** On a sheet that holds nothing else but its heading. */
  public static String onItsSheet(Drawing drawing, String id) {
    return sized(drawing, id, Math.max(scale(drawing, SHORT, LONG), scale(drawing, LONG, SHORT)));
  }

  /** Among text and tables. */
  public static String inText(Drawing drawing, String id, boolean turned) {
    return sized(drawing, id, turned ? scale(drawing, LONG, SHORT) : scale(drawing, SHORT, LONG));
  }

  private static String sized(Drawing whole, String id, double scale) {
    Drawing drawing = trimmed(whole);
    Markup page = new Markup();
    page.open("div", "class", "picture", "style", String.format(Locale.ROOT, "width: %.1fpx", drawing.width() * scale));
    return page.raw(DrawingSvg.element(drawing, id)).close().toString();
  }

  /** Whether it gets a sheet of its own, since its type would be too small among the text, or it would fill a sheet anyhow. */
  public static boolean isLarge(Drawing drawing) {
    return scale(drawing, SHORT, LONG) < LEAST_IN_TEXT || trimmed(drawing).height() * scale(drawing, SHORT, LONG) > LONG * 0.8;
  }

  /** Whether the sheet of a picture is turned. */
  static boolean isTurned(Drawing drawing) {
    return scale(drawing, LONG, SHORT) > scale(drawing, SHORT, LONG);
  }

  /** Without the margins that a picture by itself has; a page has its own. */
  private static Drawing trimmed(Drawing drawing) {
    Sketch sketch = new Sketch();
    drawing.shapes().forEach(sketch::add);
    return sketch.drawing(2, drawing.title(), drawing.description());
  }

  private static double scale(Drawing whole, double width, double height) {
    Drawing drawing = trimmed(whole);
    return Math.min(LARGEST, Math.min(width / drawing.width(), (height - HEADING) / drawing.height()));
  }
}
