package wattle.emit.media.paper;

import java.util.Optional;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/**
 * What a title block says of the plan; the fields are those that ISO 7200 has, as far as a plan knows them.
 *
 * @param plan title of the plan
 * @param revision left open where the plan states none
 * @param date as it is to be shown; left open, to be written by hand, where absent
 */
public record TitleBlock(String plan, Optional<String> revision, Optional<String> date) {
  /** ISO 7200: 180 mm, so that it fits on A4 within its margins. */
  static final double WIDEST = 680;

  /** The least height. */
  static final double HEIGHT = 68;

  private static final double LOWER = 30;
  private static final double CAPTION = 8.5;
  private static final double PAD = 7;

  /** For what would have to be cut otherwise. */
  private static final double SMALLER = 9.5;

  /** Drawn from the origin down and to the right. */
  Sketch sketch(double width, double height, String view, String scale, int sheet, int sheets) {
    Sketch sketch = new Sketch();
    double upper = height - LOWER;
    sketch.box(0, 0, width, height, Stroke.THIN, Fill.NONE);
    sketch.line(0, upper, width, upper);
    double half = width * 0.42;
    sketch.line(half, 0, half, upper);
    cell(sketch, 0, 0, half, upper, "Plan", plan, 12);
    cell(sketch, half, 0, width - half, upper, "Drawing", view, 12);
    String[][] cells = {
        {"Revision", revision.orElse("")}, {"Date", date.orElse("")}, {"Scale", scale}, {"Checked", ""}, {"Sheet", sheet + " of " + sheets}
    };
    double[] shares = {0.17, 0.2, 0.23, 0.22, 0.18};
    double x = 0;
    for (int i = 0; i < cells.length; i++) {
      double wide = width * shares[i];
      if (i > 0) {
        sketch.line(x, upper, x, height);
      }
      cell(sketch, x, upper, wide, LOWER, cells[i][0], cells[i][1], 10.5);
      x += wide;
    }
    return sketch;
  }

  private static void cell(Sketch sketch, double x, double y, double width, double height, String caption, String words, double size) {
    sketch.text(x + PAD, y + 10, caption, CAPTION);
    if (!words.isEmpty()) {
      double room = width - 2 * PAD;
      double fitting = Fit.width(words, size, true) <= room ? size : SMALLER;
      sketch.fitted(x + PAD, y + height - 7, words, fitting, true, Anchor.START, room);
    }
  }
}
