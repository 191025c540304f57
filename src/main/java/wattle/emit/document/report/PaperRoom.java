package wattle.emit.document.report;

import java.util.List;
import java.util.function.BiFunction;
import wattle.emit.media.drawing.Drawing;

/**
 * The room for strips of a picture on a letter sheet of the report, in pixels of the picture: as much as there is within the
 * margins when type of nine pixels is printed with six points, the least that is read well.
 */
public enum PaperRoom {
  UPRIGHT(800, 1010), TURNED(1065, 720);

  private final double width;
  private final double height;

  PaperRoom(double width, double height) {
    this.width = width;
    this.height = height;
  }

  public double width() {
    return width;
  }

  public double height() {
    return height;
  }

  /** The margin around a strip. */
  private static final double MARGIN = 4;

  /**
   * A picture in strips on upright sheets; on turned ones where a single box is wider than an upright one.
   *
   * @param strips the picture in strips that are no wider and no higher than asked for, where they can be
   */
  public static List<Drawing> fitted(BiFunction<Double, Double, List<Drawing>> strips) {
    List<Drawing> upright = strips.apply(UPRIGHT.width - MARGIN, UPRIGHT.height - MARGIN);
    return of(upright) == UPRIGHT ? upright : strips.apply(TURNED.width - MARGIN, TURNED.height - MARGIN);
  }

  /** The sheets that strips are for. */
  static PaperRoom of(List<Drawing> strips) {
    return strips.stream().allMatch(s -> s.width() <= UPRIGHT.width) ? UPRIGHT : TURNED;
  }
}
