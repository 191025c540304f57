package wattle.emit.media.paper;

import java.util.List;
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

  private static final double LOWER = 37;
  private static final double UPPER = 40;
  private static final double LINE = 15;

  /** Nine points, as on all of a sheet; what is filled in is bold. */
  private static final double SIZE = 12;

  private static final double PAD = 7;

  /** Of the upper cells, the plan's part of the width. */
  private static final double PLAN = 0.42;

  /** The least height: a title that is too long for one line goes on in others. */
  double height(double width, String view) {
    int lines = Math.max(lines(plan, width * PLAN).size(), lines(view, width * (1 - PLAN)).size());
    return UPPER + LOWER + (lines - 1) * LINE;
  }

  private static List<String> lines(String words, double width) {
    return Fit.lines(words, SIZE, true, width - 2 * PAD);
  }

  /** Drawn from the origin down and to the right. */
  Sketch sketch(double width, double height, String view, String scale, int sheet, int sheets) {
    Sketch sketch = new Sketch();
    double upper = height - LOWER;
    sketch.box(0, 0, width, height, Stroke.THIN, Fill.NONE);
    sketch.line(0, upper, width, upper);
    double half = width * PLAN;
    sketch.line(half, 0, half, upper);
    cell(sketch, 0, 0, half, "Plan", plan);
    cell(sketch, half, 0, width - half, "Drawing", view);
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
      sketch.text(x + PAD, upper + 14, cells[i][0], SIZE);
      sketch.fitted(x + PAD, height - 7, cells[i][1], SIZE, true, Anchor.START, wide - 2 * PAD);
      x += wide;
    }
    return sketch;
  }

  private static void cell(Sketch sketch, double x, double y, double width, String caption, String words) {
    sketch.text(x + PAD, y + 14, caption, SIZE);
    double line = y + 32;
    for (String part : lines(words, width)) {
      sketch.fitted(x + PAD, line, part, SIZE, true, Anchor.START, width - 2 * PAD);
      line += LINE;
    }
  }
}
