package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;

/**
 * A drawing with numbered marks at things in it, and under it what each number stands for. Several marks of a thing stand beside
 * each other; a click on it leads to its words. What has no spot in the drawing is left out, and numbers have no gaps.
 */
public final class Marked {
  private static final double RADIUS = 8;
  private static final double STEP = 18;
  private static final double MARGIN = 24;
  private static final double SIZE = 10;
  private static final double LINE = 15;
  private static final double NARROWEST = 420;

  /** Where marks stand that hide nothing of their thing. */
  public enum Side {
    /** Left of it, at half its height: of a row of a table. */
    BESIDE,
    /** On its upper edge, from the left. */
    LEFT_CORNER,
    /** On its upper edge, from the right. */
    RIGHT_CORNER
  }

  private Marked() {}

  /**
   * What is said of some things.
   *
   * @param things names of spots, any of which it stands at
   * @param words on lines of their own under the picture
   */
  public record Note(Set<String> things, String words) {
    public Note {
      things = Set.copyOf(things);
    }
  }

  /** @return the drawing as it is where no note is about a thing in it */
  public static Drawing of(Drawing drawing, String heading, Side side, List<Note> notes) {
    List<Shape.Spot> spots = drawing.shapes().stream().filter(Shape.Spot.class::isInstance).map(Shape.Spot.class::cast).toList();
    List<Note> shown = notes.stream().filter(n -> spots.stream().anyMatch(s -> n.things.contains(s.thing()))).toList();
    if (shown.isEmpty()) {
      return drawing;
    }
    Sketch sketch = new Sketch();
    drawing.shapes().forEach(sketch::add);
    for (Shape.Spot spot : spots) {
      int here = 0;
      for (int i = 0; i < shown.size(); i++) {
        if (shown.get(i).things.contains(spot.thing())) {
          double off = STEP * here++;
          double x = switch (side) {
            case BESIDE -> spot.x() - RADIUS - 3 - off;
            case LEFT_CORNER -> spot.x() + off;
            case RIGHT_CORNER -> spot.x() + spot.width() - 4 - off;
          };
          mark(sketch, x, side == Side.BESIDE ? spot.y() + spot.height() / 2 : spot.y(), i + 1, Optional.of(id(i + 1)));
        }
      }
    }
    double width = Math.max(NARROWEST, drawing.width() - 2 * MARGIN);
    double y = drawing.height() + 6;
    sketch.text(MARGIN, y, heading, SIZE + 2, true, Anchor.START);
    y += LINE + 4;
    for (int i = 0; i < shown.size(); i++) {
      sketch.add(new Shape.Target(MARGIN, y - LINE, id(i + 1)));
      mark(sketch, MARGIN + RADIUS, y - 3.5, i + 1, Optional.empty());
      for (String line : Fit.lines(shown.get(i).words, SIZE, width - 3 * RADIUS)) {
        sketch.text(MARGIN + 3 * RADIUS, y, line, SIZE);
        y += LINE;
      }
      y += 5;
    }
    List<String> words = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      words.add((i + 1) + ": " + shown.get(i).words);
    }
    // What is over the upper edge, such as a mark on a corner there, moves all down.
    Bounds all = sketch.bounds();
    double left = Math.min(0, all.left() - 2);
    double top = Math.min(0, all.top() - 2);
    return new Drawing(
        Math.max(drawing.width(), all.right() + MARGIN) - left, y + MARGIN / 2 - top,
        sketch.shapes().stream().map(s -> s.moved(-left, -top)).toList(), drawing.title(),
        drawing.description() + " " + heading + ": " + String.join("; ", words) + ".");
  }

  private static String id(int number) {
    return "finding-" + number;
  }

  private static void mark(Sketch sketch, double x, double y, int number, Optional<String> to) {
    sketch.add(new Shape.Circle(x, y, RADIUS, Stroke.THIN, Fill.CHANGED));
    sketch.text(x, y + 3.4, Integer.toString(number), number > 99 ? 7 : 9, true, Anchor.MIDDLE);
    to.ifPresent(id -> sketch.add(new Shape.Link(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS, id)));
  }
}
