package wattle.emit.media.picture;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import java.io.File;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Element;

/** Draws the pictures that stand in a page, as {@link PdfPicture} draws them alone. */
final class PageDrawings implements SVGDrawer {
  /** What is read aloud in place of the picture; the layout takes it from there when it tags the figure. */
  private static final String ALTERNATIVE = "alt";

  private UnreadablePictureException failure;

  /** The first picture that could not be read; the layout itself has no way to fail. */
  Optional<UnreadablePictureException> failure() {
    return Optional.ofNullable(failure);
  }

  @Override
  public SVGImage buildSVGImage(
      Element svg, Box box, CssContext context, double cssWidth, double cssHeight, double dotsPerPixel) {
    try {
      String text = textOf(svg);
      if (!svg.hasAttribute(ALTERNATIVE)) {
        svg.setAttribute(ALTERNATIVE, SvgWords.of(text).inOne());
      }
      OutlinedSvg picture = OutlinedSvg.lifted(text);
      double within = box.getContainingBlock() == null ? 0 : box.getContainingBlock().getContentWidth();
      double most = box.getStyle().isMaxWidthNone()
          ? Double.POSITIVE_INFINITY
          : box.getStyle().getMaxWidth(context, (int) within);
      return PageDrawing.sized(picture, cssWidth, cssHeight, most, dotsPerPixel);
    } catch (UnreadablePictureException e) {
      failure = failure == null ? e : failure;
      return PageDrawing.EMPTY;
    }
  }

  private static String textOf(Element svg) throws UnreadablePictureException {
    try {
      Transformer copy = TransformerFactory.newDefaultInstance().newTransformer();
      copy.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      StringWriter out = new StringWriter();
      copy.transform(new DOMSource(svg), new StreamResult(out));
      return out.toString();
    } catch (TransformerException e) {
      throw new UnreadablePictureException("a picture in the page cannot be read: " + e.getMessage(), e);
    }
  }

  @Override
  public void importFontFaceRules(List<FontFaceRule> fontFaces, SharedContext shared) {
    // the shipped faces are the only ones
  }

  @Override
  public void addFontFile(File fontFile, String family, Integer weight, FontStyle style) {
    // the shipped faces are the only ones
  }

  @Override
  public void close() {
    // holds nothing open
  }
}
