package wattle.emit.view.branchwiring;

import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Insulation;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Section;
import wattle.model.Status;
import wattle.words.SurroundingsWords;

/** A cable between two boxes: its jacket, its kind and length above it, where it goes below. */
final class CableWay {
  static final double SIZE = 9.5;
  private static final double WIDEST = 380;
  private static final double MARK = 12;
  private static final double LINE = 13;

  private CableWay() {}

  /** What is written along it. */
  private static String above(Section section) {
    String length = section.length().map(Object::toString).orElse("length not stated");
    String status = section.status() == Status.NEW ? "" : section.status() == Status.EXISTING ? ", existing" : ", to be removed";
    return section.wiring().text() + ", " + length + status;
  }

  /** Room that its words take along the way. */
  static double words(Section section) {
    double wide = Math.max(Fit.width(above(section), SIZE, false), Fit.width(SurroundingsWords.of(section.surroundings()), SIZE, false));
    return Math.min(WIDEST, wide) + 16;
  }

  /** From one wall to the other, bending at a column. */
  static void draw(Sketch sketch, Section section, double x, double y, double column, double toX, double toY) {
    if (Math.abs(y - toY) < 0.01) {
      sketch.wire(Insulation.SHEATH, x, y, toX, y);
    } else {
      sketch.wire(Insulation.SHEATH, x, y, column, y, column, toY, toX, toY);
    }
    label(sketch, section, toX - words(section) + 5, toY);
  }

  private static void label(Sketch sketch, Section section, double x, double y) {
    double room = words(section) - 15.5;
    sketch.fitted(x, y - 10, above(section), SIZE, false, Anchor.START, room);
    sketch.fitted(x, y + 18, SurroundingsWords.of(section.surroundings()), SIZE, false, Anchor.START, room);
  }

  /** How long the piece is that ends in a mark. */
  static double stub(Section section, Jump where) {
    return Math.max(words(section), Math.min(WIDEST, where.width()) + 14) + 2 * MARK;
  }

  /** The beginning of a cable that goes on elsewhere, at a mark with the same number. */
  static void leaving(Sketch sketch, Section section, double x, double y, int mark, Jump where) {
    double end = x + stub(section, where) - 2 * MARK;
    sketch.wire(Insulation.SHEATH, x, y, end, y);
    mark(sketch, end + MARK, y, mark);
    words(sketch, section, x + 10, y, where, end - x - 12);
  }

  /** Its end. */
  static void coming(Sketch sketch, Section section, double x, double y, int mark, Jump where) {
    double start = x - stub(section, where) + 2 * MARK;
    mark(sketch, start - MARK, y, mark);
    sketch.wire(Insulation.SHEATH, start, y, x, y);
    words(sketch, section, start + 4, y, where, x - start - 12);
  }

  private static void words(Sketch sketch, Section section, double x, double y, Jump where, double room) {
    sketch.fitted(x, y - 10, above(section), SIZE, false, Anchor.START, room);
    where.draw(sketch, x, y + 18, LINE, room);
    String surroundings = SurroundingsWords.of(section.surroundings());
    if (!surroundings.isEmpty()) {
      sketch.fitted(x, y + 18 + LINE * where.lines(), surroundings, SIZE, false, Anchor.START, room);
    }
  }

  private static void mark(Sketch sketch, double x, double y, int mark) {
    sketch.add(new Shape.Circle(x, y, MARK, Stroke.THIN, Fill.PAPER));
    sketch.text(x, y + 3.2, Integer.toString(mark), 9, true, Anchor.MIDDLE);
  }
}
