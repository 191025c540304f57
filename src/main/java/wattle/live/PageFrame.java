package wattle.live;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import wattle.emit.document.report.Report;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.text.Escape;
import wattle.words.Caution;

/** The page before anything is shown in it; its script asks for the parts. */
final class PageFrame {
  /** What stays in view wherever a reader is on the page. */
  private static final String STANDING = "House current kills. " + Caution.LONG;

  private PageFrame() {}

  static String html(Version version) {
    Markup page = new Markup();
    page.element("a", "Skip to the results", "class", "skip", "href", "#dangers");
    page.open("header").element("h1", version.title(), "id", "title");
    page.open("p", "class", "facts").element("span", "", "id", "status").text(" ").element("span", "", "id", "link", "role", "status")
        .close();
    page.element("p", "", "id", "trouble", "class", "trouble", "role", "alert", "hidden", "hidden").close();
    page.element("p", "", "id", "told", "role", "status", "class", "told-line");
    page.open("main", "id", "main", "tabindex", "-1");
    section(page, "glance", "At a glance");
    section(page, "events", "What if");
    section(page, "dangers", "Results");
    section(page, "panels", "Panel");
    section(page, "branches", "Branch");
    section(page, "loads", "Loads and switches");
    page.open("section", "id", "figures", "aria-labelledby", "figures-h").element("h2", "Figures", "id", "figures-h");
    page.open("p").empty("input", "type", "checkbox", "id", "every-row", "autocomplete", "off")
        .element("label", " every outlet and conductor, not the worst alone", "for", "every-row").close();
    page.open("div", "data-part", "figures").close().close();
    section(page, "findings", "Findings in the plan");
    page.close();
    page.open("footer").element("p", Page.CAUTION);
    page.element("p", STANDING, "class", "standing").close();
    String title = Escape.xml(version.title());
    return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"><meta name=\"color-scheme\" content=\"light dark\">"
        + "<link rel=\"icon\" href=\"data:,\"><link rel=\"stylesheet\" href=\"live.css\"><script src=\"live.js\" defer></script><title>"
        + title
        + "</title></head>\n<body>\n" + page
        + "<noscript><p>This page needs its script; wattle report makes one that does not.</p></noscript></body></html>\n";
  }

  private static void section(Markup page, String id, String title) {
    page.open("section", "id", id, "aria-labelledby", id + "-h").element("h2", title, "id", id + "-h", "tabindex", "-1");
    page.open("div", "data-part", id).close().close();
  }

  static String script() {
    return resource("live.js");
  }

  /** That of the report, and what is this page's own. */
  static String style() {
    return Report.style() + resource("live.css");
  }

  private static String resource(String name) {
    try (InputStream in = PageFrame.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from this build");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }
}
