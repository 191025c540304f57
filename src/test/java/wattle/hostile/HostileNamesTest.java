package wattle.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import wattle.cli.Main;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.media.text.VisibleText;

/** Every document of one plan whose names mean harm: in each format they are shown as the text that they are. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HostileNamesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final List<String> TABLES = List.of("panel", "loads", "runs", "voltage", "heat", "boxes", "rooms", "materials", "faults");

  /** Elements that no page or picture of ours has more of than it should, whatever its names. */
  private static final Set<String> HARMFUL = Set.of("script", "img", "iframe", "object", "embed", "form", "foreignobject", "image", "use");

  private Path folder;
  private String plan;

  @BeforeAll
  void write(@TempDir Path temporary) throws Exception {
    folder = temporary;
    plan = Files.writeString(folder.resolve("hostile.wattle"), HostilePlan.text()).toString();
    Files.writeString(folder.resolve("before.wattle"),
        HostilePlan.text().replace("--5 m--", "--7 m--").replace("\" { c:", " again\" { c:"));
  }

  private static int run(StringWriter out, String... arguments) {
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    assertThat(code).as(String.join(" ", arguments) + ": " + err).isLessThan(2);
    assertThat(err.toString()).doesNotContain("\u202E");
    return code;
  }

  private String printed(String... arguments) {
    StringWriter out = new StringWriter();
    run(out, arguments);
    return out.toString();
  }

  private String printed(String command, String options) {
    List<String> arguments = new ArrayList<>(List.of(command));
    Stream.of(options.split(" ")).filter(o -> !o.isEmpty()).forEach(arguments::add);
    arguments.replaceAll(a -> a.equals("PLAN") ? plan : a.equals("BEFORE") ? folder.resolve("before.wattle").toString() : a);
    return printed(arguments.toArray(String[]::new));
  }

  private static String shown(int name) {
    return VisibleText.of(HostilePlan.NAMES.get(name));
  }

  /** All the names that a document of everything shows, the longest as well. */
  private static void assertAllNamesIn(String text, String as) {
    for (int name = 0; name < HostilePlan.NAMES.size(); name++) {
      assertThat(text.contains(shown(name))).as(as + " shows name " + name).isTrue();
    }
  }

  @Test
  void thePlanIsRightButForItsNames() throws Exception {
    JsonNode findings = JSON.readTree(printed("check", "--format json PLAN"));
    assertThat(findings.get("findings")).noneMatch(f -> f.get("severity").asText().equals("error")).isNotEmpty();
  }

  // ---- HTML and SVG

  private static Stream<String> markup() {
    return Stream.of(
        "lockout PLAN box r0.c --format html", "lockout PLAN room r4 --format html", "lockout PLAN panel P --format html",
        "directory PLAN --format html", "directory PLAN --folded --format html", "test-sheet PLAN --format html",
        "permit PLAN --format html", "draw PLAN --view one-line", "draw PLAN --view panel", "draw PLAN --view legs",
        "draw PLAN --view branch --of b0", "draw PLAN --view branch --of b4", "draw PLAN --view trip --of b2",
        "draw PLAN --view voltage --of b5");
  }

  @ParameterizedTest
  @MethodSource
  void markup(String command) throws Exception {
    String name = command.substring(0, command.indexOf(' '));
    assertMarkupIsOurs(printed(name, command.substring(name.length() + 1)), 0);
  }

  private static Document assertMarkupIsOurs(String markup, int scripts) throws Exception {
    assertThat(markup.contains("\u202E") || markup.contains("\u202C")).isFalse();
    DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    Document document = builder.parse(new InputSource(new StringReader(markup.replace("<!DOCTYPE html>", ""))));
    NodeList elements = document.getElementsByTagName("*");
    List<String> harmful = new ArrayList<>();
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      if (HARMFUL.contains(element.getLocalName() == null ? element.getTagName() : element.getLocalName())) {
        harmful.add(element.getTagName());
      }
      NamedNodeMap attributes = element.getAttributes();
      for (int a = 0; a < attributes.getLength(); a++) {
        assertThat(attributes.item(a).getNodeName()).doesNotStartWith("on");
        if (attributes.item(a).getNodeName().endsWith("href")) {
          assertThat(attributes.item(a).getNodeValue()).startsWith("#");
        }
      }
    }
    assertThat(harmful).hasSize(scripts);
    assertThat(elements.getLength()).isGreaterThan(20);
    return document;
  }

  @Test
  void theReportShowsAllNames() throws Exception {
    run(new StringWriter(), "report", plan, "--out", folder.resolve("report").toString(), "--pdf");
    Document page = assertMarkupIsOurs(Files.readString(folder.resolve("report/report.html")), 1);
    assertAllNamesIn(page.getDocumentElement().getTextContent(), "report.html");
    assertPdfIsText(folder.resolve("report/report.pdf"), true);
  }

  // ---- PDF

  private static Stream<String> pages() {
    return markup().map(c -> c.replaceAll(" --format html$", ""));
  }

  @ParameterizedTest
  @MethodSource("pages")
  void pages(String command) throws Exception {
    Path file = folder.resolve(command.replaceAll("[^a-z0-9]+", "-") + ".pdf");
    String name = command.substring(0, command.indexOf(' '));
    printed(name, command.substring(name.length() + 1) + " --out " + file);
    assertPdfIsText(file, false);
  }

  /** No link leaves the document; what is in it is text. */
  private static void assertPdfIsText(Path file, boolean all) throws Exception {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
      assertThat(document.getDocumentCatalog().getNames() == null || document.getDocumentCatalog().getNames().getJavaScript() == null)
          .isTrue();
      for (PDPage page : document.getPages()) {
        for (PDAnnotation annotation : page.getAnnotations()) {
          assertThat(annotation).isInstanceOf(PDAnnotationLink.class);
          assertThat(((PDAnnotationLink) annotation).getAction()).isInstanceOf(PDActionGoTo.class);
        }
      }
      String text = new PDFTextStripper().getText(document).replaceAll("[\\s\u00A0]+", "").replaceAll("pageof|page\\d+of\\d+", "");
      assertThat(text.isEmpty() || text.contains("\u202E")).isFalse();
      for (int name = 0; all && name < HostilePlan.NAMES.size(); name++) {
        String bare = shown(name).replaceAll("[\\s\u00A0]+", "");
        assertThat(text.contains(bare.substring(0, Math.min(bare.length(), 500)))).as(file + " shows name " + name).isTrue();
      }
      assertThat(!all || text.chars().filter(c -> c == 'x').count() > 10_000).as("the whole of the longest name").isTrue();
    }
  }

  // ---- For spreadsheets, programs and wikis

  private static Stream<String> tables() {
    return Stream.concat(
        TABLES.stream().map(t -> "table PLAN --of " + t),
        Stream.of("balance PLAN", "trial PLAN t", "test-sheet PLAN"));
  }

  @ParameterizedTest
  @MethodSource("tables")
  void noCellOfASpreadsheetIsAFormula(String command) throws Exception {
    String name = command.substring(0, command.indexOf(' '));
    String csv = printed(name, command.substring(name.length() + 1) + " --format csv");
    assertThat(csv).doesNotContain("\u202E");
    Set<Integer> widths = new TreeSet<>();
    int cells = 0;
    for (String table : csv.split("\n\n")) {
      for (CSVRecord record : CSVFormat.RFC4180.parse(new StringReader(table))) {
        widths.add(record.size());
        for (String cell : record) {
          cells++;
          assertThat(cell.isEmpty() || "=+-@|\t\r".indexOf(cell.charAt(0)) < 0 || cell.matches("-?[0-9.]+")).as(cell).isTrue();
        }
      }
    }
    assertThat(cells).isGreaterThan(10);
    assertThat(widths).as("columns of its tables").hasSizeLessThan(5);
  }

  @ParameterizedTest
  @MethodSource("tables")
  void jsonHasTheNamesAsTheyAre(String command) throws Exception {
    String name = command.substring(0, command.indexOf(' '));
    JsonNode json = JSON.readTree(printed(name, command.substring(name.length() + 1) + " --format json"));
    assertThat(json.get("version").isInt()).isTrue();
  }

  @ParameterizedTest
  @MethodSource("tables")
  void markdownHasNoMarkup(String command) {
    String name = command.substring(0, command.indexOf(' '));
    String text = printed(name, command.substring(name.length() + 1) + " --format md");
    String unescaped = text.replaceAll("\\\\.", "");
    assertThat(Stream.of("\u202E", "<", "](", "`", "*bold").filter(unescaped::contains)).isEmpty();
    List<String> lines = text.lines().filter(l -> l.startsWith("|")).toList();
    assertThat(lines).hasSizeGreaterThan(2);
  }

  @Test
  void namesAreInTheDataWhole() throws Exception {
    JsonNode panel = JSON.readTree(printed("table", "PLAN --of panel --format json"));
    String json = panel.toString();
    for (String name : HostilePlan.NAMES) {
      assertThat(json.contains(JSON.writeValueAsString(name).substring(1, JSON.writeValueAsString(name).length() - 1))).isTrue();
    }
    List<String> descriptions = new ArrayList<>();
    panel.at("/tables/0/rows").forEach(r -> descriptions.add(r.at("/values/description").asText()));
    assertThat(descriptions).containsAll(HostilePlan.NAMES);
  }

  // ---- Graphs, changes, the terminal

  @ParameterizedTest
  @MethodSource("views")
  void graphsAreDrawnWithTheNamesAsText(String view) throws Exception {
    String dot = printed("draw", "PLAN --format dot --view " + view);
    assertThat(dot).doesNotContain("\u202E");
    String svg = DotEngine.builtIn().render(dot, Engine.DOT, Format.SVG).text();
    Document drawn = assertMarkupIsOurs(svg.substring(svg.indexOf("<svg")), 0);
    assertThat(drawn.getDocumentElement().getTextContent()).contains("<img src=x onerror='window.harmed = 1'>");
  }

  private static Stream<String> views() {
    return Stream.of("one-line", "panel");
  }

  @ParameterizedTest
  @MethodSource("talk")
  void theTerminalIsNotTurnedAround(String command) {
    String name = command.substring(0, command.indexOf(' '));
    String said = printed(name, command.substring(name.length() + 1));
    assertThat(said).isNotEmpty();
    assertThat(Stream.of("\u202E", "\u202C", "\u001B").filter(said::contains)).isEmpty();
  }

  private static Stream<String> talk() {
    return Stream.of(
        "compare BEFORE PLAN", "compare BEFORE PLAN --format md", "compare --describe PLAN", "lockout PLAN box r2.c",
        "lockout PLAN room r5",
        "check PLAN", "trial PLAN", "table PLAN --of panel", "table PLAN --of rooms", "test-sheet PLAN", "balance PLAN",
        "explain PLAN --figures");
  }
}
