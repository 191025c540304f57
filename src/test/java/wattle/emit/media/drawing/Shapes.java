package wattle.emit.media.drawing;

import java.util.Locale;
import java.util.stream.Collectors;

/** Placed shapes as text, for golden files. */
public final class Shapes {
  private Shapes() {}

  /** A line for each shape that is drawn: what it is, what it says, where it is. */
  public static String text(Drawing drawing) {
    return drawing.shapes().stream().filter(s -> !(s instanceof Shape.Spot))
        .map(s -> s.getClass().getSimpleName() + words(s) + at(s.bounds())).collect(Collectors.joining("\n", "", "\n"));
  }

  private static String words(Shape shape) {
    if (shape instanceof Shape.Text text) {
      return " \"" + text.text() + "\"";
    }
    return shape instanceof Shape.Wire wire ? " " + wire.insulation() + " of " + wire.corners().size() + " corners" : "";
  }

  private static String at(Bounds b) {
    return String.format(Locale.ROOT, " %.0f,%.0f to %.0f,%.0f", b.left(), b.top(), b.right(), b.bottom());
  }
}
