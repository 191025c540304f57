package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

/** What the permit office gets. */
class PermitCommandTest {
  @TempDir
  private Path folder;

  private static String run(int code, String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).as(err.toString()).isEqualTo(code);
    return out.toString();
  }

  @Test
  void aFewPagesWithServiceWorksheetPanelsAndSources() throws Exception {
    Path pdf = folder.resolve("permit.pdf");
    run(ExitCode.FINE, "permit", "examples/alder-court/house.wattle", "--out", pdf.toString());
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(document.getNumberOfPages()).isLessThan(9);
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("transformer 50 kVA, 1.8 %", "Load worksheet", "Counter, both sides of the sink", "Nothing.", "NFPA 70",
          "licensed person",
          "Not checked: missing from the plan", "the room that it is in");
    }
  }

  @Test
  void whatIsSilencedIsThereWithItsReason() throws Exception {
    Path plan = folder.resolve("a.wattle");
    Files.writeString(plan, Files.readString(Path.of("examples/broken/unit-missing.wattle"))
        + "\nsilence many-outlets because \"agreed <b> & ]]> with the inspector\"\n");
    String html = run(ExitCode.FOUND, "permit", "--format", "html", plan.toString());
    assertThat(html).contains("a breaker rating needs a unit", "agreed &lt;b&gt; &amp; ]]&gt; with the inspector", "Found: 1 error,");
    DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
  }

  /** On a terminal the summary says what the page says, part by part, without a tag. */
  @Test
  void aTerminalGetsTheSummaryAsText() throws Exception {
    String text = run(ExitCode.FINE, "permit", "examples/alder-court/house.wattle");
    assertThat(text).startsWith("Permit summary: 14 Alder Court\nRevision C\n")
        .contains("\nSERVICE MAIN\n", "Source: transformer 50 kVA, 1.8 %", "\nWORK\n", "\nCHECKED\n- Structure:",
            "\nSILENCED BY THE PLAN, WITH ITS REASON\n", "\nAT A GLANCE\nFindings: 0 errors", "NOT CHECKED: MISSING FROM THE PLAN",
            "\nLOAD CALCULATION\n", "220.82",
            "\nPANEL SCHEDULES\n", "Counter, both sides of the sink", "\nSOURCES\n- ")
        .doesNotContain("<td", "</");
    Path plan = folder.resolve("b.wattle");
    Files.writeString(plan, Files.readString(Path.of("examples/broken/unit-missing.wattle"))
        + "\nsilence many-outlets because \"agreed with the inspector\"\n");
    assertThat(run(ExitCode.FOUND, "permit", plan.toString()))
        .containsPattern("error +a breaker rating needs a unit").containsPattern("many-outlets.*agreed with the inspector");
  }

  /** One page, lines with their articles, and room for a name and a license number that stays empty. */
  @Test
  void theLoadCalculationAsAForm() throws Exception {
    for (String paper : new String[]{"letter", "A4"}) {
      Path pdf = folder.resolve(paper + ".pdf");
      run(ExitCode.FINE, "permit", "--worksheet", "--paper", paper, "examples/alder-court/house.wattle", "--out", pdf.toString());
      try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
        assertThat(document.getNumberOfPages()).as(paper).isEqualTo(1);
        String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        assertThat(text).contains("220.82(B)", "Prepared by", "License number", "Signature", "service current, leg A", "licensed person");
      }
    }
    String text = run(ExitCode.FINE, "permit", "--worksheet", "examples/alder-court/house.wattle");
    assertThat(text).contains("Method: Optional method for a dwelling, NFPA 70 220.82", "License number: ____",
        "Standard method, Article 220");
    String json = run(ExitCode.FINE, "permit", "--worksheet", "--format", "json", "examples/alder-court/house.wattle");
    com.fasterxml.jackson.databind.JsonNode rows = new com.fasterxml.jackson.databind.ObjectMapper().readTree(json).get("tables").get(0)
        .get("rows");
    assertThat(rows).isNotEmpty().allSatisfy(r -> assertThat(r.get("values").get("article").asText()).isNotEmpty());
  }

  @Test
  void aFormWithNothingInItIsRefused() throws Exception {
    Path plan = folder.resolve("b.wattle");
    Files.writeString(plan, "use code us-2023\nservice main 120/240 V 100 A { }\n");
    StringWriter err = new StringWriter();
    String[] arguments = {"permit", "--worksheet", plan.toString()};
    assertThat(Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err))).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString()).contains("no load calculation to put into a form");
  }
}
