package wattle.emit.document.report;

import java.util.Locale;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.page.Markup;

/** A picture on a sheet of its own, turned whichever way shows it larger, and made smaller where it would not fit. */
final class PaperPicture {
  /** What the margins leave of a letter sheet, in CSS pixels of 1/96 inch. */
  private static final double LONG = 950;

  private static final double SHORT = 710;

  /** Above its own size a picture gains nothing. */
  private static final double LARGEST = 1;

  private static final double HEADING = 70;

  private PaperPicture() {}

  /** On a sheet that holds nothing else but its heading. */
  static String onItsSheet(Drawing drawing, String id) {
    return sized(drawing, id, Math.max(scale(drawing, SHORT, LONG), scale(drawing, LONG, SHORT)));
  }

  /** Among text and tables. */
  static String inText(Drawing drawing, String id, boolean turned) {
    return sized(drawing, id, turned ? scale(drawing, LONG, SHORT) : scale(drawing, SHORT, LONG));
  }

  private static String sized(Drawing drawing, String id, double scale) {
    Markup page = new Markup();
    page.open("div", "class", "picture", "style", String.format(Locale.ROOT, "width: %.1fpx", drawing.width() * scale));
    return page.raw(DrawingSvg.element(drawing, id)).close().toString();
  }

  /** Whether it is so large that it gets a sheet of its own; a small one stands among the text. */
  static boolean isLarge(Drawing drawing) {
    return scale(drawing, SHORT, LONG) < LARGEST || drawing.height() > LONG / 2;
  }

  /** Whether the sheet of a picture is turned. */
  static boolean isTurned(Drawing drawing) {
    return scale(drawing, LONG, SHORT) > scale(drawing, SHORT, LONG);
  }

  private static double scale(Drawing drawing, double width, double height) {
    return Math.min(LARGEST, Math.min(width / drawing.width(), (height - HEADING) / drawing.height()));
  }
}
