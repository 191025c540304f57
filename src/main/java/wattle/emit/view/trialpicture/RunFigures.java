package wattle.emit.view.trialpicture;

import java.util.List;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Insulation;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/**
 * A run with its conductors side by side, each with what it carries.
 *
 * @param title kind of cable and length
 */
record RunFigures(String title, List<Conductor> conductors) {
  private static final double TYPE = 9.5;
  private static final double HEAD = 20;
  private static final double SPACE = 25;
  private static final double WIDEST = 380;
  private static final double MARK = 9;
  private static final double GAP = 22;

  RunFigures {
    conductors = List.copyOf(conductors);
  }

  /**
   * A conductor.
   *
   * @param open whether it is interrupted at the beginning of the run
   */
  record Conductor(Insulation insulation, String words, boolean bold, boolean open, Sign sign) {
    double indent() {
      return sign == Sign.NONE ? 0 : Sign.WIDTH + 4;
    }
  }

  double width() {
    double words = Fit.width(title, TYPE, false);
    for (Conductor c : conductors) {
      words = Math.max(words, c.indent() + Fit.width(c.words, TYPE, c.bold));
    }
    return Math.min(WIDEST, words) + 20;
  }

  double height() {
    return HEAD + SPACE * conductors.size() + 6;
  }

  /** From wall to wall; the upper edge of the band is given. */
  void draw(Sketch sketch, double x, double toX, double y) {
    sketch.fitted(x + 10, y + 13, title, TYPE, false, Anchor.START, toX - x - 14);
    for (int i = 0; i < conductors.size(); i++) {
      Conductor c = conductors.get(i);
      double at = y + HEAD + SPACE * (i + 1) - 4;
      wire(sketch, c, x, toX, at);
      c.sign.draw(sketch, x + 10, at - 10.5);
      sketch.fitted(x + 10 + c.indent(), at - 7, c.words, TYPE, c.bold, Anchor.START, toX - x - 14 - c.indent());
    }
  }

  private static void wire(Sketch sketch, Conductor c, double x, double toX, double at) {
    if (!c.open) {
      sketch.wire(c.insulation, x, at, toX, at);
      return;
    }
    double gap = x + 14;
    sketch.wire(c.insulation, x, at, gap, at);
    sketch.wire(c.insulation, gap + GAP, at, toX, at);
    double middle = gap + GAP / 2;
    sketch.line(middle - 5, at - 4, middle + 5, at + 4, Stroke.THICK).line(middle - 5, at + 4, middle + 5, at - 4, Stroke.THICK);
  }

  /** Room for its beginning or end where it goes on in another row. */
  double stub(Elsewhere where) {
    return Math.max(width(), Math.min(WIDEST, where.width(TYPE)) + 20) + 2 * MARK + 6;
  }

  /** Height with the words beneath that say where it goes on. */
  double stubHeight() {
    return height() + 16;
  }

  /** Its beginning, up to a mark that the next row takes up. */
  void leaving(Sketch sketch, double x, double y, int mark, Elsewhere where) {
    double end = x + stub(where) - 2 * MARK - 6;
    draw(sketch, x, end, y);
    mark(sketch, end + 6 + MARK, y, mark);
    below(sketch, x, end, y, where);
  }

  /** Its end, from a mark. */
  void coming(Sketch sketch, double x, double y, int mark, Elsewhere where) {
    double start = x - stub(where) + 2 * MARK + 6;
    mark(sketch, start - 6 - MARK, y, mark);
    draw(sketch, start, x, y);
    below(sketch, start, x, y, where);
  }

  private void below(Sketch sketch, double x, double end, double y, Elsewhere where) {
    where.draw(sketch, x + 10, y + height() + 8, TYPE, end - x - 12);
  }

  private void mark(Sketch sketch, double x, double y, int mark) {
    double middle = y + HEAD + SPACE * (conductors.size() + 1) / 2.0 - 4;
    sketch.add(new Shape.Circle(x, middle, MARK, Stroke.THIN, Fill.PAPER));
    sketch.text(x, middle + 3.4, Integer.toString(mark), TYPE, true, Anchor.MIDDLE);
  }
}
