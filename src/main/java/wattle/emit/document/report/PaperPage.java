package wattle.emit.document.report;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import wattle.emit.document.findings.Judged;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.paper.PagePicture;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.text.Escape;
import wattle.syntax.PlanTree;

/** The report for paper: nothing unfolds, so the workings stand at the end and figures link to them; pictures have sheets. */
final class PaperPage {
  /** Rows of one table. */
  private static final int MOST_ROWS = 250;

  /** Of one that goes from run to run or outlet to outlet, where branches are not asked for: the worst come first. */
  private static final int MOST_ROWS_OF_BRANCHES = 20;

  /** A command is copied as it stands, and is not broken at its hyphens. */
  private static final Pattern COMMAND = Pattern.compile("report --pdf --[a-z]+");

  private final Report report;
  private final PaperEdition edition;
  private final PaperSheets sheets;
  private final PlanText text;
  private final Workings workings = new Workings();
  private final Markup body = new Markup();
  private final Map<String, String> contents = new LinkedHashMap<>();

  /** Beneath the parts, by the ids of the parts and then their own. */
  private final Map<String, Map<String, String>> within = new HashMap<>();

  private String part = "";
  /** Notes of the tables of this part. */
  private final Set<String> said = new HashSet<>();

  private int mostRows = MOST_ROWS;
  private int pictures;
  private int tables;

  PaperPage(Report report, PaperEdition edition) {
    this.report = report;
    this.edition = edition;
    this.sheets = new PaperSheets();
    this.text = new PlanText(report.plan().files().stream().map(PlanTree::source).toList(), PlanText.ON_PAPER);
  }

  String html() {
    report.first().forEach(this::part);
    section("findings", "Findings", "section", () -> {
      body.element("p", TextFindings.summary(report.plan().facts(), report.plan().source().name()));
      body.list(Judged.of(report.plan()).lines());
      new FindingList(text, edition.workings()).writeTo(body, report.plan().facts());
    });
    report.rest().stream().filter(p -> edition.branches() || !p.onDemand()).forEach(this::part);
    section("basis", "Assumptions and sources", "section",
        () -> body.raw(report.basis((page, names) -> page.element("p", String.join("; ", names), "class", "note"))));
    String steps = workings.markup();
    if (!steps.isEmpty()) {
      section("workings", "Calculations", "section", () -> {
        body.element("p",
            "Each figure that the plan does not state, numbered, table by table. A number in brackets refers to a step that it uses.");
        body.open("div", "class", "workings").raw(steps).close();
      });
    }
    if (edition.workings()) {
      section("plan", "The plan", "section", () -> text.writeTo(body));
    }
    Markup page = new Markup();
    page.element("h1", report.title()).element("p", report.facts(), "class", "facts").element("p", Page.CAUTION, "class", "caution");
    page.open("div", "class", "contents").element("h2", "Contents");
    contents.forEach((id, title) -> page.open("p").element("a", title, "href", "#" + id).close());
    if (!edition.leftOut().isEmpty()) {
      page.open("p", "class", "note").raw(COMMAND.matcher(Escape.xml(edition.leftOut())).replaceAll("<span class=\"command\">$0</span>"))
          .close();
    }
    page.close();
    String title = Escape.xml(report.title());
    return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"utf-8\"/><title>" + title
        + "</title><meta name=\"description\" content=\"" + title + "\"/><style>" + Report.resource("paper.css") + "</style>" + bookmarks()
        + "</head>\n<body" + (edition.branches() ? " class=\"whole\"" : "") + ">\n" + page + body + "</body></html>\n";
  }

  private String bookmarks() {
    Markup list = new Markup();
    list.open("bookmarks");
    contents.forEach((id, title) -> {
      list.open("bookmark", "name", title, "href", "#" + id);
      within.getOrDefault(id, Map.of()).forEach((inner, name) -> list.empty("bookmark", "name", name, "href", "#" + inner));
      list.close();
    });
    return list.close().toString();
  }

  private void part(Part part) {
    mostRows = edition.branches() || part.group() != Part.Group.BRANCHES ? MOST_ROWS : MOST_ROWS_OF_BRANCHES;
    section(part.id(), part.title(), sheets.isTurned(part) ? "section turned" : "section", () -> part.contents().forEach(this::content));
  }

  private void section(String id, String title, String kind, Runnable contents) {
    this.contents.put(id, title);
    part = id;
    said.clear();
    body.open("div", "id", id, "class", kind).element("h2", title);
    contents.run();
    body.close();
  }

  private void figures(PagePicture picture) {
    picture.parts().forEach(p -> body.raw(PrintedPicture.figure(p, "picture" + ++pictures)));
  }

  private void content(Content content) {
    if (content instanceof Content.Picture picture) {
      figures(sheets.of(picture));
    } else if (content instanceof Content.Folded folded && edition.branches()) {
      PagePicture picture = sheets.of(folded);
      String id = "picture" + (pictures + 1) + "-head";
      within.computeIfAbsent(part, p -> new LinkedHashMap<>()).put(id, folded.title());
      body.open("div", "class", picture.turned() ? "turned" : "parts").element("h3", folded.title(), "id", id);
      figures(picture);
      body.close();
    } else if (content instanceof Content.Folded) {
      return; // the note at the end says how it is printed
    } else if (content instanceof Content.Table table) {
      Sheet shown = edition.branches() ? table.sheet() : PaperSheet.narrow(table.brief());
      Sheet sheet = Cut.of(PaperSheet.saidOnce(shown, said), mostRows, table.command());
      if (sheet.rows().isEmpty() && !edition.branches()) {
        sheet.notes().forEach(n -> body.element("p", sheet.title() + ": " + n));
        return;
      }
      Optional<String> told = edition.workings() ? workings.add(sheet) : Optional.empty();
      String id = told.map(Workings::tableOf).orElseGet(() -> "table-" + ++tables);
      within.computeIfAbsent(part, p -> new LinkedHashMap<>()).put(id, sheet.title());
      body.open("div", "id", id).raw(SheetHtml.plain(sheet, workings::place)).close();
      told.ifPresent(
          place -> body.raw("<p class=\"note\">Calculations: <a class=\"page\" href=\"#" + place + "\">page </a></p>"));
    } else if (content instanceof Content.Words words) {
      body.raw(words.markup());
    } else if (content instanceof Content.Remark remark) {
      body.element("p", remark.sentence());
    } else {
      throw new AssertionError(content);
    }
  }
}
