package wattle.emit.view.trialpicture;

import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Sketch;

/**
 * Words at the end of a run that goes on elsewhere.
 *
 * @param piece whose place is named behind the words; empty where all is in one picture
 */
record Elsewhere(String words, String piece) {
  private static final String ON = " on ";

  double width(double size) {
    return Fit.width(piece.isEmpty() ? words : words + ON + Shape.Continuation.WIDEST, size, false);
  }

  void draw(Sketch sketch, double x, double y, double size, double room) {
    if (piece.isEmpty()) {
      sketch.fitted(x, y, words, size, false, Anchor.START, room);
    } else {
      sketch.add(new Shape.Continuation(x, y, words + ON, piece, "", size, Anchor.START, room));
    }
  }
}
