package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Findings in pictures: a number at the thing, its headline under the picture, and a link between them. */
class DrawFindingsTest {
  private static final String HOUSE = """
      use code us-2023
      dwelling { floor-area 100 m2 }
      service main 120/240 V 100 A { source available 9 kA
        run 10 m of 4 Cu triplex
        earth rods by 6 Cu
      }
      panel P from main { bus 125 A slots 12 bonded
        main breaker 100 A 10 kA
        1 20 A arc-fault hall "Hall"
        5 15 A arc-fault den "Den"
      }
      branch hall by 14/2 NM-B { P --3 m-- hall.sw --2 m-- hall.l }
      branch den by 14/2 NM-B { P --3 m-- den.a }
      room hall { box b1 8 in3 { sw: switch for l   r: receptacle tamper-resistant } l: light 10 W }
      room den { a: receptacle tamper-resistant }
      """;
  private static final String OVERFILLED = "error: box hall.b1 is overfilled: needs 18 in³, has 8 in³";
  private static final String TOO_SMALL = "error: circuit &apos;hall&apos; is too small for its breaker: 14 AWG copper on 20 A";

  @TempDir
  private Path folder;
  private Path plan;

  @BeforeEach
  void write() throws Exception {
    plan = folder.resolve("house.wattle");
    Files.writeString(plan, HOUSE);
  }

  private String svg(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] all = new String[arguments.length + 4];
    all[0] = "draw";
    all[1] = "--format";
    all[2] = "svg";
    System.arraycopy(arguments, 0, all, 3, arguments.length);
    all[all.length - 1] = plan.toString();
    int code = Main.run(all, new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(err.toString()).isEqualTo(ExitCode.FOUND);
    return out.toString().replace("&#39;", "&apos;");
  }

  /** The overfilled box and the breaker above its wire stand in the wiring of the branch, each with a link to its words. */
  @Test
  void theBranchShowsItsBoxAndItsBreaker() {
    String svg = svg("--view", "branch", "--of", "hall");
    assertThat(svg).contains(">Findings</text>", OVERFILLED, "href=\"#finding-1\"", "id=\"finding-1\"", "href=\"#finding-2\"",
        "id=\"finding-2\"");
    assertThat(svg.replace("'", "&apos;")).contains(TOO_SMALL);
    assertThat(svg("--view", "branch", "--of", "den")).doesNotContain(OVERFILLED);
  }

  /** At its way in the panel and the one-line diagram, at its row in the room; a finding of another thing is in none of them. */
  @Test
  void everyViewMarksWhatIsInIt() {
    for (String view : new String[]{"panel", "one-line"}) {
      assertThat(svg("--view", view).replace("'", "&apos;")).as(view).contains(TOO_SMALL, "href=\"#finding-1\"").doesNotContain(OVERFILLED);
    }
    assertThat(svg("--view", "rooms", "--of", "hall")).contains(OVERFILLED, "href=\"#finding-1\"");
    assertThat(svg("--view", "rooms", "--of", "den")).doesNotContain(">Findings</text>");
  }

  @Test
  void aPlainPictureHasNone() {
    for (String view : new String[]{"panel", "one-line", "rooms"}) {
      assertThat(svg("--view", view, "--plain")).as(view).doesNotContain(">Findings</text>", "#finding-", OVERFILLED);
    }
  }

  /** A finding that the plan silences with its reason is not marked. */
  @Test
  void whatIsSilencedIsNotMarked() throws Exception {
    Files.writeString(plan, HOUSE + "silence box-overfilled at hall.b1 because \"box extender agreed with the inspector\"\n");
    assertThat(svg("--view", "branch", "--of", "hall")).doesNotContain(OVERFILLED);
  }

  private String text(String... more) throws Exception {
    List<String> all = new ArrayList<>(List.of("draw", "--format", "pdf", "--out", folder.resolve("out.pdf").toString(), "--force"));
    all.addAll(List.of(more));
    all.add(plan.toString());
    StringWriter err = new StringWriter();
    assertThat(Main.run(all.toArray(String[]::new), new PrintWriter(new StringWriter()), new PrintWriter(err))).as(err.toString())
        .isEqualTo(ExitCode.FOUND);
    try (PDDocument document = Loader.loadPDF(folder.resolve("out.pdf").toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  /** Sheets have the marks and, behind the last piece, what they stand for. */
  @Test
  void sheetsHaveThemToo() throws Exception {
    for (String paper : new String[]{"letter", "A4", "A3", "tabloid"}) {
      assertThat(text("--view", "branch", "--of", "hall", "--paper", paper)).as(paper).contains("Findings", OVERFILLED,
          "14 AWG copper on 20 A");
      assertThat(text("--view", "one-line", "--paper", paper)).as(paper).contains("Findings", "14 AWG copper on 20 A");
      assertThat(text("--view", "rooms", "--paper", paper, "--plain")).as(paper).doesNotContain("Findings", OVERFILLED);
    }
  }

  /** In the report each picture has its own numbers, and what stands under it leads to the finding on the page; on paper too. */
  @Test
  void theReportHasThem() throws Exception {
    String[] arguments = {"report", plan.toString(), "--pdf", "--branches", "--out", folder.toString()};
    assertThat(Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()))).isEqualTo(ExitCode.FOUND);
    String page = Files.readString(folder.resolve("report.html"));
    Matcher link = Pattern.compile("href=\"#([^\"]+)\"").matcher(page);
    List<String> findings = new ArrayList<>();
    while (link.find()) {
      assertThat(page).as(link.group(1)).containsOnlyOnce("id=\"" + link.group(1) + "\"");
      if (link.group(1).startsWith("fact-")) {
        findings.add(link.group(1));
      }
    }
    Matcher article = Pattern.compile("<article id=\"(fact-\\d+)\"[^>]*><h3><span[^>]*>error</span>\\s+box hall.b1 is overfilled")
        .matcher(page);
    assertThat(article.find()).isTrue();
    String id = article.group(1);
    // The box stands in the wiring of its branch and in its room.
    assertThat(findings).filteredOn(id::equals).hasSize(2);
    try (PDDocument document = Loader.loadPDF(folder.resolve("report.pdf").toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      // Among the findings, under the wiring of the branch and under the rooms.
      assertThat(text.split("box hall.b1 is overfilled: needs", -1)).hasSizeGreaterThanOrEqualTo(4);
    }
  }

  /** Both hots of a multiwire circuit whose breakers open one by one: the finding stands at both ways, with its branch. */
  @Test
  void whatTheHouseItselfDoesWrongIsMarkedToo() throws Exception {
    Files.writeString(plan, HOUSE.replace("5 15 A arc-fault den \"Den\"", "5 15 A arc-fault den \"Den\"\n 3 15 A arc-fault den \"Den\"")
        .replace("den by 14/2", "den by 14/3").replace("den { a: receptacle tamper-resistant }",
            "den { a: split receptacle tamper-resistant }"));
    assertThat(svg("--view", "panel")).contains("do not open together", "href=\"#finding-1\"");
    assertThat(svg("--view", "branch", "--of", "den")).contains("do not open together", "href=\"#finding-1\"");
  }
}
