package wattle.emit.view.trialpicture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Fit;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/**
 * A box, or the panel, with what is found in it.
 *
 * @param title name of the box
 * @param lines beneath it
 */
record BoxFigures(String title, List<Line> lines) {
  private static final double TITLE = 11.5;
  private static final double TYPE = 10;
  private static final double LINE = 15;
  private static final double PAD = 10;
  private static final double NARROWEST = 96;
  private static final double WIDEST = 330;

  BoxFigures {
    lines = lines.stream().flatMap(BoxFigures::broken).toList();
  }

  /** A sentence goes on beneath itself where it is wider than a box. */
  private static Stream<Line> broken(Line line) {
    List<String> parts = Fit.lines(line.text(), TYPE, line.bold(), WIDEST - line.indent());
    return IntStream.range(0, parts.size()).mapToObj(i -> new Line(parts.get(i), line.bold(), i == 0 ? line.sign() : Sign.NONE));
  }

  /** A line of words with a sign before it. */
  record Line(String text, boolean bold, Sign sign) {
    double indent() {
      return sign == Sign.NONE ? 0 : Sign.WIDTH + 4;
    }
  }

  double width() {
    List<Double> widths = new ArrayList<>(List.of(NARROWEST, Fit.width(title, TITLE, true)));
    lines.forEach(l -> widths.add(l.indent() + Fit.width(l.text(), TYPE, l.bold())));
    return Math.min(WIDEST, widths.stream().mapToDouble(Double::doubleValue).max().orElseThrow()) + 2 * PAD;
  }

  /** Of what is written in it. */
  double height() {
    return 2 * PAD + TITLE + lines.size() * LINE;
  }

  /** Draws it with its upper left corner there, as high as what stands beside it. */
  void draw(Sketch sketch, double x, double y, double high) {
    sketch.add(new Shape.Box(x, y, width(), high, 6, Stroke.THIN, Fill.PAPER));
    double room = width() - PAD - 4;
    double baseline = y + PAD + TITLE - 2;
    sketch.fitted(x + PAD, baseline, title, TITLE, true, Anchor.START, room);
    for (Line line : lines) {
      baseline += LINE;
      line.sign().draw(sketch, x + PAD, baseline - 3.6);
      sketch.fitted(x + PAD + line.indent(), baseline, line.text(), TYPE, line.bold(), Anchor.START, room - line.indent());
    }
  }
}
