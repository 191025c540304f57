package wattle.emit.document.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;

/** What is printed of forty flats, one of which an override changes: those alike are shown once. The limits are what people still read. */
class BlockDocumentsTest {
  private static final int PAGES_OF_A_REPORT = 40;
  private static final int PAGES_OF_A_PERMIT_SUMMARY = 8;
  private static final long BYTES_OF_A_PAGE = 2_000_000;

  @TempDir
  private static Path folder;
  private static Path plan;

  /** Mill Quay with ten flats on each floor, and a service and feeders for them. */
  @BeforeAll
  static void fortyFlats() throws IOException {
    String text = Files.readString(Path.of("examples/mill-quay/house.wattle"));
    String[] changes = {
        "for k from 1 to 3", "for k from 1 to 10", "slots 30   meters", "slots 42   meters", "120/208 V 600 A", "120/208 V 1200 A",
        "2 sets of 3 in PVC", "4 sets of 3 in PVC", "water-pipe by 2/0 Cu", "water-pipe by 3/0 Cu", "bus 800 A", "bus 1200 A",
        "main breaker 600 A", "main breaker 1200 A", "225 A 42 kA", "400 A 42 kA",
        "2.5 in EMT with 4 x 4/0 Cu THWN-2, 4 Cu ground", "4 in EMT with 4 x 600 kcmil Cu THWN-2, 2 Cu ground"};
    for (int i = 0; i < changes.length; i += 2) {
      assertThat(text).contains(changes[i]);
      text = text.replace(changes[i], changes[i + 1]);
    }
    plan = Files.writeString(folder.resolve("block.wattle"), text);
    assertThat(run("check", plan.toString())).doesNotContain("error:");
    run("report", plan.toString(), "--pdf", "--out", folder.toString());
    run("permit", plan.toString(), "--out", folder.resolve("permit.pdf").toString());
  }

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isLessThan(2);
    return out.toString();
  }

  private static List<String> pages(String file) throws IOException {
    try (PDDocument document = Loader.loadPDF(folder.resolve(file).toFile())) {
      List<String> pages = new ArrayList<>();
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(stripper.getText(document).replaceAll("\\s+", " "));
      }
      return pages;
    }
  }

  @Test
  void theReportIsShortAndNamesWhatIsAlike() throws IOException {
    List<String> pages = pages("report.pdf");
    assertThat(pages).hasSizeLessThanOrEqualTo(PAGES_OF_A_REPORT);
    String all = String.join(" ", pages);
    assertThat(all).contains("is shown once for all identical ones", "Flat 3-2 (floor3.flat2) differs from its pattern");
    assertThat(all).contains("Flat 1-1").contains("Flat 4-9");
  }

  @Test
  void itsPageIsSmall() throws IOException {
    String page = Files.readString(folder.resolve("report.html"));
    assertThat(Files.size(folder.resolve("report.html"))).isLessThan(BYTES_OF_A_PAGE);
    // Of a flat that is shown a step has its inputs, of another one only what it says.
    assertThat(page).containsPattern("<p id=\"s\\d+\">current of floor4.flat10.bath.heater = [^\n]*<a href=")
        .doesNotContainPattern("<p id=\"s\\d+\">current of floor1.flat2.bath.heater = [^\n]*<a href=\"#s")
        .containsPattern("<p id=\"s\\d+\">current of floor1.flat2.bath.heater = ");
  }

  @Test
  void thePermitSummaryIsShort() throws IOException {
    assertThat(pages("permit.pdf")).hasSizeLessThanOrEqualTo(PAGES_OF_A_PERMIT_SUMMARY);
  }
}
