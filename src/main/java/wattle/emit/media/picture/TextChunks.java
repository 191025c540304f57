package wattle.emit.media.picture;

import java.util.ArrayList;
import java.util.List;

/**
 * The characters of one {@code text} element, gathered piece by piece and placed when they are all known. A chunk
 * starts wherever an absolute position is given; the anchor belongs to a chunk as a whole.
 */
final class TextChunks {

  /** A piece in one style at the place where its baseline starts, in user units. */
  record Piece(String text, TextStyle style, double x, double y) {}

  private record Run(StringBuilder text, TextStyle style, double dx, double dy) {}

  private final List<Piece> placed = new ArrayList<>();
  private final List<Run> chunk = new ArrayList<>();
  private double x;
  private double y;
  private boolean afterSpace = true;

  /** Starts a chunk; NaN keeps the coordinate that was reached. */
  void moveTo(double newX, double newY) {
    endChunk();
    x = Double.isNaN(newX) ? x : newX;
    y = Double.isNaN(newY) ? y : newY;
  }

  /** Starts a piece, moved from where the last one ended. */
  void startRun(TextStyle style, double dx, double dy) {
    chunk.add(new Run(new StringBuilder(), style, dx, dy));
  }

  /** Adds characters to the piece that was started last. */
  void add(String characters) {
    Run run = chunk.get(chunk.size() - 1);
    for (char c : characters.toCharArray()) {
      boolean space = c == ' ' || c == '\n' || c == '\t' || c == '\r';
      if (!space || run.style().spaces()) {
        run.text().append(space ? ' ' : c);
      } else if (!afterSpace) {
        run.text().append(' ');
      }
      afterSpace = space;
    }
  }

  List<Piece> end() {
    trimEnd();
    endChunk();
    return placed;
  }

  private void trimEnd() {
    for (int i = chunk.size() - 1; i >= 0; i--) {
      StringBuilder text = chunk.get(i).text();
      if (text.length() == 0) {
        continue;
      }
      if (!chunk.get(i).style().spaces() && text.charAt(text.length() - 1) == ' ') {
        text.setLength(text.length() - 1);
      }
      return;
    }
  }

  private void endChunk() {
    double width = chunk.stream().mapToDouble(run -> run.dx() + widthOf(run)).sum();
    String anchor = chunk.stream().filter(run -> run.text().length() > 0).findFirst()
        .map(run -> run.style().anchor()).orElse("start");
    x -= anchor.equals("middle") ? width / 2 : anchor.equals("end") ? width : 0;
    for (Run run : chunk) {
      x += run.dx();
      y += run.dy();
      if (run.text().length() > 0) {
        placed.add(new Piece(VisualOrder.of(run.text().toString()), run.style(), x, y + run.style().shift()));
      }
      x += widthOf(run);
    }
    chunk.clear();
  }

  private static double widthOf(Run run) {
    return run.style().face().width(run.text().toString(), run.style().size());
  }
}
