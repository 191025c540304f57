package wattle.emit.media.picture;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.DocumentLimits;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.parser.resources.ResourcePolicy;
import com.github.weisj.jsvg.renderer.NullPlatformSupport;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Graphics2D;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.logging.Level;
import java.util.logging.Logger;

/** A picture without texts, ready to be drawn on a canvas of Java's, in memory or of a PDF. */
final class SvgDrawing {
  /** Pictures of whole towers are large; the library's own limit of 2,000 shapes guards against strangers' files. */
  private static final DocumentLimits LIMITS = new DocumentLimits(256, 64, 2_000_000);

  /** Held, since a logger that nobody holds forgets its level: the library would print on standard error. */
  private static final Logger SILENT = Logger.getLogger("com.github.weisj.jsvg");

  static {
    SILENT.setLevel(Level.OFF);
  }

  private final SVGDocument document;
  private final double width;
  private final double height;

  private SvgDrawing(SVGDocument document, double width, double height) {
    this.document = document;
    this.width = width;
    this.height = height;
  }

  static SvgDrawing of(OutlinedSvg outlined) throws UnreadablePictureException {
    LoaderContext context = LoaderContext.builder()
        .documentLimits(LIMITS)
        .externalResourcePolicy(ResourcePolicy.DENY_EXTERNAL)
        .build();
    byte[] bytes = outlined.svg().getBytes(StandardCharsets.UTF_8);
    SVGDocument document = new SVGLoader().load(new ByteArrayInputStream(bytes), null, context);
    if (document == null) {
      throw new UnreadablePictureException("the picture is not SVG that can be drawn");
    }
    return new SvgDrawing(document, outlined.width(), outlined.height());
  }

  /** Draws with one unit of the canvas to a CSS pixel, from the origin. */
  void draw(Graphics2D canvas) {
    document.renderWithPlatform(
        NullPlatformSupport.INSTANCE, canvas, new ViewBox(0, 0, (float) width, (float) height));
  }
}
