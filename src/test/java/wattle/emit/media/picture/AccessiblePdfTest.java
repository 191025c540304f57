package wattle.emit.media.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.core.VeraPDFException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import wattle.cli.Main;

/** Every kind of PDF that is written, against what a machine can check of ISO 14289-1 (PDF/UA-1), by a general validator. */
class AccessiblePdfTest {
  private static final String HOUSE = "examples/cottage/house.wattle";

  @TempDir
  private Path folder;

  @BeforeAll
  static void takeTheValidatorsOwnParser() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  /** Clauses that are not met, each with a place where it is not. */
  private static SortedSet<String> unmet(Path pdf) throws IOException, VeraPDFException {
    SortedSet<String> unmet = new TreeSet<>();
    try (InputStream in = Files.newInputStream(pdf);
        PDFAParser parser = Foundries.defaultInstance().createParser(in, PDFAFlavour.PDFUA_1);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
      ValidationResult result = validator.validate(parser);
      for (TestAssertion assertion : result.getTestAssertions()) {
        if (assertion.getStatus() == TestAssertion.Status.FAILED) {
          unmet.add(assertion.getRuleId().getClause() + ": " + assertion.getMessage());
        }
      }
      assertThat(result.isCompliant()).isEqualTo(unmet.isEmpty());
    }
    return unmet;
  }

  private void write(String... arguments) {
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
          "permit " + HOUSE, "directory " + HOUSE, "test-sheet " + HOUSE, "lockout " + HOUSE + " kitchen", "draw --view one-line " + HOUSE,
          "draw --view panel " + HOUSE, "draw --view rooms " + HOUSE, "draw --view branch --of kitchen " + HOUSE,
          "draw --view trip --of bed1 examples/alder-court/house.wattle", "draw --view voltage --of kitchen " + HOUSE,
          "draw --view legs " + HOUSE,
          "draw --view one-line --paper tabloid examples/alder-court/house.wattle",
          "trial examples/alder-court/house.wattle open-neutral --picture",
          "compare examples/workshop/house.wattle " + HOUSE + " --picture",
      })
  void documentsAndPicturesMeetTheStandard(String command) throws IOException, VeraPDFException {
    Path pdf = folder.resolve("out.pdf");
    List<String> arguments = new ArrayList<>(List.of(command.split(" ")));
    if (!command.endsWith("--picture")) {
      arguments.add("--out");
    }
    arguments.add(pdf.toString());
    write(arguments.toArray(String[]::new));
    assertThat(unmet(pdf)).isEmpty();
  }

  @Test
  void theReportMeetsTheStandard() throws IOException, VeraPDFException {
    write("report", HOUSE, "--pdf", "--out", folder.toString());
    assertThat(unmet(folder.resolve("report.pdf"))).isEmpty();
  }

  /** The check finds what it should: a document that is not tagged at all. */
  @Test
  void aDocumentWithoutTagsDoesNotMeetIt() throws IOException, VeraPDFException {
    Path pdf = folder.resolve("plain.pdf");
    try (var document = new org.apache.pdfbox.pdmodel.PDDocument()) {
      document.addPage(new org.apache.pdfbox.pdmodel.PDPage());
      document.save(pdf.toFile());
    }
    assertThat(unmet(pdf)).isNotEmpty();
  }
}
