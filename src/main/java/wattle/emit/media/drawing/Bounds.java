package wattle.emit.media.drawing;

/** The room that something takes. */
public record Bounds(double left, double top, double right, double bottom) {
  public double width() {
    return right - left;
  }

  public double height() {
    return bottom - top;
  }

  /** Whether the two share room; a common edge is none. */
  public boolean overlaps(Bounds other) {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }

  /** Whether the other lies wholly within. */
  public boolean contains(Bounds other) {
    return left <= other.left && top <= other.top && right >= other.right && bottom >= other.bottom;
  }

  /** Grown on every side; shrunk where negative. */
  public Bounds grown(double by) {
    return new Bounds(left - by, top - by, right + by, bottom + by);
  }

  /** What holds both. */
  public Bounds with(Bounds other) {
    return new Bounds(
        Math.min(left, other.left), Math.min(top, other.top), Math.max(right, other.right),
        Math.max(bottom, other.bottom));
  }

  Bounds moved(double x, double y) {
    return new Bounds(left + x, top + y, right + x, bottom + y);
  }
}
