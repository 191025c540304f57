package wattle.emit.media.picture;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.util.Matrix;

/**
 * Pictures as PDF, a page each: lines stay lines, and labels are text that can be found and copied, in an embedded
 * font. Each is tagged as a figure, with its title and description for those who do not see it.
 */
public final class PdfPicture {
  private static final double POINTS_PER_PIXEL = 0.75;
  private static final double MARGIN = 28; // about 10 mm, what an office printer cannot reach
  private static final double LONGEST_SIDE = 14_400; // limit of readers, ISO 32000-1 annex C

  /**
   * @param svgs the pictures, in SVG
   * @param title shown by readers
   * @param paper what to fit each picture on, turned as suits it and never enlarged; absent for pages of its own size
   * @throws UnreadablePictureException if one is not SVG
   */
  public static byte[] of(List<String> svgs, String title, Optional<Paper> paper) throws UnreadablePictureException {
    try (PDDocument document = new PDDocument()) {
      PdfFonts fonts = new PdfFonts(document);
      PdfTags tags = new PdfTags(document);
      for (String svg : svgs) {
        PDPage page = page(document, fonts, OutlinedSvg.lifted(svg), paper);
        SvgWords words = SvgWords.of(svg);
        tags.add(page, words.title().isEmpty() ? title : words.title(), words.inOne().isEmpty() ? title : words.inOne());
      }
      return PdfFile.bytes(document, title);
    } catch (UnreadablePictureException e) {
      throw e;
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory failed", e);
    }
  }

  private static PDPage page(PDDocument document, PdfFonts fonts, OutlinedSvg picture, Optional<Paper> paper)
      throws IOException {
    double width = picture.width() * POINTS_PER_PIXEL;
    double height = picture.height() * POINTS_PER_PIXEL;
    double shrink = Math.min(1, LONGEST_SIDE / Math.max(width, height));
    Paper sheet = new Paper(width * shrink, height * shrink);
    if (paper.isPresent()) {
      sheet = paper.get().turnedFor(width, height);
      shrink = Math.min(1, Math.min((sheet.width() - 2 * MARGIN) / width, (sheet.height() - 2 * MARGIN) / height));
    }
    PDPage page = new PDPage(new PDRectangle((float) sheet.width(), (float) sheet.height()));
    document.addPage(page);

    AffineTransform toPage = new AffineTransform();
    toPage.translate((sheet.width() - width * shrink) / 2, (sheet.height() + height * shrink) / 2);
    toPage.scale(shrink * POINTS_PER_PIXEL, -shrink * POINTS_PER_PIXEL);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      content.beginMarkedContent(PdfTags.FIGURE, PdfTags.content());
      shapes(document, content, picture, toPage);
      for (PlacedText text : picture.texts()) {
        text(content, fonts, text, toPage);
      }
      content.endMarkedContent();
    }
    return page;
  }

  /** The canvas makes a form as large as the picture, its origin at the lower left and y upwards. */
  private static void shapes(
      PDDocument document, PDPageContentStream content, OutlinedSvg picture, AffineTransform toPage) throws IOException {
    PdfBoxGraphics2D canvas = new PdfBoxGraphics2D(document, (float) picture.width(), (float) picture.height());
    SvgDrawing.of(picture).draw(canvas);
    canvas.dispose();
    AffineTransform placed = new AffineTransform(toPage);
    placed.concatenate(new AffineTransform(1, 0, 0, -1, 0, picture.height()));
    content.saveGraphicsState();
    content.transform(new Matrix(placed));
    content.drawForm(canvas.getXFormObject());
    content.restoreGraphicsState();
  }

  private static void text(PDPageContentStream content, PdfFonts fonts, PlacedText text, AffineTransform toPage)
      throws IOException {
    AffineTransform placed = new AffineTransform(toPage);
    placed.concatenate(text.placed());
    placed.scale(1, -1);
    content.beginText();
    content.setFont(fonts.of(text.face()), (float) text.size());
    content.setNonStrokingColor(
        (text.rgb() >> 16 & 0xFF) / 255f, (text.rgb() >> 8 & 0xFF) / 255f, (text.rgb() & 0xFF) / 255f);
    content.setTextMatrix(new Matrix(placed));
    content.showText(PdfFonts.encodable(text.text(), text.face()));
    content.endText();
  }

  private PdfPicture() {}
}
