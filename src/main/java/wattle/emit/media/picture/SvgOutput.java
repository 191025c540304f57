package wattle.emit.media.picture;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.Map;
import wattle.emit.media.text.Escape;

/** Writes the elements of an SVG picture. */
final class SvgOutput {
  private static final String[] COMMANDS = {"M", "L", "Q", "C", "Z"};
  private static final int[] NUMBERS = {2, 2, 4, 6, 0};

  private final StringBuilder out = new StringBuilder();

  void start(String tag, Map<String, String> attributes) {
    out.append('<').append(tag);
    if (tag.equals("svg")) {
      out.append(" xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\"");
    }
    attributes.forEach((name, value) -> out.append(' ').append(name).append("=\"").append(Escape.xml(value)).append('"'));
    out.append('>');
  }

  void characters(String text) {
    out.append(Escape.xml(text));
  }

  void end(String tag) {
    out.append("</").append(tag).append('>');
  }

  /** A shape, moved by x and y. */
  void path(Path2D shape, double x, double y, String fill) {
    out.append("<path style=\"fill:").append(Escape.xml(fill)).append("\" d=\"");
    double[] numbers = new double[6];
    for (PathIterator steps = shape.getPathIterator(null); !steps.isDone(); steps.next()) {
      int kind = steps.currentSegment(numbers);
      out.append(COMMANDS[kind]);
      for (int i = 0; i < NUMBERS[kind]; i++) {
        number(numbers[i] + (i % 2 == 0 ? x : y));
      }
    }
    out.append("\"/>");
  }

  /** Three digits after the point: a thousandth of a pixel. */
  private void number(double value) {
    long thousandths = Math.round(value * 1000);
    out.append(' ');
    if (thousandths < 0) {
      out.append('-');
      thousandths = -thousandths;
    }
    out.append(thousandths / 1000);
    int rest = (int) (thousandths % 1000);
    if (rest != 0) {
      out.append('.').append((char) ('0' + rest / 100));
      out.append((char) ('0' + rest / 10 % 10)).append((char) ('0' + rest % 10));
    }
  }

  String text() {
    return out.toString();
  }
}
