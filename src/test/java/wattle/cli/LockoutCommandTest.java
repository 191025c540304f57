package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
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

/** The sheet at the command line: each format, a place that is not there, a hostile name. */
class LockoutCommandTest {
  private static final String COURT = "examples/alder-court/house.wattle";

  @TempDir
  private Path folder;

  private record Ran(int code, String out, String err) {}

  private static Ran run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return new Ran(code, out.toString(), err.toString());
  }

  @Test
  void theTextNamesHandleAndCaution() {
    Ran ran = run("lockout", COURT, "kitchen.c2");
    assertThat(ran.code).isEqualTo(ExitCode.FINE);
    assertThat(ran.err).isEmpty();
    assertThat(ran.out).contains("[ ] P/2+4", "black hot A of counter to red hot B of counter: 0 V; with everything on: 240 V",
        "House current kills");
  }

  @Test
  void jsonIsJson() throws IOException {
    JsonNode root = new ObjectMapper().readTree(run("lockout", COURT, "room", "hall", "--format", "json").out);
    assertThat(root.get("format").asText()).isEqualTo("wattle-lockout");
    assertThat(root.get("handles")).hasSize(1);
    assertThat(root.get("handles").get(0).get("tag").asText()).isEqualTo("P/1");
  }

  /** For programs each conductor has the ends of its cables, whether or not the text has to say so. */
  @Test
  void jsonHasTheCablesOfEachConductor() throws IOException {
    JsonNode root = new ObjectMapper().readTree(run("lockout", COURT, "kitchen.c1", "--format", "json").out);
    JsonNode conductors = root.get("proofs").get(0).get("conductors");
    assertThat(conductors).isNotEmpty().allSatisfy(c -> assertThat(c.get("cables")).isNotEmpty());
    assertThat(conductors.get(0).get("cables").get(0).asText()).isEqualTo("P");
  }

  @Test
  void aSheetForABoxIsOnePage() throws IOException {
    Path pdf = folder.resolve("sheet.pdf");
    for (String paper : new String[]{"letter", "A4"}) {
      assertThat(run("lockout", COURT, "kitchen.c1", "--paper", paper, "--out", pdf.toString()).code).isEqualTo(ExitCode.FINE);
      try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
        assertThat(document.getNumberOfPages()).isEqualTo(1);
        assertThat(new PDFTextStripper().getText(document)).contains("P/2+4").contains("Prove dead").contains("All clear");
      }
    }
  }

  @Test
  void hostileNamesStayText() throws Exception {
    Path plan = folder.resolve("hostile.wattle");
    Files.writeString(
        plan,
        "panel P \"<script>alert(1)</script>\" { bus 100 A slots 8\n 1 15 A a \"]]>=HYPERLINK(\\\"x\\\") \u202Eevil\" }\n"
            + "branch a by 14/2 NM-B { P --2 m-- hall.o }\nroom hall \"&amp; <b>\" { o: receptacle \"" + "x".repeat(10_000) + "\" }\n");
    String html = run("lockout", plan.toString(), "hall.o", "--format", "html").out;
    assertThat(html).doesNotContain("<script").doesNotContain("\u202E");
    DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    assertThat(run("lockout", plan.toString(), "hall.o").out).contains("[U+202E]");
  }

  @Test
  void aPlaceThatIsNotThereIsOneLineWithNearNames() {
    Ran ran = run("lockout", COURT, "kichen");
    assertThat(ran.code).isEqualTo(ExitCode.USAGE);
    assertThat(ran.out).isEmpty();
    assertThat(ran.err.lines()).singleElement().asString().contains("'kichen'").contains("did you mean kitchen?");
    assertThat(run("lockout", COURT, "c1").err).contains("kitchen.c1");
    assertThat(run("lockout", COURT, "hall").err).contains("room hall or branch hall");
    assertThat(run("lockout", COURT, "attic", "hall").err).contains("is not a kind of place");
    assertThat(run("lockout", COURT, "kitchen.c1", "--format", "pdf").err).contains("--out");
    assertThat(run("lockout", COURT, "kitchen.c1", "--out", "sheet.odt").err).contains("does not show a format");
    assertThat(run("lockout", COURT, "kitchen.c1", "--paper", "foolscap", "--format", "html").code).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void errorsOfThePlanAreOnTheSheet() {
    Ran ran = run("lockout", "examples/broken/branch-without-breaker.wattle", "branch", "lost");
    assertThat(ran.code).isIn(ExitCode.FOUND, ExitCode.USAGE);
    Ran same = run("lockout", "examples/broken/shared-neutral-same-leg.wattle", "panel", "P");
    assertThat(same.code).isEqualTo(ExitCode.FOUND);
    assertThat(same.out).contains("this sheet may be wrong");
  }
}
