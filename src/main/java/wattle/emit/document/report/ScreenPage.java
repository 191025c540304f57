package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import wattle.emit.document.findings.Judged;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.document.report.Part.Group;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.file.Mark;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.text.Escape;
import wattle.syntax.PlanTree;

/** The report for the screen: a table of contents, parts, figures that open; nothing is asked of the network. */
final class ScreenPage {
  /** Rows of one table; ten tables of so many cells with their workings are about as much as a browser opens at once. */
  private static final int MOST_ROWS = 250;

  private static final String STEPS = "Calculations";

  private final Report report;
  private final PlanText text;
  private final LinkedSteps unfolding;
  private final Markup main = new Markup();
  private final List<Entry> contents = new ArrayList<>();
  private final PictureStyles styles = new PictureStyles();
  private int pictures;

  private record Entry(Group group, String title, String id) {}

  ScreenPage(Report report) {
    this.report = report;
    this.unfolding = new LinkedSteps(report.alike()::names);
    this.text = new PlanText(report.plan().files().stream().map(PlanTree::source).toList(), PlanText.ON_SCREEN);
  }

  String html() {
    boolean found = !report.plan().findings().isEmpty();
    report.first().forEach(this::part);
    section(Group.CHECKED, "Findings", "findings", () -> findings(found));
    report.rest().forEach(this::part);
    section(Group.BASIS, "Assumptions and sources", "basis", () -> main.raw(report.basis((page, names) -> page.list(names))));
    List<LinkedSteps.Told> shared = unfolding.shared(Set.of(), unfolding::once);
    if (!shared.isEmpty()) {
      section(Group.BASIS, STEPS, "steps", () -> steps(shared));
    }
    if (!found) {
      section(Group.BASIS, "The plan", "plan", () -> text.writeTo(main));
    }
    Markup page = new Markup();
    page.element("a", "Skip to the report", "class", "skip", "href", "#main");
    page.open("header").element("h1", report.title());
    page.element("p", report.facts(), "class", "facts");
    page.element("p", Page.CAUTION, "class", "caution").close();
    navigation(page);
    page.open("main", "id", "main", "tabindex", "-1").raw(main.toString()).close();
    return Mark.markUp(
        "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"utf-8\"/>"
            + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline';"
            + " script-src 'unsafe-inline'; img-src data:\"/>"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>"
            + "<meta name=\"color-scheme\" content=\"light dark\"/><title>" + Escape.xml(report.title()) + "</title>\n<style>\n"
            + Report.resource("report.css") + styles.css() + "</style></head>\n<body>\n" + page + "<script>\n//<![CDATA[\n"
            + Report.resource("report.js")
            + "//]]>\n</script></body></html>\n");
  }

  private void part(Part part) {
    section(part.group(), part.title(), part.id(), () -> part.contents().forEach(this::content));
  }

  private void section(Group group, String title, String id, Runnable body) {
    contents.add(new Entry(group, title, id));
    main.open("section", "id", id, "aria-labelledby", id + "-h");
    main.element("h2", title, "id", id + "-h");
    body.run();
    main.close();
  }

  private void navigation(Markup page) {
    page.open("nav", "aria-label", "Parts of the report");
    page.open("div", "class", "search").element("label", "Search", "for", "search");
    page.empty("input", "id", "search", "type", "search", "autocomplete", "off", "aria-describedby", "found");
    page.element("span", "", "id", "found", "role", "status").close();
    page.open("details", "id", "contents").element("summary", "Contents");
    page.open("ul");
    for (Group group : Group.values()) {
      List<Entry> entries = contents.stream().filter(e -> e.group() == group).toList();
      if (!entries.isEmpty()) {
        page.open("li").element("span", group.title(), "class", "group").open("ul");
        entries.forEach(e -> page.open("li").element("a", e.title(), "href", "#" + e.id()).close());
        page.close().close();
      }
    }
    page.close().close().close();
  }

  /** Findings stand beside the text that they speak of; where there are none the text comes at the end of the page. */
  private void findings(boolean found) {
    main.open("div", "class", found ? "beside" : "alone").open("div");
    main.element("p", TextFindings.summary(report.plan().facts(), report.plan().source().name()));
    main.list(Judged.of(report.plan()).lines());
    new FindingList(text, true).writeTo(main, report.plan().facts());
    main.close();
    if (found) {
      main.open("div", "class", "texts");
      text.writeTo(main);
      main.close();
    }
    main.close();
  }

  private void content(Content content) {
    if (content instanceof Content.Picture picture) {
      main.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label", picture.title());
      main.raw(styles.shared(DrawingSvg.element(picture.drawing(), "picture" + ++pictures))).close();
    } else if (content instanceof Content.Folded folded) {
      folded(folded);
    } else if (content instanceof Content.Table table) {
      main.raw(
          SheetHtml.render(Cut.of(table.sheet(), MOST_ROWS, table.command()), d -> unfolding.reference(unfolding.step(d), "calculation")));
    } else if (content instanceof Content.Words words) {
      main.raw(words.markup());
    } else if (content instanceof Content.Remark remark) {
      main.element("p", remark.sentence());
    } else {
      throw new AssertionError(content);
    }
  }

  /** A browser does not lay out what is folded, so that a page of a hundred pictures opens like one without. */
  private void folded(Content.Folded folded) {
    main.open("details", "class", "folded").element("summary", folded.title());
    main.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label", folded.title());
    main.raw(styles.shared(DrawingSvg.element(folded.drawing(), "picture" + ++pictures))).close().close();
  }

  /** Closed, since nobody reads it from one end to the other; a link into it opens it. */
  private void steps(List<LinkedSteps.Told> shared) {
    main.element("p",
        "Each step is listed once. A figure on this page opens to its formula and inputs, and an input to its own. Without scripts, "
            + "the links lead here."
            + (report.alike().isEmpty() ? "" : " A step that repeats one already shown is listed without its inputs."));
    main.open("details", "class", "shared").element("summary", shared.size() + " steps");
    List<String> remarks = unfolding.remarks();
    for (int i = 0; i < remarks.size(); i++) {
      main.open("p", "id", "n" + (i + 1), "class", "remark").element("small", remarks.get(i)).close();
    }
    for (LinkedSteps.Told told : shared) {
      main.open("p", "id", LinkedSteps.id(told.step())).raw(told.markup()).close();
    }
    main.close();
  }
}
