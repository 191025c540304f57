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
import wattle.emit.drawing.ManyCircuits;

/** {@code draw} as a user types it: what is written, and where. */
class DrawCommandTest {
  private static final String HOUSE = "examples/alder-court/house.wattle";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir private Path folder;

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
    "branch, upstairs, black: traveller 1",
    "trip, bed1, stands no longer than this",
    "voltage, outdoor, Every stated load on at once",
    "legs, , out of balance by"
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
        ManyCircuits.plan(60, 7).replace("\"plain\"", "\"Кухня, κουζίνα, מטבח\"").replace("Many <circuits>", "Many ]]> <b> & (circuits) \\\\"));
    Path file = folder.resolve("many.pdf");
    for (String view : List.of("one-line", "panel")) {
      assertThat(run("draw", "--view", view, "--out", file.toString(), plan.toString())).as(err.toString()).isZero();
      assertThat(text(file)).contains("Many ]]> <b> & (circuits) \\", "<script>alert(1)</script>", "Кухня, κουζίνα", "□□□□□", "Keller, Waschküche", "=HYPERLINK(1)");
    }
  }

  @Test
  void aPdfGoesToAFile() {
    assertThat(run("draw", "--view", "panel", "--format", "pdf", HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains("give --out");
    assertThat(run("draw", "--view", "panel", "--out", folder.resolve("panel.xyz").toString(), HOUSE)).isEqualTo(2);
    assertThat(err.toString()).contains(".svg, .png, .pdf or .dot");
    assertThat(folder).isEmptyDirectory();
  }
}
