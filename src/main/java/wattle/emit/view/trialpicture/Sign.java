package wattle.emit.view.trialpicture;

import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shape.Fill;
import wattle.emit.media.drawing.Shape.Stroke;
import wattle.emit.media.drawing.Sketch;

/** Signs at the worst figures; each has a shape of its own, so that print in black and white keeps them apart. */
enum Sign {
  NONE(""),
  /** A disc. */
  VOLTAGE("voltage too low, or farthest from nominal on the branch"),
  /** A square. */
  HEAT("hottest conductor on the branch"),
  /** An arrow head. */
  JOINT("joint with added resistance"),
  /** A square stood on a corner. */
  SOURCE("source of the house"),
  /** A disc with a ring around it. */
  DANGER("voltage too high, live metal, fault, conductor above its ampacity, breaker or protection that would open");

  static final double WIDTH = 12;

  private final String words;

  Sign(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  /** Drawn from x to x + {@link #WIDTH}, its middle at a height. */
  void draw(Sketch to, double x, double y) {
    double middle = x + WIDTH / 2;
    switch (this) {
      case NONE -> {
      }
      case VOLTAGE -> to.add(new Shape.Circle(middle, y, 4.5, Stroke.THIN, Fill.ALARM));
      case HEAT -> to.box(middle - 4.5, y - 4.5, 9, 9, Stroke.THIN, Fill.ALARM);
      case JOINT -> to.add(new Shape.Triangle(middle, y - 5, middle - 5, y + 4.5, middle + 5, y + 4.5));
      case SOURCE -> to.line(middle, y - 5.5, middle + 5.5, y).line(middle + 5.5, y, middle, y + 5.5).line(middle, y + 5.5, middle - 5.5, y)
          .line(middle - 5.5, y, middle, y - 5.5);
      case DANGER -> {
        to.add(new Shape.Circle(middle, y, 5.6, Stroke.THIN, Fill.PAPER));
        to.add(new Shape.Circle(middle, y, 3, Stroke.THIN, Fill.ALARM));
      }
      default -> throw new AssertionError(this);
    }
  }
}
