package wattle.emit.media.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PdfTest {
  private static final String PICTURE = "<svg xmlns='http://www.w3.org/2000/svg' width='400' height='200'>"
      + "<rect x='10' y='10' width='100' height='50' fill='none' stroke='black'/>"
      + "<text x='20' y='40' font-size='14'>Kitchen Ω office</text>"
      + "<text x='20' y='90' font-size='14' font-weight='bold'>15 A 漢</text>"
      + "<text transform='translate(300,150) rotate(-90)' font-size='14'>turned</text></svg>";

  private static final String PAGE = "<!DOCTYPE html><html xmlns='http://www.w3.org/1999/xhtml' lang='en'><head>"
      + "<title>Report</title><style>@page { size: A4; @bottom-right { content: 'page ' counter(page); } }"
      + " body { font-family: Georgia, serif } code { font-family: monospace }</style></head>"
      + "<body><h1>14 Alder Court</h1><p>Leg <b>A</b>, <code>P.1</code> 漢</p>" + PICTURE + "</body></html>";

  @Test
  void labelsAreTextInEmbeddedFonts() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(PdfPicture.of(List.of(PICTURE, PICTURE), "Panel P", Optional.empty()))) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(2);
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text).contains("Kitchen Ω office", "15 A □");
      assertThat(text.replaceAll("\\s", "")).contains("turned");
      assertThat(embedded(pdf)).hasSize(2).doesNotContainValue(false);
      assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("Panel P");
      PDRectangle box = pdf.getPage(0).getMediaBox();
      assertThat(box.getWidth()).isCloseTo(300, within(0.01f));
      assertThat(box.getHeight()).isCloseTo(150, within(0.01f));
    }
  }

  /** Each page is one figure, whose title and description are read aloud, and all its labels belong to it. */
  @Test
  void picturesAreTaggedAsFigures() throws Exception {
    String told = PICTURE.replace("height='200'>", "height='200'><title>Panel P &amp; G</title><desc>Two panels.</desc>");
    try (PDDocument pdf = Loader.loadPDF(PdfPicture.of(List.of(told, PICTURE), "House", Optional.empty()))) {
      assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(new String(pdf.getDocumentCatalog().getMetadata().toByteArray(), java.nio.charset.StandardCharsets.UTF_8))
          .contains(">House<");
      TaggedPdf tags = new TaggedPdf(pdf);
      assertThat(tags.alternatives()).containsExactly("Panel P & G. Two panels.", "House");
      assertThat(tags.unreachable(0) + tags.unreachable(1)).isEmpty();
      assertThat(pdf.getDocumentCatalog().getStructureTreeRoot().getParentTree().getNumbers()).hasSize(2);
    }
  }

  @Test
  void paperIsTurnedToSuitThePicture() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(PdfPicture.of(List.of(PICTURE), "P", Optional.of(Paper.A4)))) {
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isCloseTo(841.89f, within(0.01f));
    }
    String tall = "<svg xmlns='http://www.w3.org/2000/svg' width='100' height='9000'><rect width='9' height='9'/></svg>";
    try (PDDocument pdf = Loader.loadPDF(PdfPicture.of(List.of(tall), "P", Optional.of(Paper.LETTER)))) {
      assertThat(pdf.getPage(0).getMediaBox().getHeight()).isCloseTo(792f, within(0.01f));
    }
  }

  @Test
  void aPictureTooLargeForReadersIsMadeSmaller() throws Exception {
    String wide = "<svg xmlns='http://www.w3.org/2000/svg' width='40000' height='100'><rect width='9' height='9'/></svg>";
    try (PDDocument pdf = Loader.loadPDF(PdfPicture.of(List.of(wide), "P", Optional.empty()))) {
      assertThat(pdf.getPage(0).getMediaBox().getWidth()).isCloseTo(14_400f, within(0.1f));
    }
  }

  @Test
  void theSameInputGivesTheSameBytes() throws Exception {
    assertThat(PdfPicture.of(List.of(PICTURE), "P", Optional.empty()))
        .isEqualTo(PdfPicture.of(List.of(PICTURE), "P", Optional.empty()));
    assertThat(PdfPages.of(PAGE, "Report")).isEqualTo(PdfPages.of(PAGE, "Report"));
  }

  @Test
  void everyFamilyOfAPageIsEmbeddedAndEveryTextIsFound() throws Exception {
    try (PDDocument pdf = Loader.loadPDF(PdfPages.of(PAGE, "Report"))) {
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text).contains("14 Alder Court", "Leg", "P.1", "□", "page 1", "Kitchen Ω office", "15 A");
      assertThat(embedded(pdf)).isNotEmpty().doesNotContainValue(false);
      assertThat(embedded(pdf).keySet()).allMatch(name -> name.contains("DejaVu"));
      assertThat(embedded(pdf).keySet()).anyMatch(name -> name.contains("Mono"));
      assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
    }
  }

  @Test
  void aWidePictureShrinksToItsPage() throws Exception {
    String wide = PAGE.replace("width='400' height='200'", "width='4000' height='200' viewBox='0 0 4000 200'")
        .replace("<style>", "<style>svg { max-width: 100% } ");
    try (PDDocument pdf = Loader.loadPDF(PdfPages.of(wide, "Report"))) {
      float[] right = {0};
      new PDFTextStripper() {
        @Override
        protected void writeString(String text, List<org.apache.pdfbox.text.TextPosition> places) throws IOException {
          places.forEach(place -> right[0] = Math.max(right[0], place.getXDirAdj()));
          super.writeString(text, places);
        }
      }.getText(pdf);
      assertThat(right[0]).isLessThan(595);
    }
  }

  @Test
  void saysWhatCannotBeLaidOut() {
    assertThatThrownBy(() -> PdfPages.of("<html><body><p></body></html>", "Report"))
        .isInstanceOf(UnreadablePictureException.class)
        .hasMessageContaining("laid out");
    assertThatThrownBy(() -> PdfPicture.of(List.of("no picture"), "P", Optional.empty()))
        .isInstanceOf(UnreadablePictureException.class);
  }

  @Test
  void readsNothingOutsideThePageAndPrintsNothing(@TempDir Path folder) throws Exception {
    Path style = Files.writeString(folder.resolve("s.css"), "p:before { content: 'LEAKED' }");
    String page = PAGE.replace("</head>", "<link rel='stylesheet' href='" + style.toUri() + "'/></head>")
        .replace("<b>", "<img src='" + folder.resolve("none.png").toUri() + "' alt='x'/><b>")
        .replace("<style>", "<style>p { unknown-property: 1; display: flex } ");
    PrintStream before = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setErr(new PrintStream(printed, true));
    try (PDDocument pdf = Loader.loadPDF(PdfPages.of(page, "Report"))) {
      assertThat(new PDFTextStripper().getText(pdf)).contains("Leg").doesNotContain("LEAKED");
    } finally {
      System.setErr(before);
    }
    assertThat(printed.toString()).isEmpty();
  }

  /** Names of the fonts of all pages, and whether the font file is in the document. */
  private static Map<String, Boolean> embedded(PDDocument pdf) throws IOException {
    Map<String, Boolean> fonts = new TreeMap<>();
    for (PDPage page : pdf.getPages()) {
      for (COSName name : page.getResources().getFontNames()) {
        PDFont font = page.getResources().getFont(name);
        fonts.put(font.getName(), font.isEmbedded());
      }
    }
    return fonts;
  }
}
