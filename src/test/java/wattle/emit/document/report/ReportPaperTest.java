package wattle.emit.document.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import wattle.cli.Main;
import wattle.emit.media.picture.PrintedPages;
import wattle.emit.media.picture.TaggedPdf;
import wattle.golden.Golden;

/** {@code report --pdf}: the same as the page, for paper. */
class ReportPaperTest {
  private static Path court;

  @TempDir
  private Path folder;

  @TempDir
  private static Path kept;

  /** Reports of the examples as they are usually printed, each made once for all tests. */
  private static final Map<String, Path> USUAL = new HashMap<>();

  /** The largest of the examples, made once. */
  @BeforeAll
  static void makeTheReportOfAWholeHouse() {
    court = report("examples/alder-court/house.wattle", kept.resolve("court"), "--branches", "--workings");
  }

  private static Path usual(String plan) {
    return USUAL.computeIfAbsent(plan, p -> report(p, kept.resolve("usual-" + USUAL.size())));
  }

  private Path report(String plan) {
    return report(plan, folder);
  }

  private static Path report(String plan, Path folder, String... more) {
    StringWriter err = new StringWriter();
    List<String> written = new ArrayList<>(List.of("report", plan, "--pdf", "--out", folder.toString()));
    written.addAll(List.of(more));
    String[] arguments = written.toArray(String[]::new);
    int code = Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    assertThat(err.toString()).contains("report.html").contains("report.pdf");
    return folder.resolve("report.pdf");
  }

  /**
   * A permit desk and the wall of a workshop get what everybody reads; each branch drawn and each figure worked out are asked for. At most
   * twenty-five pages for an ordinary house, eight for four fuses, twelve for a kitchen.
   */
  @ParameterizedTest
  @CsvSource({"alder-court, 25", "duplex, 25", "weir-lane, 25", "marlow-croft, 25", "workshop, 15", "apartment, 15", "cottage, 8"})
  void usualPaperIsShortAndSaysWhatItLeavesOut(String example, int most) throws IOException {
    try (PDDocument document = Loader.loadPDF(usual("examples/" + example + "/house.wattle").toFile())) {
      assertThat(document.getNumberOfPages()).isLessThanOrEqualTo(most);
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("Left out of this edition: each branch, room and trial drawn", "report --pdf --workings",
          "House current kills",
          "Assumptions and sources", "Panel schedules");
      List<String> bookmarks = new ArrayList<>();
      document.getDocumentCatalog().getDocumentOutline().children().forEach(b -> bookmarks.add(b.getTitle()));
      assertThat(bookmarks).containsSubsequence("At a glance", "One-line diagram", "Findings")
          .doesNotContain("Branch wiring", "Boxes", "Calculations", "The plan");
    }
    assertThat(Files.size(usual("examples/" + example + "/house.wattle").resolveSibling("report.html"))).isLessThan(2 << 20);
  }

  /** Every plan of the examples that is a whole one: files that another uses have no title. */
  private static List<String> examples() throws IOException {
    List<String> plans = new ArrayList<>();
    for (Path plan : Golden.plans("examples")) {
      if (!plan.toString().contains("broken") && Files.readString(plan).contains("plan \"")) {
        plans.add(plan.toString());
      }
    }
    assertThat(plans).hasSizeGreaterThan(15);
    return plans;
  }

  /** A farm of four panels is an ordinary house here; a block of flats is not, and has a limit of its own. */
  private static int mostPages(String example) {
    return example.contains("mill-quay")
        ? 35
        : example.contains("kitchen-renovation") ? 12 : example.contains("cottage") ? 8 : example.contains("longcroft") ? 12 : 25;
  }

  /**
   * Letter sheets are read at arm's length: all type has nine points or more, and no page but the last ends above its middle. At most as
   * many pages as somebody at a desk turns: twenty-five for a house.
   */
  @ParameterizedTest
  @MethodSource("examples")
  void everyReportIsReadAtArmsLengthAndItsPagesAreFilled(String example) throws IOException {
    PrintedPages printed = PrintedPages.of(usual(example));
    assertThat(printed.pages()).hasSizeLessThanOrEqualTo(mostPages(example));
    printed.pages().forEach(page -> {
      assertThat(page.leastOfWords()).as("words, page " + page.number()).isGreaterThan(8.99);
      assertThat(page.leastOfPictures()).as("pictures, page " + page.number()).isGreaterThan(8.99);
      if (page.number() < printed.pages().size()) {
        assertThat(page.filled()).as("page " + page.number()).isGreaterThanOrEqualTo(0.5);
      }
    });
    assertThat(printed.pages()).anyMatch(p -> p.leastOfPictures() < 20).anyMatch(p -> p.leastOfWords() < 20);
  }

  /** Carets stand under their words: lines of the plan are in elements that are not broken, prose is outside them. */
  @Test
  void sourceLinesAreNeverBroken() throws IOException {
    report("examples/broken/shared-neutral-same-leg.wattle");
    String page = Files.readString(folder.resolve("report.html"));
    assertThat(page).contains("pre.source { white-space: pre; overflow-wrap: normal; }");
    Matcher lines = Pattern.compile("<pre class=\"source\"[^>]*>(.*?)</pre>", Pattern.DOTALL).matcher(page);
    int found = 0;
    while (lines.find()) {
      found++;
      assertThat(lines.group(1).lines()).allMatch(l -> l.matches("\\s*\\d*\\s+│.*"));
    }
    assertThat(found).isPositive();
    assertThat(page).contains("<p>fix: ");
  }

  /** Each extra part by itself. */
  @Test
  void branchesAndWorkingsAreAskedForApart() throws IOException {
    String plan = "examples/cottage/house.wattle";
    try (PDDocument branches = Loader.loadPDF(report(plan, folder, "--branches").toFile())) {
      String text = new PDFTextStripper().getText(branches).replaceAll("\\s+", " ");
      assertThat(text).contains("Left out of this edition: how each figure is calculated")
          .doesNotContain("each branch, room and trial drawn");
      assertThat(bookmarksBeneath(branches, "Branch wiring")).hasSize(4);
    }
    // Boxes are drawn at arm's length too, and only a page before one that is turned ends above its middle.
    List<PrintedPages.Printed> drawn = PrintedPages.of(folder.resolve("report.pdf")).pages();
    assertThat(drawn).allMatch(p -> p.leastOfPictures() > 8.99 && p.leastOfWords() > 8.99);
    assertThat(drawn.subList(0, drawn.size() - 1)).filteredOn(p -> p.filled() < 0.5).hasSizeLessThan(2);
    try (PDDocument workings = Loader.loadPDF(report(plan, folder, "--workings", "--force").toFile())) {
      String text = new PDFTextStripper().getText(workings).replaceAll("\\s+", " ");
      assertThat(text).contains("Left out of this edition: each branch", "Calculations: page ", "panel F \"Fuse box\"")
          .doesNotContain("how each figure is calculated");
    }
  }

  @Test
  void branchesAndWorkingsAreOfThePdf() {
    StringWriter err = new StringWriter();
    String[] arguments = {"report", "examples/cottage/house.wattle", "--workings", "--out", folder.toString()};
    assertThat(Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err))).isEqualTo(2);
    assertThat(err.toString()).contains("--branches and --workings say what the PDF has");
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void paperHasWhatThePageHas() throws IOException {
    try (PDDocument document = Loader.loadPDF(court.toFile())) {
      String text = new PDFTextStripper().getText(document);
      assertThat(text).contains("14 Alder Court", "House current kills", "Findings", "Panel schedules", "Connected loads", "Runs");
      assertThat(text).contains("Assumptions and sources", "Calculations", "NFPA 70 Table 310.16", "The plan");
      assertThat(text.replaceAll("\\s+", " ")).contains("panel P \"House panel\" from main {");
      assertThat(text).contains("page 1 of " + document.getNumberOfPages()).doesNotContain("Search");
      assertThat(text).contains("Voltage at each outlet", "Fault currents", "Trials and expectations", "For the inspector",
          "Devices, room by room");
      // The table of contents gives pages, and readers have bookmarks.
      assertThat(text.replaceAll("[. ]+", " ")).containsPattern("Load worksheets [0-9]+\n").containsPattern("The plan [0-9]+\n");
      List<String> bookmarks = new ArrayList<>();
      document.getDocumentCatalog().getDocumentOutline().children().forEach(b -> bookmarks.add(b.getTitle()));
      assertThat(bookmarks).startsWith("At a glance", "One-line diagram", "Findings", "For the inspector", "Panel fronts")
          .endsWith("The plan")
          .hasSizeGreaterThan(18);
      // Tables and pictures stand beneath their parts.
      assertThat(bookmarksBeneath(document, "Branch wiring")).hasSize(32)
          .anyMatch(b -> b.startsWith("counter, Counter, both sides of the sink, breaker P/2+4"));
      assertThat(bookmarksBeneath(document, "Trials and expectations")).contains("Branch counter in it, with volts, amperes and watts");
      for (PDPage page : document.getPages()) {
        for (COSName font : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(font).isEmbedded()).isTrue();
        }
      }
      // The one-line diagram is wider than a page and is cut in parts, each with its number, that name each other.
      assertThat(text).contains("part 1 of ", "part 2 of ", "continues on part ", "continued from part ");
    }
  }

  private static List<String> bookmarksBeneath(PDDocument document, String part) {
    List<String> names = new ArrayList<>();
    for (PDOutlineItem bookmark : document.getDocumentCatalog().getDocumentOutline().children()) {
      if (bookmark.getTitle().equals(part)) {
        bookmark.children().forEach(b -> names.add(b.getTitle()));
      }
    }
    return names;
  }

  /** Whoever listens to the document hears all of it: pictures have words, and no text stands outside the structure. */
  @Test
  void itCanBeReadAloud() throws IOException {
    for (Path paper : List.of(court, report("examples/broken/ten-mistakes.wattle"))) {
      try (PDDocument document = Loader.loadPDF(paper.toFile())) {
        assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
        assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
        assertThat(document.getDocumentInformation().getTitle()).isNotBlank();
        assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle()).isTrue();
        TaggedPdf tags = new TaggedPdf(document);
        assertThat(tags.count("H1")).isEqualTo(1);
        assertThat(tags.count("H2")).isGreaterThan(12);
        assertThat(tags.count("TH")).isPositive();
        assertThat(tags.count("Figure")).isPositive();
        assertThat(tags.alternatives()).hasSize(tags.count("Figure")).allMatch(a -> a != null && a.length() > 20);
        for (int page = 0; page < document.getNumberOfPages(); page++) {
          assertThat(tags.unreachable(page).strip()).as("page " + (page + 1)).isEmpty();
          for (PDAnnotation link : document.getPage(page).getAnnotations()) {
            assertThat(link.getContents()).isNotBlank();
          }
        }
      }
    }
  }

  /** Every figure that rests on others leads to its working, in the last row of a table as in the first. */
  @Test
  void everyRowHasItsWorkings() throws IOException {
    try (PDDocument document = Loader.loadPDF(court.toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text.contains("Calculations: page ")).isTrue();
      // The table of voltages has ninety rows.
      for (String last : List.of("garage.saw saw, at full load:", "garage.saw saw, at stated loads:")) {
        assertThat(text.contains(last)).as(last).isTrue();
      }
      // What a step rests on is named by the number under which it is told.
      Matcher named = Pattern.compile("\\[([0-9]+)\\]").matcher(text);
      Set<Integer> numbers = new TreeSet<>();
      while (named.find()) {
        numbers.add(Integer.valueOf(named.group(1)));
      }
      assertThat(numbers).hasSizeGreaterThan(1000);
      assertThat(numbers).allMatch(n -> text.contains(" " + n + " "));
    }
  }

  /** A trial that is about more branches than are drawn says which are not, and a command that draws them. */
  @Test
  void branchesOfATrialThatAreNotDrawnAreNamed() throws IOException {
    List<String> branches = List.of("a", "b", "c", "d", "e", "f");
    StringBuilder plan = new StringBuilder(
        "plan \"Heron Cut\"\nservice main 120/240 V 100 A { source available 10 kA }\npanel P from main {\n  slots 20   bonded\n");
    branches.forEach(b -> plan.append("  ").append(branches.indexOf(b) + 1).append("  15 A  ").append(b).append('\n'));
    plan.append("}\n");
    branches.forEach(b -> plan.append("branch " + b + " by 14/2 NM-B { P --4 m-- shed." + b + " }\n"));
    plan.append("room shed {\n");
    branches.forEach(b -> plan.append("  " + b + ": receptacle\n"));
    plan.append("}\ntrial old-joints {\n  loosen neutral at shed.a by 0.1 ohm\n");
    branches.forEach(b -> plan.append("  loosen hot at shed." + b + " by 0.1 ohm\n"));
    Path file = folder.resolve("heron.wattle");
    Files.writeString(file, plan.append("}\n"));
    String said = "2 more branches that it is about are not drawn here: e, f. wattle trial FILE old-joints --branch e --picture e.svg"
        + " draws e, and the others by their names.";
    try (PDDocument document = Loader.loadPDF(report(file.toString(), folder, "--branches").toFile())) {
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " ")).contains(said);
      // Branch a has two joints that are loose and is drawn once.
      assertThat(bookmarksBeneath(document, "Trials and expectations").stream().filter(b -> b.endsWith("with volts, amperes and watts"))
          .map(b -> b.substring(0, 8)))
          .containsExactly("Branch a", "Branch b", "Branch c", "Branch d");
    }
    assertThat(Files.readString(folder.resolve("report.html"))).containsOnlyOnce(said);
    String[] command = {"trial", file.toString(), "old-joints", "--branch", "e", "--picture", folder.resolve("e.svg").toString()};
    assertThat(Main.run(command, new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()))).isLessThan(2);
    assertThat(folder.resolve("e.svg")).content().contains("shed.e");
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
    try (PDDocument document = Loader.loadPDF(report(plan.toString(), folder, "--branches", "--workings").toFile())) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("<script>alert(1)</script> ]]> &lt; =HYPERLINK").contains("\"</style><b>bold\"");
    }
  }
}
