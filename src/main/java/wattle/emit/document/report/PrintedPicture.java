package wattle.emit.document.report;

import java.util.Locale;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.page.Markup;

/** A part of a picture among the text of a page for paper. */
public final class PrintedPicture {
  private PrintedPicture() {}

  /**
   * Printed as large as it is drawn.
   *
   * @param id the only one on its page
   */
  public static String figure(Drawing drawing, String id) {
    Markup page = new Markup();
    page.open("div", "class", "picture", "style", String.format(Locale.ROOT, "width: %.1fpx", drawing.width()));
    return page.raw(DrawingSvg.element(drawing, id)).close().toString();
  }
}
