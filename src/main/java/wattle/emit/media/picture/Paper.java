package wattle.emit.media.picture;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A sheet to print on, in points. Those named here are upright. Sources: ISO 216 for the A sizes, ANSI/ASME Y14.1 for
 * letter and tabloid.
 */
public record Paper(double width, double height) {
  public static final Paper A4 = millimeters(210, 297);
  public static final Paper A3 = millimeters(297, 420);
  public static final Paper LETTER = new Paper(612, 792);
  public static final Paper TABLOID = new Paper(792, 1224);

  private static final Map<String, Paper> NAMED = Map.of("letter", LETTER, "tabloid", TABLOID, "a4", A4, "a3", A3);

  /** The sheet with this name, in whatever letters it is written; absent for one that is not known. */
  public static Optional<Paper> named(String name) {
    return Optional.ofNullable(NAMED.get(name.toLowerCase(Locale.ROOT)));
  }

  /** The sheet on its longer side. */
  public Paper turned() {
    return new Paper(height, width);
  }

  /** The sheet turned so that its longer side lies along that of what is printed. */
  Paper turnedFor(double pictureWidth, double pictureHeight) {
    return pictureWidth > pictureHeight ? turned() : this;
  }

  private static Paper millimeters(double width, double height) {
    return new Paper(width * 72 / 25.4, height * 72 / 25.4);
  }
}
