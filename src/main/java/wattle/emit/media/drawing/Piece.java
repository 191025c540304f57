package wattle.emit.media.drawing;

import java.util.List;

/**
 * A part of a view that is not torn apart when the view is put on sheets.
 *
 * @param name the only one of its kind in the view; {@link Shape.Continuation}s of other pieces name it
 * @param shapes anywhere on the plane, at least one
 */
public record Piece(String name, List<Shape> shapes) {
  public Piece {
    shapes = List.copyOf(shapes);
    if (shapes.isEmpty()) {
      throw new IllegalArgumentException("piece " + name + " is empty");
    }
  }

  /** What holds every shape. */
  public Bounds bounds() {
    return shapes.stream().map(Shape::bounds).reduce(Bounds::with).orElseThrow();
  }
}
