package wattle.emit.media.picture;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lengths as SVG writes them, in CSS pixels: 96 to the inch. */
final class SvgLength {
  private static final Pattern LENGTH = Pattern.compile("\\s*([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?)\\s*([a-zA-Z%]*).*",
      Pattern.DOTALL);

  /**
   * The first length of a text.
   *
   * @param em the font size in force
   * @param whole what 100 % is
   * @param absent what an empty or unreadable text stands for
   */
  static double pixels(String text, double em, double whole, double absent) {
    Matcher parts = LENGTH.matcher(text);
    if (!parts.matches()) {
      return absent;
    }
    double number = Double.parseDouble(parts.group(1));
    return switch (parts.group(2)) {
      case "pt" -> number * 96 / 72;
      case "pc" -> number * 16;
      case "in" -> number * 96;
      case "mm" -> number * 96 / 25.4;
      case "cm" -> number * 96 / 2.54;
      case "em" -> number * em;
      case "ex" -> number * em / 2;
      case "%" -> number / 100 * whole;
      default -> number;
    };
  }

  private SvgLength() {}
}
