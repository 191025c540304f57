package wattle.emit.picture;

/**
 * A sheet to print on, in points, upright. Sources: ISO 216 for the A sizes, ANSI/ASME Y14.1 for letter and tabloid.
 *
 * @param width the shorter side
 * @param height the longer side
 */
public record Paper(double width, double height) {
  public static final Paper A4 = millimetres(210, 297);
  public static final Paper A3 = millimetres(297, 420);
  public static final Paper LETTER = new Paper(612, 792);
  public static final Paper TABLOID = new Paper(792, 1224);

  /** The sheet turned so that its longer side lies along that of what is printed. */
  Paper turnedFor(double pictureWidth, double pictureHeight) {
    return pictureWidth > pictureHeight ? new Paper(height, width) : this;
  }

  private static Paper millimetres(double width, double height) {
    return new Paper(width * 72 / 25.4, height * 72 / 25.4);
  }
}
