package wattle.emit.view.oneline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wattle.emit.media.drawing.Sketch;

/**
 * Lines from blocks to blocks of the next rank, at right angles. The upright part of each has a track of its own: of
 * those that go down the upper ones turn farther to the right, of those that go up the lower ones, so that none crosses
 * another.
 */
final class Feeders {
  private static final double TRACK = 8;

  /** Between two columns of blocks, for so many feeders side by side. */
  static double room(int feeders) {
    return TRACK * feeders + 36;
  }

  private record Line(double x1, double y1, double x2, double y2) {}

  private final List<Line> lines = new ArrayList<>();

  void add(double x1, double y1, double x2, double y2) {
    lines.add(new Line(x1, y1, x2, y2));
  }

  void draw(Sketch sketch) {
    List<Line> down = lines.stream().filter(l -> l.y2 > l.y1).sorted(Comparator.comparingDouble(l -> -l.y1)).toList();
    List<Line> up = lines.stream().filter(l -> l.y2 <= l.y1).sorted(Comparator.comparingDouble(l -> l.y1)).toList();
    tracks(sketch, down);
    tracks(sketch, up);
  }

  /** Lines of one rank end at about the same x; each takes the next track to the left of it. */
  private void tracks(Sketch sketch, List<Line> ordered) {
    for (int i = 0; i < ordered.size(); i++) {
      Line line = ordered.get(i);
      int after = 0;
      for (int j = i + 1; j < ordered.size(); j++) {
        if (Math.abs(ordered.get(j).x2 - line.x2) < 400) {
          after++;
        }
      }
      double room = Math.max(8, line.x2 - line.x1 - 16);
      double x = line.x2 - 12 - Math.min(TRACK * after, room * after / ordered.size());
      sketch.line(line.x1, line.y1, x, line.y1).line(x, line.y1, x, line.y2).line(x, line.y2, line.x2, line.y2);
    }
  }
}
