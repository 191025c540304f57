package wattle.emit.media.picture;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer.SVGImage;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxOutputDevice;
import com.openhtmltopdf.render.AbstractOutputDevice;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.geom.AffineTransform;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * A picture at the place that the layout of a page gives it.
 *
 * @param width in CSS pixels
 * @param height in CSS pixels
 * @param dotsPerPixel how many units of the layout make a pixel
 */
record PageDrawing(OutlinedSvg picture, double width, double height, double dotsPerPixel) implements SVGImage {
  static final PageDrawing EMPTY = new PageDrawing(new OutlinedSvg("<svg/>", 1, 1, List.of()), 0, 0, 1);

  /**
   * The size that the style asks for, in dots; a side that it leaves open (below zero) follows the other, and a picture
   * that is wider than it may be shrinks as a whole.
   */
  static PageDrawing sized(
      OutlinedSvg picture, double cssWidth, double cssHeight, double mostWidth, double dotsPerPixel) {
    double ratio = picture.height() / picture.width();
    double width = cssWidth >= 0
        ? cssWidth / dotsPerPixel
        : cssHeight >= 0
            ? cssHeight / dotsPerPixel / ratio
            : picture.width();
    double height = cssHeight >= 0 ? cssHeight / dotsPerPixel : width * ratio;
    double shrink = width > 0 ? Math.min(1, mostWidth / dotsPerPixel / width) : 1;
    return new PageDrawing(picture, width * shrink, height * shrink, dotsPerPixel);
  }

  @Override
  public int getIntrinsicWidth() {
    return (int) Math.round(width * dotsPerPixel);
  }

  @Override
  public int getIntrinsicHeight() {
    return (int) Math.round(height * dotsPerPixel);
  }

  @Override
  public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
    if (width <= 0 || height <= 0) {
      return;
    }
    double scale = Math.min(width / picture.width(), height / picture.height());
    AffineTransform fit = AffineTransform.getTranslateInstance(
        (width - picture.width() * scale) / 2, (height - picture.height() * scale) / 2);
    fit.scale(scale, scale);
    device.drawWithGraphics((float) x, (float) y, (float) Math.ceil(width), (float) Math.ceil(height), canvas -> {
      canvas.transform(fit);
      try {
        SvgDrawing.of(picture).draw(canvas);
      } catch (UnreadablePictureException e) {
        throw new UncheckedIOException(e);
      }
    });
    AffineTransform toPage = AffineTransform.getTranslateInstance(x, y);
    toPage.scale(dotsPerPixel, dotsPerPixel);
    toPage.concatenate(fit);
    for (PlacedText text : picture.texts()) {
      draw(text, (PdfBoxOutputDevice) device, context, toPage);
    }
  }

  /** As text where it stands upright; the library has no way to turn text, so turned labels become outlines. */
  private static void draw(PlacedText text, PdfBoxOutputDevice device, RenderingContext context, AffineTransform toPage) {
    AffineTransform placed = new AffineTransform(toPage);
    placed.concatenate(text.placed());
    device.setColor(new FSRGBColor(text.rgb() >> 16 & 0xFF, text.rgb() >> 8 & 0xFF, text.rgb() & 0xFF));
    boolean upright = placed.getShearX() == 0 && placed.getShearY() == 0
        && placed.getScaleX() > 0 && Math.abs(placed.getScaleX() - placed.getScaleY()) < 1e-6 * placed.getScaleX();
    if (!upright) {
      device.fill(placed.createTransformedShape(text.face().outline(text.text(), text.size())));
      return;
    }
    FontSpecification font = specification(text.face(), (float) (text.size() * placed.getScaleY()));
    ((AbstractOutputDevice) device).setFontSpecification(font);
    device.drawStringFast(
        PdfFonts.encodable(text.text(), text.face()),
        (float) placed.getTranslateX(),
        (float) placed.getTranslateY(),
        null,
        ((PdfBoxFSFont) context.getFont(font)).getFontDescriptions().get(0),
        font.size);
  }

  private static FontSpecification specification(Face face, float size) {
    FontSpecification font = new FontSpecification();
    font.size = size;
    font.families = new String[]{face.family()};
    font.fontWeight = face == Face.SANS_BOLD ? IdentValue.BOLD : IdentValue.NORMAL;
    font.fontStyle = IdentValue.NORMAL;
    font.variant = IdentValue.NORMAL;
    return font;
  }
}
