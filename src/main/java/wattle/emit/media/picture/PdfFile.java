package wattle.emit.media.picture;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import wattle.emit.media.file.Mark;
import wattle.emit.media.text.Escape;

/** What every PDF of ours has in common: who made it, its title and language, and no date, so that the same plan gives the same bytes. */
final class PdfFile {
  /** The document as bytes; it is laid out by ISO 14289-1 (PDF/UA), and says so. */
  static byte[] bytes(PDDocument document, String title) throws IOException {
    PDDocumentInformation about = new PDDocumentInformation();
    about.setTitle(title);
    about.setProducer(Producer.NAME);
    about.setCreator(Producer.NAME);
    document.setDocumentInformation(about);
    document.getDocumentCatalog().setLanguage("en");
    document.getDocumentCatalog().setMetadata(metadata(document, title));
    PDViewerPreferences view = new PDViewerPreferences(new COSDictionary());
    view.setDisplayDocTitle(true);
    document.getDocumentCatalog().setViewerPreferences(view);
    document.setDocumentId(0L); // otherwise made from the clock
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
    document.save(out, CompressParameters.DEFAULT_COMPRESSION);
    return out.toByteArray();
  }

  /** In XMP, ISO 16684-1. It is written as it is, so that who made the file can be read from its bytes. */
  private static PDMetadata metadata(PDDocument document, String title) throws IOException {
    String xml = "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
        + "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
        + "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\""
        + " xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">\n"
        + "<dc:format>application/pdf</dc:format>\n<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>\n"
        + "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" + Escape.xml(title) + "</rdf:li></rdf:Alt></dc:title>\n"
        + Mark.PDF_METADATA + "\n<pdfuaid:part>1</pdfuaid:part>\n"
        + "</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>";
    PDMetadata metadata = new PDMetadata(document);
    metadata.importXMPMetadata(xml.getBytes(StandardCharsets.UTF_8));
    return metadata;
  }

  private PdfFile() {}
}
