package wattle.emit.view.branchwiring;

import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;

/**
 * Words at the end of a cable that goes on elsewhere in the same picture.
 *
 * @param second the line beneath the first; empty where there is none
 */
record Jump(String first, String second) {
  static Jump onward(int mark, String to) {
    return new Jump("continues at " + mark, "to " + to);
  }

  static Jump from(String box) {
    return new Jump("from " + box, "");
  }

  double width() {
    return Math.max(Fit.width(first, CableWay.SIZE, false), Fit.width(second, CableWay.SIZE, false));
  }

  /** How many of the lines say something. */
  int lines() {
    return second.isEmpty() ? 1 : 2;
  }

  /** Sets the lines, the first with its baseline at y. */
  void draw(Sketch sketch, double x, double y, double lineHeight, double room) {
    sketch.fitted(x, y, first, CableWay.SIZE, false, Anchor.START, room);
    if (!second.isEmpty()) {
      sketch.fitted(x, y + lineHeight, second, CableWay.SIZE, false, Anchor.START, room);
    }
  }
}
