package wattle.emit.media.picture;

import java.util.Map;
import java.util.Optional;

/**
 * The properties that decide how a text is drawn, as an element inherits them and passes them on.
 *
 * @param families as CSS writes them
 * @param size in user units
 * @param anchor {@code start}, {@code middle} or {@code end}
 * @param baseline as the property {@code dominant-baseline} names it
 * @param fill any paint of SVG
 * @param stroke any paint of SVG
 * @param opaque whether nothing from here up is translucent
 * @param shown whether it is drawn at all
 * @param spaces whether each space counts
 */
record TextStyle(String families, double size, boolean bold, String anchor, String baseline, String fill, String stroke,
    boolean opaque, boolean shown, boolean spaces) {

  static final TextStyle INITIAL = new TextStyle("sans-serif", 16, false, "start", "auto", "black", "none", true, true, false);

  /** This style as an element changes it that says the following about itself. */
  TextStyle with(Map<String, String> says) {
    double newSize = Optional.ofNullable(says.get("font-size")).map(this::sizeOf).orElse(size);
    String weight = says.getOrDefault("font-weight", bold ? "bold" : "normal");
    boolean translucent = opacity(says, "opacity") < 1 || opacity(says, "fill-opacity") < 1;
    boolean hidden = "none".equals(says.get("display"));
    String visibility = says.getOrDefault("visibility", shown ? "visible" : "hidden");
    return new TextStyle(
        says.getOrDefault("font-family", families),
        newSize,
        weight.startsWith("bold") || weight.matches("[6-9]00"),
        says.getOrDefault("text-anchor", anchor),
        says.getOrDefault("dominant-baseline", baseline),
        inherited(says.get("fill"), fill),
        inherited(says.get("stroke"), stroke),
        opaque && !translucent,
        visibility.equals("visible") && !hidden,
        says.containsKey("xml:space") ? says.get("xml:space").equals("preserve") : spaces);
  }

  Face face() {
    return Face.of(families, bold);
  }

  /** How far the baseline of the text lies below the y that was given for it. */
  double shift() {
    Face face = face();
    return switch (baseline) {
      case "middle" -> size * 0.27; // half of the height of an x in DejaVu Sans
      case "central" -> (face.ascent(size) - face.descent(size)) / 2;
      case "hanging", "text-before-edge", "text-top" -> face.ascent(size);
      case "text-after-edge", "ideographic", "text-bottom" -> -face.descent(size);
      default -> 0;
    };
  }

  private double sizeOf(String text) {
    return switch (text) {
      case "xx-small" -> 9;
      case "x-small" -> 10;
      case "small" -> 13;
      case "medium" -> 16;
      case "large" -> 18;
      case "x-large" -> 24;
      case "smaller" -> size / 1.2;
      case "larger" -> size * 1.2;
      default -> SvgLength.pixels(text, size, size, size);
    };
  }

  private static String inherited(String said, String before) {
    return said == null || said.equals("inherit") ? before : said;
  }

  private static double opacity(Map<String, String> says, String name) {
    return SvgLength.pixels(says.getOrDefault(name, "1"), 1, 1, 1);
  }
}
