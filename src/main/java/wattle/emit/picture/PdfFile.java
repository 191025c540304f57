package wattle.emit.picture;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What every PDF of ours has in common: who made it, its title, and no date, so that the same plan gives the same bytes. */
final class PdfFile {
  static byte[] bytes(PDDocument document, String title) throws IOException {
    PDDocumentInformation about = new PDDocumentInformation();
    about.setTitle(title);
    about.setProducer(Producer.NAME);
    about.setCreator(Producer.NAME);
    document.setDocumentInformation(about);
    document.getDocumentCatalog().setLanguage("en");
    PDViewerPreferences view = new PDViewerPreferences(new COSDictionary());
    view.setDisplayDocTitle(true);
    document.getDocumentCatalog().setViewerPreferences(view);
    document.setDocumentId(0L); // otherwise made from the clock
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
    // Plain objects, so that who made the file can be read from its bytes; the content is compressed all the same.
    document.save(out, CompressParameters.NO_COMPRESSION);
    return out.toByteArray();
  }

  private PdfFile() {}
}
