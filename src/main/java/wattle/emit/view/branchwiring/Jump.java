package wattle.emit.view.branchwiring;

import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;

/**
 * Two lines of words at the end of a cable that goes on elsewhere.
 *
 * @param sheetFirst whether the number of the piece's sheet follows the first line, rather than the second
 * @param piece whose sheet that is; empty where all is in one picture, and then no number follows
 */
record Jump(String first, String second, boolean sheetFirst, String piece) {
  static Jump onward(int mark, String to, String piece) {
    return new Jump(piece.isEmpty() ? "continues at " + mark : "at " + mark + " on ", "to " + to, true, piece);
  }

  static Jump from(String box, String piece) {
    return new Jump("from " + box, piece.isEmpty() ? "" : "on ", false, piece);
  }

  double width() {
    String place = piece.isEmpty() ? "" : Shape.Continuation.WIDEST;
    return Math.max(
        Fit.width(first + (sheetFirst ? place : ""), CableWay.SIZE, false),
        Fit.width(second + (sheetFirst ? "" : place), CableWay.SIZE, false));
  }

  /** How many of the lines say something. */
  int lines() {
    return second.isEmpty() ? 1 : 2;
  }

  /** Sets the lines, the first with its baseline at y. */
  void draw(Sketch sketch, double x, double y, double lineHeight, double room) {
    line(sketch, x, y, first, sheetFirst, room);
    if (!second.isEmpty()) {
      line(sketch, x, y + lineHeight, second, !sheetFirst, room);
    }
  }

  private void line(Sketch sketch, double x, double y, String words, boolean sheet, double room) {
    if (sheet && !piece.isEmpty()) {
      sketch.add(new Shape.Continuation(x, y, words, piece, "", CableWay.SIZE, Anchor.START, room));
    } else {
      sketch.fitted(x, y, words, CableWay.SIZE, false, Anchor.START, room);
    }
  }
}
