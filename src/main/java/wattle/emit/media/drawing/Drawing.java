package wattle.emit.media.drawing;

import java.util.List;

/**
 * A sheet of placed shapes.
 *
 * @param title what it shows, for viewers and screen readers
 * @param description a sentence or more that says in words what a reader would see
 */
public record Drawing(double width, double height, List<Shape> shapes, String title, String description) {
  public Drawing {
    shapes = List.copyOf(shapes);
  }
}
