package wattle.emit.media.drawing;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.picture.Face;
import wattle.emit.media.text.VisibleText;

/** A placed shape. */
public sealed interface Shape {
  /** The room it takes, without the thickness of its line. */
  Bounds bounds();

  /** The same elsewhere. */
  Shape moved(double x, double y);

  /** The same larger or smaller, seen from the origin; lines keep their thickness. */
  Shape scaled(double by);

  /** Whether a shape is drawn whole or with gaps. */
  enum Stroke {
    THIN(1, ""), THICK(3, ""), DASHED(1, "4 3"), FAINT(0.6, "");

    private final double width;
    private final String dashes;

    Stroke(double width, String dashes) {
      this.width = width;
      this.dashes = dashes;
    }

    public double width() {
      return width;
    }

    /** As SVG writes it; empty for a whole line. */
    public String dashes() {
      return dashes;
    }
  }

  /** How a closed shape is filled. */
  enum Fill {
    NONE, INK, PAPER,
    /** Light gray, which black-and-white print keeps apart from paper. */
    SHADE,
    /** The screw of a hot. */
    BRASS,
    /** The odd screw of a three-way switch. */
    DARK,
    /** The screw of a neutral. */
    SILVER,
    /** The screw of a ground. */
    GREEN,
    /** The ground under what came. */
    ADDED,
    /** The ground under what went. */
    REMOVED,
    /** The ground under what is not as it was. */
    CHANGED,
    /** What a reader must see first; its shape says the same without the color. */
    ALARM
  }

  /** Where a text stands relative to its point. */
  enum Anchor {
    START, MIDDLE, END
  }

  /** A straight line. */
  record Line(double x1, double y1, double x2, double y2, Stroke stroke) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    }

    @Override
    public Shape moved(double x, double y) {
      return new Line(x1 + x, y1 + y, x2 + x, y2 + y, stroke);
    }

    @Override
    public Shape scaled(double by) {
      return new Line(x1 * by, y1 * by, x2 * by, y2 * by, stroke);
    }
  }

  /** A rectangle. */
  record Box(double x, double y, double width, double height, double corner, Stroke stroke, Fill fill)
      implements
        Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(x, y, x + width, y + height);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Box(x + dx, y + dy, width, height, corner, stroke, fill);
    }

    @Override
    public Shape scaled(double by) {
      return new Box(x * by, y * by, width * by, height * by, corner * by, stroke, fill);
    }
  }

  /** A circle. */
  record Circle(double x, double y, double radius, Stroke stroke, Fill fill) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(x - radius, y - radius, x + radius, y + radius);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Circle(x + dx, y + dy, radius, stroke, fill);
    }

    @Override
    public Shape scaled(double by) {
      return new Circle(x * by, y * by, radius * by, stroke, fill);
    }
  }

  /**
   * A curve from one point to another, bulging toward a control point (a quadratic Bézier curve).
   *
   * @param controlX of the point that the curve is drawn to
   */
  record Curve(double x1, double y1, double controlX, double controlY, double x2, double y2, Stroke stroke)
      implements
        Shape {
    @Override
    public Bounds bounds() {
      double midX = (x1 + 2 * controlX + x2) / 4;
      double midY = (y1 + 2 * controlY + y2) / 4;
      return new Bounds(
          Math.min(midX, Math.min(x1, x2)), Math.min(midY, Math.min(y1, y2)), Math.max(midX, Math.max(x1, x2)),
          Math.max(midY, Math.max(y1, y2)));
    }

    @Override
    public Shape moved(double x, double y) {
      return new Curve(x1 + x, y1 + y, controlX + x, controlY + y, x2 + x, y2 + y, stroke);
    }

    @Override
    public Shape scaled(double by) {
      return new Curve(x1 * by, y1 * by, controlX * by, controlY * by, x2 * by, y2 * by, stroke);
    }
  }

  /** A filled triangle, the head of an arrow. */
  record Triangle(double x1, double y1, double x2, double y2, double x3, double y3) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(
          Math.min(x1, Math.min(x2, x3)), Math.min(y1, Math.min(y2, y3)), Math.max(x1, Math.max(x2, x3)),
          Math.max(y1, Math.max(y2, y3)));
    }

    @Override
    public Shape moved(double x, double y) {
      return new Triangle(x1 + x, y1 + y, x2 + x, y2 + y, x3 + x, y3 + y);
    }

    @Override
    public Shape scaled(double by) {
      return new Triangle(x1 * by, y1 * by, x2 * by, y2 * by, x3 * by, y3 * by);
    }
  }

  /** A shaded area within straight edges, without an outline. */
  record Area(List<Corner> corners) implements Shape {
    public Area {
      corners = List.copyOf(corners);
      if (corners.size() < 3) {
        throw new IllegalArgumentException("an area needs three corners, not " + corners.size());
      }
    }

    @Override
    public Bounds bounds() {
      return corners.stream().map(c -> new Bounds(c.x(), c.y(), c.x(), c.y())).reduce(Bounds::with).orElseThrow();
    }

    @Override
    public Shape moved(double x, double y) {
      return new Area(corners.stream().map(c -> new Corner(c.x() + x, c.y() + y)).toList());
    }

    @Override
    public Shape scaled(double by) {
      return new Area(corners.stream().map(c -> new Corner(c.x() * by, c.y() * by)).toList());
    }
  }

  /**
   * A line of text.
   *
   * @param y of the baseline
   * @param text one line, with nothing hidden in it
   * @param whole what was meant, where the text was cut to fit; shown by viewers on hovering; else empty
   */
  record Text(double x, double y, String text, double size, boolean bold, Anchor anchor, String whole)
      implements
        Shape {
    /** Width by the metrics of the shipped face. */
    public double width() {
      return face().width(text, size);
    }

    private Face face() {
      return bold ? Face.SANS_BOLD : Face.SANS;
    }

    @Override
    public Bounds bounds() {
      double left = switch (anchor) {
        case START -> x;
        case MIDDLE -> x - width() / 2;
        case END -> x - width();
      };
      // Capitals and descenders, not the room that a line of a book would take.
      return new Bounds(left, y - 0.76 * size, left + width(), y + 0.24 * size);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Text(x + dx, y + dy, text, size, bold, anchor, whole);
    }

    @Override
    public Shape scaled(double by) {
      return new Text(x * by, y * by, text, size * by, bold, anchor, whole);
    }
  }

  /**
   * Words that name the place to which another piece of the view comes to lie, a sheet or a part of a picture, which is known when all
   * pieces are set. It is not drawn as it is: {@link #on} makes the text.
   *
   * @param before what comes before the place
   * @param target name of the {@link Piece}
   * @param after what comes behind it
   * @param width beyond which it is cut
   */
  record Continuation(double x, double y, String before, String target, String after, double size, Anchor anchor, double width)
      implements
        Shape {
    /** What takes the most room: no view has more sheets than have numbers of so many digits. */
    public static final String WIDEST = "sheet 888";

    /** @param place where it goes on, such as {@code sheet 2} */
    public Text on(String place) {
      String whole = VisibleText.of(before + place + after);
      String fitting = Fit.within(whole, size, false, width);
      return new Text(x, y, fitting, size, false, anchor, fitting.equals(whole) ? "" : whole);
    }

    @Override
    public Bounds bounds() {
      return on(WIDEST).bounds();
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Continuation(x + dx, y + dy, before, target, after, size, anchor, width);
    }

    @Override
    public Shape scaled(double by) {
      return new Continuation(x * by, y * by, before, target, after, size * by, anchor, width * by);
    }
  }

  /**
   * The room of a thing that a reader may point at. It is drawn as nothing, unless a page makes something of it.
   *
   * @param thing its name, such as {@code P/2+4} or {@code kitchen.c1}
   */
  record Spot(double x, double y, double width, double height, String thing) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(x, y, x + width, y + height);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Spot(x + dx, y + dy, width, height, thing);
    }

    @Override
    public Shape scaled(double by) {
      return new Spot(x * by, y * by, width * by, height * by, thing);
    }
  }

  /**
   * The room of a link to a place in the same picture, {@link Target}.
   *
   * @param to the place's id
   * @param words what it leads to, for those who have a page read to them
   */
  record Link(double x, double y, double width, double height, String to, String words) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(x, y, x + width, y + height);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Link(x + dx, y + dy, width, height, to, words);
    }

    @Override
    public Shape scaled(double by) {
      return new Link(x * by, y * by, width * by, height * by, to, words);
    }
  }

  /** A place that a {@link Link} leads to. */
  record Target(double x, double y, String id) implements Shape {
    @Override
    public Bounds bounds() {
      return new Bounds(x, y, x, y);
    }

    @Override
    public Shape moved(double dx, double dy) {
      return new Target(x + dx, y + dy, id);
    }

    @Override
    public Shape scaled(double by) {
      return new Target(x * by, y * by, id);
    }
  }

  /** A point where the border of an area turns, or a wire begins, bends or ends. */
  record Corner(double x, double y) {}

  /**
   * A conductor or cable along straight pieces. Around it a margin of paper keeps it apart from what it passes over, so
   * that a crossing does not look like a joint.
   *
   * @param corners two or more
   */
  record Wire(List<Corner> corners, Insulation insulation) implements Shape {
    public Wire {
      corners = List.copyOf(corners);
      if (corners.size() < 2) {
        throw new IllegalArgumentException("a wire has two ends");
      }
    }

    @Override
    public Bounds bounds() {
      return corners.stream().map(c -> new Bounds(c.x(), c.y(), c.x(), c.y())).reduce(Bounds::with).orElseThrow();
    }

    @Override
    public Shape moved(double x, double y) {
      return new Wire(corners.stream().map(c -> new Corner(c.x() + x, c.y() + y)).toList(), insulation);
    }

    @Override
    public Shape scaled(double by) {
      return new Wire(corners.stream().map(c -> new Corner(c.x() * by, c.y() * by)).toList(), insulation);
    }

    /** Its straight pieces, as plain lines. */
    public List<Line> pieces() {
      List<Line> pieces = new ArrayList<>();
      for (int i = 1; i < corners.size(); i++) {
        Corner from = corners.get(i - 1);
        Corner to = corners.get(i);
        pieces.add(new Line(from.x(), from.y(), to.x(), to.y(), Stroke.THIN));
      }
      return pieces;
    }
  }
}
