package wattle.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.cli.Main;

/** The report, opened, read, searched and printed in a real browser. Skipped, with a word, where there is none. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportInBrowserTest {
  /** Names that would do harm, or vanish, in a page that did not take them as text. */
  private static final List<String> HOSTILE =
      List.of(
          "<script>window.harmed = 1</script>",
          "<img src=x onerror='window.harmed = 1'>",
          "]]></script><b>bold</b>",
          "&lt;&amp;\u00A0'",
          "=HYPERLINK(\u201Chttp://example.org\u201D)",
          "\u202Eright to left\u202C",
          "x".repeat(10_000));

  private Path folder;
  private Browser browser;
  private URI court;
  private URI broken;
  private URI hostile;

  @BeforeAll
  void openTheBrowser(@TempDir Path temporary) throws IOException {
    folder = temporary;
    Path chromium = Browser.installed().orElse(null);
    Assumptions.assumeTrue(chromium != null, "no Chromium is installed, so the report was not tried in a browser");
    court = report("examples/alder-court/house.wattle", "court");
    broken = report("examples/broken/ten-mistakes.wattle", "broken");
    hostile = report(Files.writeString(folder.resolve("hostile.wattle"), hostilePlan()).toString(), "hostile");
    browser = Browser.start(chromium);
  }

  @AfterAll
  void closeTheBrowser() {
    if (browser != null) {
      browser.close();
    }
  }

  private URI report(String plan, String out) {
    StringWriter err = new StringWriter();
    Path where = folder.resolve(out);
    int code = Main.run(new String[] {"report", plan, "--out", where.toString()}, new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    return where.resolve("report.html").toUri();
  }

  private static String hostilePlan() {
    StringBuilder plan = new StringBuilder("plan \"" + HOSTILE.get(0) + "\"\nservice main 120/240 V 100 A { source available 10 kA }\n");
    plan.append("panel P from main {\n  bus 100 A  slots 12  bonded\n");
    for (int i = 0; i < HOSTILE.size(); i++) {
      plan.append("  ").append(i + 1).append("  15 A  b").append(i).append("  \"").append(HOSTILE.get(i)).append("\"\n");
    }
    plan.append("}\n");
    for (int i = 0; i < HOSTILE.size(); i++) {
      plan.append("branch b").append(i).append(" by 14/2 NM-B { P --5 m-- r.c").append(i).append(" }\n");
    }
    plan.append("room r \"").append(HOSTILE.get(1)).append("\" {\n");
    for (int i = 0; i < HOSTILE.size(); i++) {
      plan.append("  c").append(i).append(": receptacle \"").append(HOSTILE.get(i)).append("\"\n");
    }
    return plan.append("}\n").toString();
  }

  private void open(URI page, int width, String scheme) {
    com.fasterxml.jackson.databind.node.ObjectNode media = Browser.object().put("media", "screen");
    media.putArray("features").addObject().put("name", "prefers-color-scheme").put("value", scheme);
    browser.send("Emulation.setEmulatedMedia", media);
    browser.open(page, width, 900);
  }

  private static String axe() throws IOException {
    try (InputStream in = ReportInBrowserTest.class.getResourceAsStream("/axe.min.js")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Rules of WCAG 2.1, levels A and AA, and the good practices that the accessibility engine knows. */
  private List<String> violations() throws IOException {
    browser.run(axe());
    JsonNode result = browser.run("axe.run(document, {resultTypes: ['violations']}).then(r => "
        + "({passes: r.passes.length, violations: r.violations.map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)"
        + " + ' ' + n.failureSummary).join(' | '))}))");
    assertThat(result.get("passes").asInt()).as("rules that had something to look at").isGreaterThan(20);
    List<String> violations = new ArrayList<>();
    result.get("violations").forEach(v -> violations.add(v.asText()));
    return violations;
  }

  @ParameterizedTest
  @CsvSource({"light, 1400", "dark, 1400", "light, 400", "dark, 400"})
  void everybodyCanReadIt(String scheme, int width) throws IOException {
    for (URI page : List.of(court, broken)) {
      open(page, width, scheme);
      assertThat(browser.run("matchMedia('(prefers-color-scheme: dark)').matches").asBoolean()).isEqualTo(scheme.equals("dark"));
      assertThat(violations()).as(page + " " + scheme + " " + width).isEmpty();
    }
  }

  /** The engine that finds nothing anywhere would pass the test above. */
  @Test
  void theEngineFindsWhatIsWrong() throws IOException {
    open(court, 1400, "light");
    browser.run("document.querySelector('label').remove(); document.querySelector('.facts').style.color = '#eee'");
    assertThat(violations()).anyMatch(v -> v.startsWith("label:")).anyMatch(v -> v.startsWith("color-contrast:"));
  }

  @ParameterizedTest
  @CsvSource({"400", "1400"})
  void nothingButWideThingsIsWiderThanTheWindow(int width) {
    for (URI page : List.of(court, broken, hostile)) {
      open(page, width, "light");
      assertThat(browser.run("document.documentElement.scrollWidth").asInt()).as(page.toString()).isLessThanOrEqualTo(width);
    }
  }

  @Test
  void theKeyboardReachesEverything() {
    open(court, 1400, "light");
    List<String> reached = new ArrayList<>();
    String what = "(e => e.tagName + (e.id ? '#' + e.id : ''))(document.activeElement)";
    for (int i = 0; i < 40; i++) {
      browser.press("Tab", "Tab", 9);
      reached.add(browser.run(what).asText());
      assertThat(browser.run("getComputedStyle(document.activeElement).outlineStyle").asText()).as(reached.toString()).isNotEqualTo("none");
    }
    assertThat(reached).contains("A", "INPUT#search", "DIV", "SUMMARY").startsWith("A");
    browser.run("document.querySelector('summary').focus()");
    assertThat(browser.run("document.querySelector('details').open").asBoolean()).isFalse();
    browser.press("Enter", "Enter", 13);
    assertThat(browser.run("document.querySelector('details').open").asBoolean()).isTrue();
  }

  @Test
  void searchKeepsWhatHasTheWords() {
    open(court, 1400, "light");
    browser.press("/", "Slash", 191);
    assertThat(browser.run("document.activeElement.id").asText()).isEqualTo("search");
    browser.type("water heater");
    String shown = "Array.from(document.querySelectorAll('tbody tr')).filter(r => !r.hidden).map(r => r.textContent.toLowerCase())";
    JsonNode rows = browser.run(shown);
    assertThat(rows.size()).isBetween(1, 20);
    rows.forEach(row -> assertThat(row.asText()).contains("water").contains("heater"));
    assertThat(browser.run("document.getElementById('found').textContent").asText()).matches("[0-9]+ of [0-9]+ lines");
    browser.press("Escape", "Escape", 27);
    assertThat(browser.run(shown).size()).isGreaterThan(60);
  }

  @Test
  void aFigureUnfoldsToItsFormulaAndSource() {
    open(court, 1400, "light");
    String details = "Array.from(document.querySelectorAll('details')).find(d => d.querySelector('.basis'))";
    assertThat(browser.run(details + ".querySelector('.steps').checkVisibility()").asBoolean()).isFalse();
    browser.click(details + ".querySelector('summary')");
    assertThat(browser.run(details + ".querySelector('.steps').checkVisibility()").asBoolean()).isTrue();
    assertThat(browser.run(details + ".innerText").asText()).contains("=");
  }

  @Test
  void aFindingLeadsToItsLine() {
    open(broken, 1400, "light");
    JsonNode link = browser.run("(a => [a.hash, a.textContent])(document.querySelector('.finding .place a'))");
    browser.click("document.querySelector('.finding .place a')");
    assertThat(browser.run("location.hash").asText()).isEqualTo(link.get(0).asText());
    String line = link.get(1).asText().split(":")[1];
    assertThat(browser.run("document.querySelector(':target .number').textContent").asText()).isEqualTo(line);
    browser.await("(r => r.top >= 0 && r.bottom <= innerHeight)(document.querySelector(':target').getBoundingClientRect())");
    // A line that a search has hidden comes back.
    browser.run("document.getElementById('search').value = 'nosuchword'; document.getElementById('search').dispatchEvent(new Event('input'));"
        + " location.hash = ''");
    assertThat(browser.run("document.querySelector(" + Browser.quoted(link.get(0).asText()) + ").hidden").asBoolean()).isTrue();
    browser.run("location.hash = " + Browser.quoted(link.get(0).asText()));
    browser.await("!document.querySelector(':target').hidden");
  }

  @Test
  void hostileNamesStayText() {
    open(hostile, 1400, "light");
    assertThat(browser.run("typeof window.harmed").asText()).isEqualTo("undefined");
    assertThat(browser.run("document.querySelectorAll('img, b, main script').length").asInt()).isZero();
    assertThat(browser.run("document.scripts.length").asInt()).isEqualTo(1);
    String text = browser.run("document.querySelector('main').textContent").asText();
    for (String name : HOSTILE) {
      if (name.indexOf('\u202E') < 0) {
        assertThat(text).contains(name);
      }
    }
    assertThat(browser.run("document.title").asText()).startsWith(HOSTILE.get(0));
  }

  @Test
  void nothingIsAskedOfTheNetwork() {
    for (URI page : List.of(court, broken, hostile)) {
      open(page, 1400, "dark");
    }
    List<String> asked = browser.heard("Network.requestWillBeSent").stream().map(e -> e.at("/request/url").asText()).toList();
    assertThat(asked).isNotEmpty().allMatch(url -> url.startsWith("file:") && url.replaceAll("#.*", "").endsWith("/report.html"));
  }

  @Test
  void itPrints() throws IOException {
    open(court, 1400, "dark");
    browser.send("Emulation.setEmulatedMedia", Browser.object().put("media", ""));
    byte[] pdf = Base64.getDecoder().decode(
        browser.send("Page.printToPDF", Browser.object().put("preferCSSPageSize", true)).get("data").asText());
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isBetween(4, 60);
      String text = new PDFTextStripper().getText(document);
      assertThat(text).contains("14 Alder Court").contains("Panel fronts").contains("What this rests on").doesNotContain("Search");
    }
  }
}
