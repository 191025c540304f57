package wattle.emit.media.picture;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The shipped faces in one PDF document, each embedded when it is first used, cut down to the glyphs in use. */
final class PdfFonts {
  /** What stands for a character that the faces lack. */
  static final String MISSING = "\u25A1";

  private final PDDocument document;
  private final Map<Face, PDFont> fonts = new EnumMap<>(Face.class);

  PdfFonts(PDDocument document) {
    this.document = document;
  }

  PDFont of(Face face) throws IOException {
    PDFont font = fonts.get(face);
    if (font == null) {
      try (InputStream in = face.open()) {
        TrueTypeFont file = new TTFParser().parse(new RandomAccessReadBuffer(in));
        file.setEnableGsub(false); // a ligature is a glyph of another width, and is copied as another character
        font = PDType0Font.load(document, file, true);
      }
      fonts.put(face, font);
    }
    return font;
  }

  /** The text with a box for each character that the face lacks: the PDF library refuses what it cannot encode. */
  static String encodable(String text, Face face) {
    if (text.codePoints().allMatch(face::has)) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().forEach(c -> out.append(face.has(c) ? Character.toString(c) : MISSING));
    return out.toString();
  }
}
