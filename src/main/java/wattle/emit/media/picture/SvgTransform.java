package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the {@code transform} attribute of SVG. */
final class SvgTransform {
  private static final Pattern STEP = Pattern.compile("(\\w+)\\s*\\(([^)]*)\\)");

  static AffineTransform of(String text) {
    AffineTransform all = new AffineTransform();
    Matcher steps = STEP.matcher(text);
    while (steps.find()) {
      double[] n = Stream.of(steps.group(2).strip().split("[\\s,]+")).filter(s -> !s.isEmpty())
          .mapToDouble(Double::parseDouble).toArray();
      all.concatenate(step(steps.group(1), n));
    }
    return all;
  }

  private static AffineTransform step(String name, double[] n) {
    return switch (name + n.length) {
      case "translate1" -> AffineTransform.getTranslateInstance(n[0], 0);
      case "translate2" -> AffineTransform.getTranslateInstance(n[0], n[1]);
      case "scale1" -> AffineTransform.getScaleInstance(n[0], n[0]);
      case "scale2" -> AffineTransform.getScaleInstance(n[0], n[1]);
      case "rotate1" -> AffineTransform.getRotateInstance(Math.toRadians(n[0]));
      case "rotate3" -> AffineTransform.getRotateInstance(Math.toRadians(n[0]), n[1], n[2]);
      case "skewX1" -> AffineTransform.getShearInstance(Math.tan(Math.toRadians(n[0])), 0);
      case "skewY1" -> AffineTransform.getShearInstance(0, Math.tan(Math.toRadians(n[0])));
      case "matrix6" -> new AffineTransform(n);
      default -> throw new IllegalArgumentException("no transformation of SVG: " + name + " of " + n.length + " numbers");
    };
  }

  private SvgTransform() {}
}
