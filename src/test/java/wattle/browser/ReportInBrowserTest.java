package wattle.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
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
import wattle.emit.media.text.VisibleText;
import wattle.hostile.HostilePlan;

/** The report, opened, read, searched and printed in a real browser. Skipped, with a word, where there is none. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportInBrowserTest {
  private Path folder;
  private Browser browser;
  private Accessibility accessibility;
  private URI court;
  private URI cottage;
  private URI lessons;
  private URI broken;
  private URI hostile;

  @BeforeAll
  void openTheBrowser(@TempDir Path temporary) throws IOException {
    folder = temporary;
    accessibility = new Accessibility(folder);
    Path chromium = Browser.installed().orElse(null);
    Assumptions.assumeTrue(chromium != null, "no Chromium is installed, so the report was not tried in a browser");
    court = report("examples/alder-court/house.wattle", "court");
    cottage = report("examples/cottage/house.wattle", "cottage");
    lessons = report("examples/classroom/lessons.wattle", "lessons");
    broken = report("examples/broken/ten-mistakes.wattle", "broken");
    hostile = report(Files.writeString(folder.resolve("hostile.wattle"), HostilePlan.text()).toString(), "hostile");
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
    int code = Main.run(new String[]{"report", plan, "--out", where.toString()}, new PrintWriter(new StringWriter()), new PrintWriter(err));
    assertThat(code).as(err.toString()).isLessThan(2);
    return where.resolve("report.html").toUri();
  }

  private void open(URI page, int width, String scheme) {
    com.fasterxml.jackson.databind.node.ObjectNode media = Browser.object().put("media", "screen");
    media.putArray("features").addObject().put("name", "prefers-color-scheme").put("value", scheme);
    browser.send("Emulation.setEmulatedMedia", media);
    browser.open(page, width, 900);
  }

  private List<String> violations() throws IOException, InterruptedException {
    return violations("{}");
  }

  private List<String> violations(String rules) throws IOException, InterruptedException {
    return accessibility.violations(browser, rules);
  }

  /** Opened figures and steps are looked at as well. */
  private void unfoldSome() {
    browser.run("Array.from(document.querySelectorAll('td details')).slice(0, 8).forEach(d => { d.open = true; });"
        + " Array.from(document.querySelectorAll('td details[open] .steps a')).slice(0, 4).forEach(a => a.click())");
  }

  @ParameterizedTest
  @CsvSource({"dark, 1400", "light, 380"})
  void everybodyCanReadIt(String scheme, int width) throws IOException, InterruptedException {
    for (URI page : List.of(cottage, broken, lessons)) {
      open(page, width, scheme);
      assertThat(browser.run("matchMedia('(prefers-color-scheme: dark)').matches").asBoolean()).isEqualTo(scheme.equals("dark"));
      unfoldSome();
      if (width < 400) {
        browser.click("document.querySelector('#contents summary')");
      }
      browser.run(SHORTENED);
      assertThat(violations()).as(page + " " + scheme + " " + width).isEmpty();
    }
  }

  /**
   * To judge contrast the engine looks behind each text, and what lies there is sorted out of all that the page shows: the
   * time goes with the square of the rows. Colors go by kinds of things and not by rows, so that beyond the first rows of
   * each table, steps and lines of the plan nothing new is to be seen; every kind of part, and opened figures and pictures,
   * are there.
   */
  private static final String SHORTENED = "document.querySelectorAll('tbody').forEach(b => Array.from(b.rows).slice(6).forEach(r =>"
      + " r.remove()));"
      + " Array.from(document.querySelectorAll('#steps p[id]')).slice(12).forEach(t => t.remove());"
      + " document.querySelectorAll('.plan').forEach(p => Array.from(p.querySelectorAll('.line')).slice(12).forEach(l => l.remove()));"
      + " Array.from(document.querySelectorAll('.folded')).slice(4).forEach(f => f.remove());"
      + " document.querySelectorAll('.folded, #steps details').forEach(d => { d.open = true; })";

  @Test
  void everybodyCanReadTheWholeHouse() throws IOException, InterruptedException {
    open(court, 1400, "light");
    assertThat(violations("{'color-contrast': {enabled: false}}")).isEmpty();
    for (String scheme : List.of("light", "dark")) {
      open(court, 1400, scheme);
      unfoldSome();
      browser.run(SHORTENED);
      assertThat(browser.run("document.querySelectorAll('main section').length").asInt()).isGreaterThan(18);
      assertThat(violations()).as(scheme).isEmpty();
    }
  }

  /** The engine that finds nothing anywhere would pass the tests above. */
  @Test
  void theEngineFindsWhatIsWrong() throws IOException, InterruptedException {
    open(broken, 1400, "light");
    browser.run("document.querySelector('label').remove(); document.querySelector('.facts').style.color = '#eee';"
        + " document.querySelector('main h2').outerHTML = '<h5>Findings</h5>'");
    assertThat(violations())
        .anyMatch(v -> v.startsWith("label:"))
        .anyMatch(v -> v.startsWith("color-contrast:"))
        .anyMatch(v -> v.startsWith("heading-order:"));
  }

  @ParameterizedTest
  @CsvSource({"380", "1400"})
  void nothingButWideThingsIsWiderThanTheWindow(int width) {
    for (URI page : List.of(court, broken, hostile)) {
      open(page, width, "light");
      assertThat(browser.run("document.documentElement.scrollWidth").asInt()).as(page.toString()).isLessThanOrEqualTo(width);
    }
  }

  private static final String FOCUSED = "(e => e.tagName + (e.id ? '#' + e.id : '') + (e.hash ? e.hash : ''))(document.activeElement)";

  private String tab() {
    browser.press("Tab", "Tab", 9);
    assertThat(browser.run("getComputedStyle(document.activeElement).outlineStyle").asText()).isNotEqualTo("none");
    return browser.run(FOCUSED).asText();
  }

  private void enter() {
    browser.press("Enter", "Enter", 13);
  }

  @Test
  void theKeyboardReachesEverything() {
    open(court, 1400, "light");
    List<String> reached = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      reached.add(tab());
    }
    // In the order of the page: the way past the contents, the search, the contents, then the parts.
    assertThat(reached).startsWith("A#main", "INPUT#search", "SUMMARY", "A#at-a-glance", "A#one-line-diagram", "A#findings")
        .contains("A#voltage", "A#plan", "DIV");
    assertThat(reached.indexOf("A#voltage")).isLessThan(reached.indexOf("DIV"));
  }

  @Test
  void theKeyboardGoesPastTheContentsAndOpensFigures() {
    open(court, 1400, "light");
    assertThat(tab()).isEqualTo("A#main");
    assertThat(browser.run("document.activeElement.getBoundingClientRect().left").asInt()).as("shown when focused").isNotNegative();
    enter();
    assertThat(browser.run(FOCUSED).asText()).isEqualTo("MAIN#main");
    // A figure that rests on one with more than six steps beneath it, which is a link.
    browser.run("const told = a => document.getElementById(a.hash.slice(1));"
        + " const inputs = s => Array.from(s.children).filter(c => c.localName === 'a').map(told);"
        + " const size = s => inputs(s).reduce((n, i) => n + size(i), 1);"
        + " Array.from(document.querySelectorAll('#voltage td details'))"
        + ".find(d => inputs(told(d.querySelector('a'))).some(i => size(i) > 6)).querySelector('summary').focus()");
    assertThat(browser.run("document.activeElement.parentElement.open").asBoolean()).isFalse();
    enter();
    assertThat(browser.run("document.activeElement.parentElement.open").asBoolean()).isTrue();
    browser.await("document.activeElement.parentElement.querySelector('.steps a') !== null");
    assertThat(tab()).as("an input that is told elsewhere").matches("A#s[0-9]+");
    enter();
    String opened = "document.activeElement.nextElementSibling";
    assertThat(browser.run("document.activeElement.getAttribute('aria-expanded')").asText()).isEqualTo("true");
    assertThat(browser.run(opened + ".innerText").asText()).contains("=");
    assertThat(browser.run(opened + ".querySelectorAll('[id]').length").asInt()).as("ids twice on the page").isZero();
    enter();
    assertThat(browser.run("document.activeElement.getAttribute('aria-expanded')").asText()).isEqualTo("false");
    assertThat(browser.run(opened + " === null || !" + opened + ".classList.contains('steps')").asBoolean()).isTrue();
  }

  @Test
  void onANarrowWindowTheContentsCloseBehindALink() {
    open(court, 380, "light");
    assertThat(browser.run("document.getElementById('contents').open").asBoolean()).isFalse();
    browser.click("document.querySelector('#contents summary')");
    assertThat(browser.run("document.getElementById('contents').open").asBoolean()).isTrue();
    browser.click("document.querySelector('#contents a[href=\"#materials\"]')");
    assertThat(browser.run("document.getElementById('contents').open").asBoolean()).isFalse();
    assertThat(browser.run("location.hash").asText()).isEqualTo("#materials");
    browser.await("(r => r.top >= 0 && r.top < innerHeight)(document.querySelector('#materials h2').getBoundingClientRect())");
  }

  /** Headings are in order and every part is in the contents. */
  @Test
  void theContentsNameEveryPart() {
    for (URI page : List.of(court, broken, hostile)) {
      open(page, 1400, "light");
      JsonNode parts = browser.run("Array.from(document.querySelectorAll('main section')).map(s => '#' + s.id)");
      assertThat(browser.run("Array.from(document.querySelectorAll('#contents a')).map(a => a.hash)")).isEqualTo(parts);
      assertThat(parts.size()).isGreaterThan(17);
      assertThat(browser.run(
          "Array.from(document.querySelectorAll('a[href^=\"#\"]')).filter(a => !document.getElementById(a.hash.slice(1))).map(a =>"
              + " a.hash)"))
          .as("links that lead nowhere").isEmpty();
      assertThat(
          browser.run("(ids => ids.length - new Set(ids).size)(Array.from(document.querySelectorAll('[id]')).map(e => e.id))").asInt())
          .isZero();
    }
  }

  @Test
  void searchKeepsWhatHasTheWords() {
    open(court, 1400, "light");
    browser.press("/", "Slash", 191);
    assertThat(browser.run("document.activeElement.id").asText()).isEqualTo("search");
    browser.type("water heater");
    String shown = "Array.from(document.querySelectorAll('tbody tr')).filter(r => !r.hidden).map(r => r.textContent.toLowerCase())";
    JsonNode rows = browser.run(shown);
    assertThat(rows.size()).isBetween(4, 80);
    rows.forEach(row -> assertThat(row.asText()).contains("water").contains("heater"));
    assertThat(browser.run("document.getElementById('found').textContent").asText()).matches("[0-9]+ of [0-9]+ lines");
    assertThat(browser.run("document.getElementById('shared-neutrals').hidden").asBoolean()).as("a part without a hit").isTrue();
    browser.press("Escape", "Escape", 27);
    assertThat(browser.run(shown).size()).isGreaterThan(600);
    assertThat(browser.run("document.querySelectorAll('section[hidden]').length").asInt()).isZero();
  }

  @Test
  void aFigureUnfoldsToItsFormulaAndSource() {
    open(court, 1400, "light");
    String details = "document.querySelector('#runs td details')";
    assertThat(browser.run(details + ".innerText").asText()).doesNotContain("=");
    browser.click(details + ".querySelector('summary')");
    browser.await(details + ".querySelector('.steps i')?.checkVisibility()");
    assertThat(browser.run(details + ".innerText").asText()).contains("=");
    assertThat(browser.run(details + ".querySelectorAll('.steps li').length").asInt()).isPositive();
  }

  /** A line of the worksheet opens to the devices that made it. */
  @Test
  void aLineOfTheWorksheetOpensToItsDevices() {
    open(court, 1400, "light");
    String row = "Array.from(document.querySelectorAll('#load-worksheets tr')).find(r => r.textContent.includes('fixed appliances'))";
    browser.click(row + ".querySelector('summary')");
    browser.await(row + ".querySelector('.steps') !== null");
    assertThat(browser.run(row + ".querySelector('details').innerText").asText())
        .contains("kitchen.dish").contains("1200").contains("kitchen.disposal");
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
    browser
        .run("document.getElementById('search').value = 'nosuchword'; document.getElementById('search').dispatchEvent(new Event('input'));"
            + " location.hash = ''");
    assertThat(browser.run("document.querySelector(" + Browser.quoted(link.get(0).asText()) + ").hidden").asBoolean()).isTrue();
    browser.run("location.hash = " + Browser.quoted(link.get(0).asText()));
    browser.await("!document.querySelector(':target').hidden");
  }

  @Test
  void hostileNamesStayText() {
    open(hostile, 1400, "light");
    assertThat(browser.run("typeof window.harmed").asText()).isEqualTo("undefined");
    assertThat(browser.run("document.querySelectorAll('img, b, main script, a[href^=http]').length").asInt()).isZero();
    assertThat(browser.run("document.scripts.length").asInt()).isEqualTo(1);
    String text = browser.run("document.querySelector('main').textContent").asText();
    HostilePlan.NAMES.forEach(name -> assertThat(text.contains(VisibleText.of(name))).as(name).isTrue());
    assertThat(browser.run("document.title").asText()).startsWith(HostilePlan.NAMES.get(0));
  }

  @Test
  void nothingIsAskedOfTheNetwork() {
    for (URI page : List.of(court, broken, hostile)) {
      open(page, 1400, "dark");
    }
    List<String> asked = browser.heard("Network.requestWillBeSent").stream().map(e -> e.at("/request/url").asText()).toList();
    assertThat(asked).isNotEmpty().allMatch(url -> url.startsWith("file:") && url.replaceAll("#.*", "").endsWith("/report.html"));
  }

  /** Forty-five houses of twenty circuits, in more than ten thousand lines. */
  private static String manyHouses() {
    StringBuilder plan = new StringBuilder("plan \"Long Street\"\n");
    for (int house = 0; house < 25; house++) {
      plan.append("service s%d 120/240 V 100 A { source available 10 kA }\npanel P%d from s%d {\n  bus 100 A\n  slots 24\n  bonded\n"
          .formatted(house, house, house));
      for (int i = 0; i < 20; i++) {
        plan.append("  %d 15 A b%dx%d\n".formatted(i + 1, house, i));
      }
      plan.append("}\n");
      for (int i = 0; i < 20; i++) {
        String name = house + "x" + i;
        plan.append("branch b%s by 14/2 NM-B {\n  P%d --%d m-- r%s.sw --4 m-- r%s.lamp\n".formatted(name, house, 5 + i, name, name));
        plan.append("  r%s.sw --2.5 m-- r%s.o1 --3 m-- r%s.o2\n}\nroom r%s {\n  sw: switch for lamp\n".formatted(name, name, name, name));
        plan.append("  lamp: light 12 W\n  o1: receptacle\n  o2: receptacle 100 W\n}\n");
      }
    }
    return plan.toString();
  }

  @Test
  void aPlanOfThousandsOfLinesMakesAPageThatOpens() throws IOException {
    String plan = manyHouses();
    assertThat(plan.lines().count()).isGreaterThan(5_000);
    URI page = report(Files.writeString(folder.resolve("street.wattle"), plan).toString(), "street");
    assertThat(Files.size(Path.of(page))).isLessThan(16L << 20);
    open(page, 1400, "light");
    assertThat(browser.run("document.querySelectorAll('.plan .line').length").asInt()).isGreaterThan(5_000);
    assertThat(browser.run("document.querySelector('#voltage .note').textContent").asText())
        .startsWith("The first 250 of 1500 rows").contains("wattle table --of voltage prints all of them");
    assertThat(browser.run("document.getElementById('panel-fronts').textContent").asText()).contains("wattle draw --view panel draws it");
    browser.run("document.getElementById('search').focus()");
    browser.type("r24x19.lamp");
    browser.await("document.getElementById('found').textContent.includes(' of ')");
    assertThat(browser.run("Array.from(document.querySelectorAll('.plan .line')).filter(l => !l.hidden).length").asInt()).isEqualTo(1);
  }

  /** What of a page must be on its print: headings, cells, notes, lines of the plan; labels of pictures. */
  private static final String TO_BE_PRINTED = "Array.from(document.querySelectorAll('h1, h2, h3, caption, th, td, .note, .finding"
      + " pre, .line code, main > section > p, svg text'))"
      + ".map(e => (e.tagName === 'TD' && e.querySelector('summary') || e.tagName === 'text' && e.lastChild || e).textContent)";

  /** Without white space, ligatures and case, which a print may change. */
  private static String bare(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC).replaceAll("\\s+", "").toLowerCase(Locale.ROOT);
  }

  @Test
  void nothingIsLostInPrint() throws IOException {
    for (URI page : List.of(cottage, broken)) {
      open(page, 1400, "dark");
      browser.send("Emulation.setEmulatedMedia", Browser.object().put("media", ""));
      JsonNode texts = browser.run(TO_BE_PRINTED);
      byte[] pdf = Base64.getDecoder().decode(
          browser.send("Page.printToPDF", Browser.object().put("preferCSSPageSize", true)).get("data").asText());
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).isBetween(3, 160);
        String printed = bare(new PDFTextStripper().getText(document));
        List<String> lost = new ArrayList<>();
        texts.forEach(t -> {
          if (!printed.contains(bare(t.asText()))) {
            lost.add(t.asText());
          }
        });
        assertThat(texts.size()).isGreaterThan(400);
        assertThat(lost).isEmpty();
        assertThat(printed).contains("housecurrentkills").doesNotContain("skiptothereport").doesNotContain("searchcontents");
      }
    }
  }
}
