package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.emit.media.drawing.ManyCircuits;

/** {@code draw} as a user types it: what is written, and where. */
class DrawCommandTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir
  private Path folder;

  private int run(String... arguments) {
    return Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
  }

  /** The text of a PDF, all fonts of which must be inside it. */
  private static String text(Path file) throws Exception {
    try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
      for (PDPage page : pdf.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        }
      }
      return new PDFTextStripper().getText(pdf);
    }
  }

  @ParameterizedTest
  @CsvSource({
      "one-line, , 'Counter, both sides of the sink'",
      "panel, , 'Heat pump, outdoor unit'",
      "branch, upstairs, black: traveler 1",
      "trip, bed1, withstands a fault up to this line",
      "voltage, outdoor, Every stated load on at once",
      "legs, , out of balance by",
      "rooms, , 'upper: slot 2, leg A'",
      "rooms, kitchen, works kitchen.disposal"
  })
  void everyViewIsAPdfWhoseWordsAreFound(String view, String of, String words) throws Exception {
    Path file = folder.resolve(view + ".pdf");
    List<String> arguments = new java.util.ArrayList<>(List.of("draw", "--view", view, "--out", file.toString(), HOUSE));
    if (of != null) {
      arguments.addAll(1, List.of("--of", of));
    }
    assertThat(run(arguments.toArray(String[]::new))).as(err.toString()).isZero();
    assertThat(text(file)).contains(words);
    byte[] before = Files.readAllBytes(file);
    Files.delete(file);
    run(arguments.toArray(String[]::new));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void hostileAndForeignNamesAreTextInPdf() throws Exception {
    Path plan = Files.writeString(
        folder.resolve("many.wattle"),
        ManyCircuits.plan(60, 7).replace("\"plain\"", "\"Кухня, κουζίνα, מטבח\"").replace("Many <circuits>",
            "Many ]]> <b> & (circuits) \\\\"));
    Path file = folder.resolve("many.pdf");
    for (String view : List.of("one-line", "panel")) {
      assertThat(run("draw", "--view", view, "--out", file.toString(), plan.toString())).as(err.toString()).isZero();
      assertThat(text(file)).contains("Many ]]> <b> & (circuits) \\", "<script>alert(1)</script>", "Кухня, κουζίνα", "□□□□□",
          "Keller, Waschküche", "=HYPERLINK(1)");
    }
  }

  @Test
  void aResultNeverTakesThePlaceOfAPlan() throws Exception {
    Path plan = Files.writeString(folder.resolve("house.wattle"), "plan \"Mine\"");
    assertThat(run("draw", "--view", "panel", "--format", "dot", "--force", "--out", plan.toString(), HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("that name is for plans");
    assertThat(plan).hasContent("plan \"Mine\"");
  }

  @Test
  void aPdfGoesToAFile() {
    assertThat(run("draw", "--view", "panel", "--format", "pdf", HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("give --out");
    assertThat(run("draw", "--view", "panel", "--out", folder.resolve("panel.xyz").toString(), HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains(".svg, .png, .pdf or .dot");
    assertThat(folder).isEmptyDirectory();
  }

  /** Sheets are all in one PDF; other formats have a file each. */
  @Test
  void sheetsAreOneFileOrAFileEach() throws Exception {
    Path pdf = folder.resolve("one-line.pdf");
    assertThat(run("draw", "--view", "one-line", "--paper", "letter", "--date", "2026-03-09", "--out", pdf.toString(), HOUSE))
        .as(err.toString()).isZero();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
      assertThat(document.getDocumentInformation().getTitle()).isEqualTo("One-line diagram: 14 Alder Court");
      assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
      assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(792);
    }
    assertThat(text(pdf)).contains("2026-03-09", "1 of 2", "2 of 2", "from P/9+11");
    assertThat(run("draw", "--view", "one-line", "--paper", "LETTER", "--out", folder.resolve("one-line.svg").toString(), HOUSE)).isZero();
    assertThat(folder.resolve("one-line.svg")).doesNotExist();
    assertThat(Files.readString(folder.resolve("one-line-1.svg"))).contains("width=\"816\" height=\"1056\"", "1 of 2");
    assertThat(Files.readString(folder.resolve("one-line-2.svg"))).contains("2 of 2");
    assertThat(run("draw", "--view", "one-line", "--paper", "letter", "--resolution", "50", "--out",
        folder.resolve("whole.png").toString(), HOUSE)).isZero();
    assertThat(folder.resolve("whole-1.png")).exists();
    assertThat(
        run("draw", "--view", "legs", "--paper", "a4", "--orientation", "portrait", "--out", folder.resolve("legs.svg").toString(), HOUSE))
        .isZero();
    assertThat(Files.readString(folder.resolve("legs.svg"))).contains("width=\"793.7\" height=\"1122.52\"");
  }

  @Test
  void allSheetsAreWrittenOrNone() throws Exception {
    Files.writeString(folder.resolve("p-2.svg"), "somebody else's");
    assertThat(run("draw", "--view", "one-line", "--paper", "letter", "--out", folder.resolve("p.svg").toString(), HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("p-2.svg").contains("not made by Wattle");
    assertThat(folder.resolve("p-1.svg")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "draw --view legs --paper foolscap @ | no paper is called 'foolscap'; letter, A4, A3 and tabloid are known",
      "draw --view legs --paper a4 --date 9.3.2026 @ | is not a date",
      "draw --view legs --date 2026-03-09 @ | give --paper too",
      "draw --view legs --orientation portrait @ | give --paper too",
      "draw --view rooms --of kitchn @ | no room is called 'kitchn'; rooms are hall, ",
      "draw --view rooms --format dot @ | the rooms are not a graph",
      "draw --view legs --of hall @ | the view legs is of the whole house",
      "draw --view one-line --paper letter @ | the view takes 2 sheets",
      "draw --view one-line --paper letter --format dot @ | a graph has no sheets"
  })
  void whatCannotBeIsSaidBeforeAnythingIsWritten(String arguments, String words) {
    assertThat(run(arguments.replace("@", HOUSE).split(" "))).isEqualTo(2);
    assertThat(err.toString()).contains(words);
    assertThat(out.toString()).isEmpty();
  }
}
