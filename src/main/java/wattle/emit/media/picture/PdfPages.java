package wattle.emit.media.picture;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import com.openhtmltopdf.util.XRRuntimeException;
import java.io.IOException;
import java.util.EnumSet;
import java.util.regex.Pattern;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/**
 * Pages as PDF: takes a page that is both HTML and well-formed XML, with its styles and pictures inside it, and lays it
 * out for paper. Every text is embedded in the shipped faces, whatever family its style names; the document is tagged,
 * so that it can be read aloud. Nothing outside the page is read.
 */
public final class PdfPages {
  /**
   * The caption of a table. Where one ends a page, the library finds no row that it belongs to and stops; as a line above the table it
   * keeps to the first row.
   */
  private static final Pattern CAPTION = Pattern.compile("(<table[^>]*>)\\s*<caption>(.*?)</caption>", Pattern.DOTALL);
  private static final String ABOVE = "<p class=\"caption\" style=\"font-weight: bold; margin: 0; padding: 0.2em 0;"
      + " page-break-after: avoid\">$2</p>$1";

  /**
   * @param html the page; {@code <svg>} may stand in it
   * @param title shown by readers
   * @throws UnreadablePictureException if the page is not well-formed XML, or a picture in it is not SVG
   */
  public static byte[] of(String html, String title) throws UnreadablePictureException {
    XRLog.setLoggingEnabled(false); // it would print each property of a style that is meant for screens
    PageDrawings drawings = new PageDrawings();
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.withHtmlContent(CAPTION.matcher(html).replaceAll(ABOVE), null);
    builder.withProducer(Producer.NAME);
    builder.usePdfUaAccessibility(true);
    builder.useReplacementText(PdfFonts.MISSING);
    builder.useSVGDrawer(drawings);
    builder.useExternalResourceAccessControl(
        (uri, type) -> uri.startsWith("data:"), ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
    addFonts(builder);
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.layout();
      renderer.createPDFWithoutClosing();
      if (drawings.failure().isPresent()) {
        throw drawings.failure().get();
      }
      artifactsInPlace(renderer.getPdfDocument());
      return PdfFile.bytes(renderer.getPdfDocument(), title);
    } catch (UnreadablePictureException e) {
      throw e;
    } catch (IOException | XRRuntimeException e) {
      throw new UnreadablePictureException("the page cannot be laid out: " + rootOf(e).getMessage(), e);
    }
  }

  /** The generic families under the names that the library has for them. */
  private static void addFonts(PdfRendererBuilder builder) {
    EnumSet<FSFontUseCase> named = EnumSet.of(FSFontUseCase.DOCUMENT);
    EnumSet<FSFontUseCase> otherwise = EnumSet.of(FSFontUseCase.FALLBACK_PRE);
    for (Face face : Face.values()) {
      builder.useFont(face::open, face.family(), face.weight(), FontStyle.NORMAL, true, named);
      if (face != Face.MONO) {
        builder.useFont(face::open, "SansSerif", face.weight(), FontStyle.NORMAL, true, named);
        builder.useFont(face::open, "Serif", face.weight(), FontStyle.NORMAL, true, named);
        builder.useFont(face::open, face.family(), face.weight(), FontStyle.NORMAL, true, otherwise);
      } else {
        builder.useFont(face::open, "Monospaced", face.weight(), FontStyle.NORMAL, true, named);
      }
    }
  }

  /**
   * The library describes every border, background and link as an object of its own, tens of thousands in a report, and the
   * time to write a document grows with the square of their number. Written where they are used they cost nothing.
   */
  private static void artifactsInPlace(PDDocument document) throws IOException {
    for (PDPage page : document.getPages()) {
      COSDictionary properties = page.getResources().getCOSObject().getCOSDictionary(COSName.PROPERTIES);
      if (properties != null) {
        properties.getValues().forEach(value -> value.setDirect(true));
      }
      for (PDAnnotation annotation : page.getAnnotations()) {
        COSDictionary action = annotation.getCOSObject().getCOSDictionary(COSName.A);
        if (action != null) {
          action.setDirect(true);
        }
        // ISO 14289-1, 7.18.5: a link says in words what it is.
        if (annotation.getContents() == null) {
          annotation.setContents("to another place in this document");
        }
      }
    }
  }

  private static Throwable rootOf(Throwable e) {
    return e.getCause() == null ? e : rootOf(e.getCause());
  }

  private PdfPages() {}
}
