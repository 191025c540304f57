package wattle.emit.media.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;

/** Pictures as pixels, on white. */
public final class PngPicture {
  /** Four bytes a pixel in memory; a sheet of A0 at 150 pixels an inch has 35 million. */
  private static final long MOST_PIXELS = 120_000_000;

  /**
   * Draws a picture as PNG.
   *
   * @param svg the picture, in SVG
   * @param pixelsPerInch 96 gives one pixel to a CSS pixel; print wants 300
   * @throws UnreadablePictureException if it is not SVG, or has too many pixels to be held in memory
   */
  public static byte[] of(String svg, int pixelsPerInch) throws UnreadablePictureException {
    OutlinedSvg outlined = OutlinedSvg.outlined(svg);
    double scale = pixelsPerInch / 96.0;
    long width = Math.max(1, Math.round(outlined.width() * scale));
    long height = Math.max(1, Math.round(outlined.height() * scale));
    if (width * height > MOST_PIXELS) {
      throw new UnreadablePictureException(String.format(
          "the picture would have %d × %d pixels at %d pixels per inch; use fewer, or for SVG or PDF",
          width, height, pixelsPerInch));
    }
    BufferedImage image = new BufferedImage((int) width, (int) height, BufferedImage.TYPE_INT_RGB);
    Graphics2D canvas = image.createGraphics();
    try {
      canvas.setColor(Color.WHITE);
      canvas.fillRect(0, 0, (int) width, (int) height);
      canvas.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      canvas.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      canvas.scale(scale, scale);
      SvgDrawing.of(outlined).draw(canvas);
    } finally {
      canvas.dispose();
    }
    return PngEncoder.encode(image, pixelsPerInch);
  }

  private PngPicture() {}
}
