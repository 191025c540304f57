package wattle.emit.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;

/** {@code report --pdf}: the same as the page, for paper. */
class ReportPaperTest {
  @TempDir private Path folder;

  private Path report(String plan) {
    StringWriter err = new StringWriter();
    String[] arguments = {"report", plan, "--pdf", "--out", folder.toString()};
    int code = Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    assertThat(err.toString()).contains("report.html").contains("report.pdf");
    return folder.resolve("report.pdf");
  }

  @Test
  void paperHasWhatThePageHas() throws IOException {
    try (PDDocument document = Loader.loadPDF(report("examples/alder-court/house.wattle").toFile())) {
      String text = new PDFTextStripper().getText(document);
      assertThat(text).contains("14 Alder Court", "House current kills", "Findings", "Panel schedules", "Connected loads", "Runs");
      assertThat(text).contains("What this rests on", "How the figures were come by", "NFPA 70 Table 310.16", "The plan");
      assertThat(text.replaceAll("\\s+", " ")).contains("panel P \"House panel\" from main {");
      assertThat(text).contains("page 1 of " + document.getNumberOfPages()).doesNotContain("Search");
      assertThat(text).contains("Voltage at each outlet", "Fault currents", "Trials and expectations", "For the permit office", "Devices, room by room");
      // The table of contents gives pages, and readers have bookmarks.
      assertThat(text.replaceAll("[. ]+", " ")).containsPattern("Load worksheets [0-9]+\n").containsPattern("The plan [0-9]+\n");
      List<String> bookmarks = new ArrayList<>();
      document.getDocumentCatalog().getDocumentOutline().children().forEach(b -> bookmarks.add(b.getTitle()));
      assertThat(bookmarks).startsWith("Findings", "For the permit office", "One-line diagram").endsWith("The plan").hasSizeGreaterThan(18);
      for (PDPage page : document.getPages()) {
        for (COSName font : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
        }
      }
      // The one-line diagram is wider than tall and stands on a turned sheet, the text on upright ones.
      assertThat(document.getPages()).anyMatch(ReportPaperTest::isTurned).anyMatch(p -> !isTurned(p));
    }
  }

  private static boolean isTurned(PDPage page) {
    return page.getMediaBox().getWidth() > page.getMediaBox().getHeight();
  }

  @Test
  void findingsAreOnPaper() throws IOException {
    try (PDDocument document = Loader.loadPDF(report("examples/broken/shared-neutral-same-leg.wattle").toFile())) {
      assertThat(new PDFTextStripper().getText(document)).contains("both hots of 'counter' come from leg A").contains("40 A");
    }
  }

  @Test
  void hostileNamesAreTextOnPaperToo() throws IOException {
    Path plan = folder.resolve("hostile.wattle");
    Files.writeString(plan, "plan \"<script>alert(1)</script> ]]> &lt; =HYPERLINK\"\nroom a \"</style><b>bold\" { }\n");
    try (PDDocument document = Loader.loadPDF(report(plan.toString()).toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("<script>alert(1)</script> ]]> &lt; =HYPERLINK").contains("\"</style><b>bold\"");
    }
  }
}
