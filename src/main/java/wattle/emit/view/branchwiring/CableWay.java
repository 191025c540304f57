package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
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

  /** Of the words of a cable that nothing stands beside: longer ones are set in lines. */
  private static final double WIDEST_LINE = 190;
  private static final double MARK = 12;
  private static final double LINE = 13;

  /** How long a piece is that ends in a mark, without words along it. */
  static final double BARE_STUB = 6 + 2 * MARK;

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

  /**
   * How long the piece is that ends in a mark.
   *
   * @param single whether no other cable runs beside it, so that its words may take more than one line
   */
  static double stub(Section section, Jump where, boolean single) {
    double words = single
        ? lines(section, true).stream().mapToDouble(l -> Fit.width(l, SIZE, false)).max().orElse(0) + 16
        : words(section);
    return Math.max(words, Math.min(WIDEST, where.width()) + 14) + 2 * MARK;
  }

  /** What is written over it, and then what is written beneath where it goes. */
  private static List<String> lines(Section section, boolean single) {
    List<String> lines = new ArrayList<>(above(section, single));
    lines.addAll(surroundings(section, single));
    return lines;
  }

  private static List<String> above(Section section, boolean single) {
    return single ? Fit.lines(above(section), SIZE, WIDEST_LINE) : List.of(above(section));
  }

  private static List<String> surroundings(Section section, boolean single) {
    String words = SurroundingsWords.of(section.surroundings());
    return words.isEmpty() ? List.of() : single ? Fit.lines(words, SIZE, WIDEST_LINE) : List.of(words);
  }

  /** The same, and where it goes, in a row. */
  static String sentence(Section section, String where) {
    String surroundings = SurroundingsWords.of(section.surroundings());
    return above(section) + ", " + where + (surroundings.isEmpty() ? "" : ", " + surroundings);
  }

  /** The beginning of a cable whose words stand beneath its box. */
  static void leaving(Sketch sketch, double x, double y, int mark) {
    sketch.wire(Insulation.SHEATH, x, y, x + BARE_STUB - 2 * MARK, y);
    mark(sketch, x + BARE_STUB - MARK, y, mark);
  }

  /** Likewise its end. */
  static void coming(Sketch sketch, double x, double y, int mark) {
    mark(sketch, x - BARE_STUB + MARK, y, mark);
    sketch.wire(Insulation.SHEATH, x - BARE_STUB + 2 * MARK, y, x, y);
  }

  /** The beginning of a cable that goes on elsewhere, at a mark with the same number. */
  static void leaving(Sketch sketch, Section section, double x, double y, int mark, Jump where, boolean single) {
    double end = x + stub(section, where, single) - 2 * MARK;
    sketch.wire(Insulation.SHEATH, x, y, end, y);
    mark(sketch, end + MARK, y, mark);
    words(sketch, section, x + 10, y, where, end - x - 12, single);
  }

  /** Its end, beside which no other cable comes. */
  static void coming(Sketch sketch, Section section, double x, double y, int mark, Jump where) {
    double start = x - stub(section, where, true) + 2 * MARK;
    mark(sketch, start - MARK, y, mark);
    sketch.wire(Insulation.SHEATH, start, y, x, y);
    words(sketch, section, start + 4, y, where, x - start - 12, true);
  }

  private static void words(Sketch sketch, Section section, double x, double y, Jump where, double room, boolean single) {
    List<String> over = above(section, single);
    for (int i = 0; i < over.size(); i++) {
      sketch.fitted(x, y - 10 - LINE * (over.size() - 1 - i), over.get(i), SIZE, false, Anchor.START, room);
    }
    where.draw(sketch, x, y + 18, LINE, room);
    double line = y + 18 + LINE * where.lines();
    for (String words : surroundings(section, single)) {
      sketch.fitted(x, line, words, SIZE, false, Anchor.START, room);
      line += LINE;
    }
  }

  private static void mark(Sketch sketch, double x, double y, int mark) {
    sketch.add(new Shape.Circle(x, y, MARK, Stroke.THIN, Fill.PAPER));
    sketch.text(x, y + 3.4, Integer.toString(mark), SIZE, true, Anchor.MIDDLE);
  }
}
