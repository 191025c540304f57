package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wattle.emit.media.drawing.Shape.Anchor;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;

/**
 * Numbered marks at things in a picture, and under it what each number stands for. Several marks of a thing stand beside
 * each other; a click on one leads to its words. What has no spot in the picture is left out, and numbers have no gaps.
 */
public final class Marked {
  private static final double RADIUS = 8;

  /** Of numbers with three digits. */
  private static final double WIDE_RADIUS = 11;

  /** Between the middles of two marks. */
  private static final double STEP = 18;
  private static final double MARGIN = 24;
  private static final double SIZE = 10.5;
  private static final double LINE = 15;
  private static final double NARROWEST = 420;

  private final String heading;
  private final Side side;

  /** Those with a spot in the picture, in the order of their numbers. */
  private final List<Note> shown;

  /** Where marks stand that hide nothing of their thing. */
  public enum Side {
    /** Left of it, at half its height: of a row of a table. */
    BESIDE,
    /** On its upper edge, from the left. */
    LEFT_CORNER,
    /** On its upper edge, from the right. */
    RIGHT_CORNER
  }

  /**
   * What is said of some things.
   *
   * @param things names of spots, any of which it stands at
   * @param words on lines of their own under the picture
   * @param place id of the element that says more, on the page that the picture is for; empty for a picture by itself
   */
  public record Note(Set<String> things, String words, String place) {
    public Note {
      things = Set.copyOf(things);
    }
  }

  private Marked(String heading, Side side, List<Note> notes, Stream<Shape> shapes) {
    this.heading = heading;
    this.side = side;
    Set<String> things = shapes.filter(Shape.Spot.class::isInstance).map(s -> ((Shape.Spot) s).thing()).collect(Collectors.toSet());
    shown = notes.stream().filter(n -> n.things.stream().anyMatch(things::contains)).toList();
  }

  /** @return the drawing as it is where no note is about a thing in it */
  public static Drawing of(Drawing drawing, String heading, Side side, List<Note> notes) {
    Marked marked = new Marked(heading, side, notes, drawing.shapes().stream());
    if (marked.shown.isEmpty()) {
      return drawing;
    }
    Sketch sketch = marked.marked(drawing.shapes());
    double width = Math.max(NARROWEST, drawing.width() - 2 * MARGIN);
    sketch.add(marked.list(0, marked.shown.size(), width), MARGIN, drawing.height() + 6);
    return marked.whole(sketch, drawing.width(), drawing);
  }

  /** The same of a view for sheets: what the marks stand for is on the last of them, or on sheets of its own. */
  public static View of(View view, String heading, Side side, List<Note> notes) {
    return new MarkedView(view, heading, side, notes);
  }

  static Marked of(List<Piece> pieces, String heading, Side side, List<Note> notes) {
    return new Marked(heading, side, notes, pieces.stream().flatMap(p -> p.shapes().stream()));
  }

  boolean isEmpty() {
    return shown.isEmpty();
  }

  /** All that is said, in one sentence. */
  String inWords() {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      words.add((i + 1) + ": " + shown.get(i).words);
    }
    return heading + ": " + String.join("; ", words) + ".";
  }

  private Drawing whole(Sketch sketch, double width, Drawing plain) {
    return moved(sketch, width, sketch.bounds().bottom() + MARGIN / 2, plain.title(), plain.description() + " " + inWords());
  }

  /** What is over the left or upper edge, such as a mark on a corner there, moves all. */
  private Drawing moved(Sketch sketch, double width, double height, String title, String description) {
    Bounds all = sketch.bounds();
    double left = Math.min(0, all.left() - 2);
    double top = Math.min(0, all.top() - 2);
    return new Drawing(
        Math.max(width, all.right() + 2) - left, height - top, sketch.shapes().stream().map(s -> s.moved(-left, -top)).toList(), title,
        description);
  }

  /** Some shapes with the marks at their spots over them. */
  Sketch marked(List<Shape> shapes) {
    Sketch sketch = new Sketch();
    shapes.forEach(sketch::add);
    for (Shape shape : shapes) {
      if (shape instanceof Shape.Spot spot) {
        int here = 0;
        for (int i = 0; i < shown.size(); i++) {
          if (shown.get(i).things.contains(spot.thing())) {
            double off = (shown.size() > 99 ? 2 * WIDE_RADIUS + 2 : STEP) * here++;
            double x = switch (side) {
              case BESIDE -> spot.x() - RADIUS - 3 - off;
              case LEFT_CORNER -> spot.x() + off;
              case RIGHT_CORNER -> spot.x() + spot.width() - 4 - off;
            };
            double y = switch (side) {
              case BESIDE -> spot.y() + spot.height() / 2;
              case LEFT_CORNER -> spot.y() - 6; // the name of a box stands in that corner
              case RIGHT_CORNER -> spot.y();
            };
            mark(sketch, x, y, i + 1, id(i + 1));
          }
        }
      }
    }
    return sketch;
  }

  /** What the marks stand for, in parts that are no higher than that, where a single note is not. */
  List<Sketch> lists(double width, double height) {
    List<Sketch> parts = new ArrayList<>();
    int from = 0;
    while (from < shown.size()) {
      int to = from + 1;
      while (to < shown.size() && list(from, to + 1, width).bounds().height() <= height) {
        to++;
      }
      parts.add(list(from, to, width));
      from = to;
    }
    return parts;
  }

  /** From the origin downwards; a note never begins on one line and ends in another list. */
  private Sketch list(int from, int to, double width) {
    Sketch sketch = new Sketch();
    double y = 0;
    sketch.text(0, y, heading + (from > 0 ? " (continued)" : ""), SIZE + 2, true, Anchor.START);
    y += LINE + 4;
    for (int i = from; i < to; i++) {
      Note note = shown.get(i);
      sketch.add(new Shape.Target(0, y - LINE, id(i + 1)));
      mark(sketch, RADIUS, y - 3.5, i + 1, note.place);
      for (String line : Fit.lines(note.words, SIZE, width - 3 * RADIUS)) {
        sketch.text(3 * RADIUS, y, line, SIZE);
        y += LINE;
      }
      y += 5;
    }
    return sketch;
  }

  private static String id(int number) {
    return "finding-" + number;
  }

  private static void mark(Sketch sketch, double x, double y, int number, String to) {
    sketch.add(new Shape.Circle(x, y, number > 99 ? WIDE_RADIUS : RADIUS, Stroke.THIN, Fill.CHANGED));
    sketch.text(x, y + 3.8, Integer.toString(number), SIZE, true, Anchor.MIDDLE);
    Optional.of(to).filter(id -> !id.isEmpty())
        .ifPresent(id -> sketch.add(new Shape.Link(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS, id,
            id.equals(id(number)) ? "finding " + number : "place of finding " + number)));
  }
}
