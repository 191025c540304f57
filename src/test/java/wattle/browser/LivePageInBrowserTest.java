package wattle.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.hostile.HostilePlan;
import wattle.live.LiveServer;

/** The live page in a real browser: clicked, typed at, saved under, broken, printed. Skipped, with a word, where there is none. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LivePageInBrowserTest {
  private Path folder;
  private Path lessons;
  private String text;
  private LiveServer server;
  private Browser browser;
  private Accessibility accessibility;

  @BeforeAll
  void openTheBrowser(@TempDir Path temporary) throws IOException {
    folder = temporary;
    accessibility = new Accessibility(folder);
    Path chromium = Browser.installed().orElse(null);
    Assumptions.assumeTrue(chromium != null, "no Chromium is installed, so the live page was not tried in a browser");
    text = Files.readString(Path.of("examples/classroom/lessons.wattle"));
    lessons = Files.writeString(folder.resolve("lessons.wattle"), text);
    server = new LiveServer(lessons);
    browser = Browser.start(chromium);
  }

  @AfterAll
  void closeTheBrowser() {
    if (browser != null) {
      browser.close();
      server.close();
    }
  }

  @BeforeEach
  void theTextAsItWas() throws IOException {
    save(text);
  }

  private void save(String plan) throws IOException {
    Files.writeString(lessons, plan);
    server.saved();
  }

  private void open(URI page, int width, String scheme) {
    var media = Browser.object().put("media", "screen");
    media.putArray("features").addObject().put("name", "prefers-color-scheme").put("value", scheme);
    browser.send("Emulation.setEmulatedMedia", media);
    browser.open(page.resolve("nothing"), width, 900); // of the same origin, without the script, which would keep what it has
    browser.run("sessionStorage.clear()");
    browser.open(page, width, 900);
    browser.await("document.querySelector('#panels svg') !== null && document.querySelector('#branches svg') !== null");
  }

  private void open(int width, String scheme) {
    open(server.address(), width, scheme);
  }

  private static String button(String part, String line) {
    return "document.querySelector('#" + part + " .toggle[data-line=\"" + line + "\"]')";
  }

  private void awaitLines(int count) {
    browser.await("document.querySelectorAll('.lines li').length === " + count);
  }

  private void choose(String what, String value) {
    browser.run("(s => { s.value = " + Browser.quoted(value)
        + "; s.dispatchEvent(new Event('change', {bubbles: true})); })(document.getElementById('" + what + "'))");
  }

  private String words(String element) {
    return browser.run("document.querySelector('" + element + "').textContent").asText();
  }

  private JsonNode spotOf(String part, String thing) {
    return browser.run(
        "(r => [r.x + r.width / 2, r.y + r.height / 2])((s => { s.scrollIntoView({block: 'center', behavior: 'instant'}); return"
            + " s.getBoundingClientRect(); })"
            + "(document.querySelector('#" + part + " .spot[data-thing=\"" + thing + "\"]')))");
  }

  private void point(String part, String thing) {
    JsonNode at = spotOf(part, thing);
    for (String type : List.of("mousePressed", "mouseReleased")) {
      browser.send("Input.dispatchMouseEvent",
          Browser.object().put("type", type).put("button", "left").put("clickCount", 1).put("x", at.get(0).asDouble()).put("y",
              at.get(1).asDouble()));
    }
  }

  private void fillWithMuch() {
    browser.run("document.querySelector('[data-start=\"trial service-neutral\"]').click()");
    awaitLines(3);
    choose("branch", "counter");
    browser.await("document.querySelector('[data-place=\"galley.c1\"]') !== null");
    browser.run("document.querySelector('[data-place=\"galley.c1\"]').click()");
    browser.await("document.querySelector('#box') !== null");
    browser.run("document.querySelectorAll('#loads details').forEach(d => { d.open = true; })");
    browser.run("document.querySelector('#dangers details').open = true");
    browser.run("document.querySelector('#figures td details').open = true");
    browser.await("document.querySelector('#figures .fold ul') !== null && document.querySelector('#dangers .fold ul') !== null");
  }

  @ParameterizedTest
  @CsvSource({"light, 1400", "dark, 1400", "light, 380", "dark, 380"})
  void everybodyCanReadIt(String scheme, int width) throws IOException, InterruptedException {
    save(text.replace("20 A  two-pole arc-fault ground-fault  counter", "30 A  two-pole  counter")); // findings to be read
    open(width, scheme);
    browser.await("document.querySelector('#findings .finding') !== null");
    fillWithMuch();
    assertThat(accessibility.violations(browser, "{}")).as(scheme + " " + width).isEmpty();
    assertThat(browser.run("document.documentElement.scrollWidth").asInt()).isLessThanOrEqualTo(width);
    assertThat(browser.run("(r => r.bottom <= innerHeight && r.height > 0)(document.querySelector('.standing').getBoundingClientRect())")
        .asBoolean()).as("the caution is in view").isTrue();
  }

  @Test
  void aBreakerIsClickedInThePictureAndInTheList() {
    open(1400, "light");
    choose("branch", "den");
    browser.await("document.getElementById('branches').textContent.includes('Branch den')");
    point("panels", "P/6");
    awaitLines(1);
    assertThat(words(".lines code")).isEqualTo("open breaker P/6");
    browser.await("document.querySelector('#panels svg').textContent.includes('OPEN')");
    assertThat(browser.run(button("panels", "open breaker P/6") + ".getAttribute('aria-pressed')").asText()).isEqualTo("true");
    assertThat(words("#branches svg")).contains("open").contains("0 V");
    assertThat(words("#block")).isEqualTo("trial what-if {\n  open breaker P/6\n}\n");
    browser.click(button("panels", "open breaker P/6"));
    awaitLines(0);
    browser.await("!document.querySelector('#panels svg').textContent.includes('OPEN')");
    assertThat(browser.run("document.getElementById('block') === null").asBoolean()).isTrue();
  }

  /** 12 ohm and 24 ohm across 240 V share it 80 V to 160 V. */
  @Test
  void aNeutralIsLostByPointingAtABox() {
    open(1400, "light");
    choose("branch", "counter");
    browser.await("document.querySelector('.spot[data-thing=\"galley.c2\"]') !== null");
    point("branches", "galley.c2");
    browser.await("document.querySelector('#box') !== null && document.activeElement.id === 'box-title'");
    draw("upper", "1200 W");
    awaitLines(1);
    draw("lower", "600 W");
    awaitLines(2);
    browser.await("document.getElementById('told').textContent.startsWith('none of the dangers')");
    browser.click(button("box", "open neutral of counter at galley.c2"));
    awaitLines(3);
    browser.await("document.getElementById('told').textContent.includes('galley.c2.lower is at')");
    assertThat(words("#told")).containsPattern("(158|159|160)[.0-9]* V");
    assertThat(words("#dangers")).contains("Voltage too high").contains("Voltage too low");
    assertThat(words("#branches svg")).contains("neutral: open");
    assertThat(browser.run(button("box", "open neutral of counter at galley.c2") + " === document.activeElement").asBoolean())
        .as("focus stays where it was").isTrue();
    browser.run("document.querySelector('#dangers details').open = true");
    browser.await("document.querySelector('#dangers .fold').querySelector('ul') !== null");
    assertThat(words("#dangers .fold")).contains("voltage at galley.c2.lower").contains("|U_n − Σ ΔU|");
    browser.run("document.querySelector('#dangers .fold .steps a').click()");
    browser.await("document.querySelector('#dangers .fold .steps a + div ul') !== null");
    assertThat(words("#dangers .fold .steps a + div")).contains(" = ");
  }

  private void draw(String part, String figure) {
    String form = "document.querySelector('#box form[data-line=\"galley.c2." + part + " draws\"]')";
    browser.run(form + ".elements.figure.value = '" + figure + "'; " + form + ".requestSubmit()");
  }

  @Test
  void theKeyboardDoesAllOfIt() {
    open(1400, "light");
    List<String> reached = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      browser.press("Tab", "Tab", 9);
      reached.add(browser.run(
          "(e => e.dataset.line || e.dataset.start || e.dataset.place || e.dataset.choice || e.id || e.tagName)(document.activeElement)")
          .asText());
      assertThat(browser.run("getComputedStyle(document.activeElement).outlineStyle").asText()).as(reached.get(i)).isNotEqualTo("none");
    }
    assertThat(reached.get(0)).isEqualTo("A");
    assertThat(reached).contains("nothing", "trial equal", "typed-line", "open breaker P/1", "open breaker P/2+4", "branch",
        "open service neutral");
    browser.run(button("panels", "open breaker P/3") + ".focus()");
    browser.press(" ", "Space", 32);
    awaitLines(1);
    browser.await("document.activeElement.getAttribute('aria-pressed') === 'true'");
    browser.press("Enter", "Enter", 13);
    awaitLines(0);
    browser.run("document.getElementById('typed-line').focus()");
    browser.type("move counter to 2+6");
    browser.press("Enter", "Enter", 13);
    awaitLines(1);
    assertThat(words(".lines code")).isEqualTo("move counter to 2+6");
    assertThat(browser.run("document.getElementById('typed-line').value").asText()).isEmpty();
    browser.run("document.getElementById('typed-line').focus()");
    browser.type("open the door");
    browser.press("Enter", "Enter", 13);
    awaitLines(2);
    assertThat(words(".lines .complaint")).startsWith("does not count: ");
    assertThat(words("#block")).doesNotContain("door");
  }

  @Test
  void aSaveRedrawsAndKeepsWhatWasClickedAndHalfTyped() throws IOException {
    open(1400, "light");
    browser.click(button("panels", "open breaker P/6"));
    awaitLines(1);
    choose("branch", "den");
    browser.await("document.querySelector('#branches svg').textContent.includes('14/2 NM-B, 8 m')");
    browser.run("document.getElementById('typed-line').focus()");
    browser.type("den.lamp o");
    save(text.replace("P --8 m-- den.outlet", "P --21 m-- den.outlet").replace("\"Mock-up wall\" revision \"A\"",
        "\"Mock-up wall\" revision \"B\""));
    browser.await("document.querySelector('#branches svg').textContent.includes('14/2 NM-B, 21 m')");
    browser.await("document.title === 'Mock-up wall, revision B'");
    awaitLines(1);
    assertThat(browser.run("document.getElementById('typed-line').value").asText()).isEqualTo("den.lamp o");
    assertThat(browser.run("document.activeElement.id").asText()).isEqualTo("typed-line");
    browser.open(server.address(), 1400, 900);
    awaitLines(1);
    browser.await("document.getElementById('branch').value === 'den'");
  }

  @Test
  void aBrokenPlanAndAGoneOneAreToldAndThePictureStays() throws IOException {
    open(1400, "light");
    choose("branch", "den");
    browser.await("document.querySelector('#branches svg').textContent.includes('14/2 NM-B, 8 m')");
    save(text.replace("P --8 m-- den.outlet", "P --8-- den.outlet"));
    browser.await("!document.getElementById('trouble').hidden && document.querySelector('#findings .finding.error') !== null");
    assertThat(words("#branches svg")).contains("14/2 NM-B, 8 m");
    assertThat(words("#findings .finding.error")).contains("unit");
    Files.delete(lessons);
    server.saved();
    browser.await("document.getElementById('trouble').textContent.includes('no such file')");
    assertThat(words("#branches svg")).contains("14/2 NM-B, 8 m");
    save(text);
    browser.await("document.getElementById('trouble').hidden && document.querySelector('#findings .finding.error') === null");
  }

  @Test
  void pagesKnowNothingOfEachOther() {
    open(1400, "light");
    browser.click(button("panels", "open breaker P/6"));
    awaitLines(1);
    try (Browser other = Browser.start(Browser.installed().orElseThrow())) {
      other.open(server.address(), 1400, 900);
      other.await("document.querySelector('#panels svg') !== null");
      assertThat(other.run("document.querySelectorAll('.lines li').length").asInt()).isZero();
      assertThat(other.run("document.querySelector('#panels svg').textContent.includes('OPEN')").asBoolean()).isFalse();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    awaitLines(1);
  }

  @Test
  void theBlockIsCopied() {
    open(1400, "light");
    browser.send("Browser.grantPermissions", permissions());
    browser.click(button("panels", "open breaker P/6"));
    awaitLines(1);
    browser.click("document.getElementById('copy')");
    browser.await("document.getElementById('copied').textContent !== ''");
    assertThat(words("#copied")).isEqualTo("copied");
    assertThat(browser.run("navigator.clipboard.readText()").asText()).isEqualTo("trial what-if {\n  open breaker P/6\n}\n");
  }

  private static com.fasterxml.jackson.databind.node.ObjectNode permissions() {
    var granted = Browser.object();
    granted.putArray("permissions").add("clipboardReadWrite").add("clipboardSanitizedWrite");
    return granted;
  }

  @Test
  void hostileNamesStayTextAndNothingIsAskedElsewhere() throws IOException {
    Path plan = Files.writeString(folder.resolve("hostile.wattle"), HostilePlan.text());
    try (LiveServer hostile = new LiveServer(plan)) {
      int before = browser.heard("Network.requestWillBeSent").size();
      open(hostile.address(), 1400, "dark");
      browser.run("document.querySelector('[data-start=stated]').click()");
      browser.await("document.querySelectorAll('.lines li').length > 4");
      browser.run("document.querySelectorAll('#places-words + .places button')[1].click()");
      browser.await("document.querySelector('#box') !== null");
      assertThat(browser.run("typeof window.harmed").asText()).isEqualTo("undefined");
      assertThat(browser.run("document.querySelectorAll('img, b, main script, iframe, a[href^=http]').length").asInt()).isZero();
      // What the page before still had under way is another server's.
      List<String> asked = browser.heard("Network.requestWillBeSent").stream().skip(before).map(e -> e.at("/request/url").asText())
          .dropWhile(u -> !u.equals(hostile.address().toString())).toList();
      assertThat(asked).hasSizeGreaterThan(5).allMatch(u -> u.startsWith(hostile.address().toString()) || u.startsWith("data:"));
    }
  }

  @Test
  void aServerThatStopsIsTold() throws IOException {
    Path plan = Files.writeString(folder.resolve("short.wattle"), text);
    LiveServer brief = new LiveServer(plan);
    open(brief.address(), 1400, "light");
    brief.close();
    browser.await(
        "document.getElementById('link').textContent.includes('stopped') || document.getElementById('link').textContent.includes('not"
            + " up to date')");
    assertThat(browser.run("document.querySelector('#panels svg') !== null").asBoolean()).isTrue();
  }

  @Test
  void whatIsSeenIsPrinted() throws IOException {
    open(1400, "dark");
    browser.run("document.querySelector('[data-start=\"trial open-neutral\"]').click()");
    awaitLines(3);
    browser.send("Emulation.setEmulatedMedia", Browser.object().put("media", ""));
    byte[] pdf = Base64.getDecoder()
        .decode(browser.send("Page.printToPDF", Browser.object().put("preferCSSPageSize", true)).get("data").asText());
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String printed = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(printed).contains("House current kills").contains("open neutral of counter at galley.c1").contains("above its 120 V")
          .contains("Mock-up wall").doesNotContain("Take away").doesNotContain("Copy this text");
      assertThat(document.getNumberOfPages()).isBetween(1, 12);
    }
  }
}
