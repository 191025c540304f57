package wattle.emit.media.picture;

import java.awt.geom.AffineTransform;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The outer size of a picture in CSS pixels, and the way from its user units to pixels.
 *
 * @param toPixels scale and shift that fit the view box into the size, in the middle unless the picture is stretched
 */
record SvgViewport(double width, double height, AffineTransform toPixels) {

  static SvgViewport of(Map<String, String> root) throws UnreadablePictureException {
    double[] box = Stream.of(root.getOrDefault("viewBox", "").strip().split("[\\s,]+")).filter(s -> !s.isEmpty())
        .mapToDouble(s -> SvgLength.pixels(s, 16, 0, 0)).toArray();
    boolean boxed = box.length == 4 && box[2] > 0 && box[3] > 0;
    double width = SvgLength.pixels(root.getOrDefault("width", "100%"), 16, boxed ? box[2] : 0, 0);
    double height = SvgLength.pixels(root.getOrDefault("height", "100%"), 16, boxed ? box[3] : 0, 0);
    if (!(width > 0 && height > 0)) {
      throw new UnreadablePictureException("the picture has no size: <svg> needs width and height, or a viewBox");
    }
    AffineTransform toPixels = new AffineTransform();
    if (boxed) {
      double x = width / box[2];
      double y = height / box[3];
      if (!root.getOrDefault("preserveAspectRatio", "").startsWith("none")) {
        x = y = Math.min(x, y);
      }
      toPixels.translate((width - x * box[2]) / 2, (height - y * box[3]) / 2);
      toPixels.scale(x, y);
      toPixels.translate(-box[0], -box[1]);
    }
    return new SvgViewport(width, height, toPixels);
  }
}
