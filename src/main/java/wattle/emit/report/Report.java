package wattle.emit.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import wattle.compiler.Compilation;
import wattle.emit.document.Markup;
import wattle.emit.document.Page;
import wattle.emit.drawing.Drawing;
import wattle.emit.drawing.DrawingSvg;
import wattle.emit.file.Mark;
import wattle.emit.findings.TextFindings;
import wattle.emit.table.Sheet;
import wattle.emit.table.SheetHtml;
import wattle.emit.table.SheetSources;
import wattle.emit.text.Escape;
import wattle.finding.Citation;
import wattle.model.House;
import wattle.syntax.PlanTree;

/**
 * One page with everything: findings beside the text of the plan, pictures, tables, what was assumed, and where each
 * figure is from.
 */
public final class Report {
  private final Compilation plan;
  private final PlanText text;
  private final List<Section> sections = new ArrayList<>();
  private final List<Sheet> sheets = new ArrayList<>();
  private int pictures;

  /** Kind of sheet that a picture stands on when printed, by the id of its section. */
  private final Map<String, String> sheetsOf = new LinkedHashMap<>();

  public Report(Compilation plan) {
    this.plan = plan;
    this.text = new PlanText(plan.files().stream().map(PlanTree::source).toList());
    findings();
  }

  /** Findings stand beside the text that they speak of; where there are none the text comes at the end of the page. */
  private void findings() {
    Markup page = new Markup();
    boolean some = !plan.findings().isEmpty();
    page.open("div", "class", some ? "beside" : "alone").open("div");
    page.element("p", TextFindings.summary(plan.findings(), plan.source().name()));
    new FindingList(text).writeTo(page, plan.findings());
    page.close();
    if (some) {
      page.open("div", "class", "texts");
      text.writeTo(page);
      page.close();
    }
    page.close();
    Markup paper = new Markup();
    paper.element("p", TextFindings.summary(plan.findings(), plan.source().name()));
    new FindingList(text).writeTo(paper, plan.findings());
    sections.add(new Section("findings", "Findings", page.toString(), paper.toString()));
  }

  /** Adds a picture under a heading. */
  public Report picture(String title, Drawing drawing) {
    String id = "picture" + ++pictures;
    Markup page = new Markup();
    page.open("div", "class", "wide picture", "role", "group", "tabindex", "0", "aria-label", title);
    page.raw(DrawingSvg.element(drawing, id)).close();
    sections.add(new Section(id, title, page.toString(), PaperPicture.of(drawing, id)));
    sheetsOf.put(id, PaperPicture.isTurned(drawing) ? "section turned" : "section sheet");
    return this;
  }

  /** Adds tables under a heading. */
  public Report tables(String title, List<Sheet> tables) {
    sheets.addAll(tables);
    StringBuilder body = new StringBuilder();
    StringBuilder paper = new StringBuilder();
    for (Sheet table : tables) {
      body.append(SheetHtml.render(table));
      paper.append(SheetHtml.plain(table));
    }
    sections.add(new Section("tables" + sections.size(), title, body.toString(), paper.toString()));
    return this;
  }

  /** The whole page, with the mark of our files. */
  public String html() {
    List<Section> all = new ArrayList<>(sections);
    all.add(basis());
    if (plan.findings().isEmpty()) {
      Markup files = new Markup();
      text.writeTo(files);
      all.add(Section.same("plan", "The plan", files.toString()));
    }
    Markup page = new Markup();
    page.open("header").element("h1", title());
    page.element("p", facts(), "class", "facts");
    page.element("p", Page.CAUTION, "class", "caution").close();
    page.open("nav", "aria-label", "Parts of the report").open("ul");
    all.forEach(s -> page.open("li").element("a", s.title(), "href", "#" + s.id()).close());
    page.close();
    page.open("div", "class", "search").element("label", "Search", "for", "search");
    page.empty("input", "id", "search", "type", "search", "autocomplete", "off");
    page.element("span", "", "id", "found", "role", "status").close().close();
    page.open("main");
    for (Section section : all) {
      page.open("section", "id", section.id(), "aria-labelledby", section.id() + "-h");
      page.element("h2", section.title(), "id", section.id() + "-h").raw(section.body()).close();
    }
    page.close();
    return Mark.markUp(
        "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"utf-8\"/>"
            + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline';"
            + " script-src 'unsafe-inline'; img-src data:\"/>"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>"
            + "<meta name=\"color-scheme\" content=\"light dark\"/><title>" + Escape.xml(title()) + "</title>\n<style>\n"
            + resource("report.css") + "</style></head>\n<body>\n" + page + "<script>\n//<![CDATA[\n" + resource("report.js")
            + "//]]>\n</script></body></html>\n");
  }

  /** The same for paper: nothing unfolds, so the workings stand at the end; wide pictures are on turned sheets. */
  public String paper() {
    List<Section> all = new ArrayList<>(sections);
    all.add(basis());
    String workings = Workings.of(sheets);
    if (!workings.isEmpty()) {
      all.add(Section.same("workings", "How the figures were come by", "<div class=\"workings\">" + workings + "</div>"));
    }
    Markup files = new Markup();
    text.writeTo(files);
    all.add(Section.same("plan", "The plan", files.toString()));
    Markup page = new Markup();
    page.element("h1", title()).element("p", facts(), "class", "facts").element("p", Page.CAUTION, "class", "caution");
    for (Section section : all) {
      page.open("div", "id", section.id(), "class", sheetsOf.getOrDefault(section.id(), "section"));
      page.element("h2", section.title()).raw(section.paper()).close();
    }
    return "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"utf-8\"/><title>"
        + Escape.xml(title()) + "</title><meta name=\"description\" content=\"" + Escape.xml(title()) + "\"/><style>"
        + resource("paper.css") + "</style></head>\n<body>\n" + page + "</body></html>\n";
  }

  /** Name of the plan and its revision. */
  public String title() {
    House house = plan.house();
    return house.title().orElse(plan.source().name()) + house.revision().map(r -> ", revision " + r).orElse("");
  }

  private String facts() {
    House house = plan.house();
    String codes = house.codes().isEmpty() ? "no code pack" : String.join(", ", house.codes().stream().map(this::packTitle).toList());
    return count(house.panels().size(), "panel", "panels") + ", " + count(house.branches().size(), "branch", "branches") + ", "
        + count(house.rooms().size(), "room", "rooms") + ", " + count(house.boxes().size(), "box", "boxes") + ". Checked under: " + codes + ".";
  }

  private static String count(int number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }

  private String packTitle(String pack) {
    return plan.library().packs().getOrDefault(pack, pack);
  }

  /** What stands behind the rest: packs, assumptions, sources. */
  private Section basis() {
    Markup page = new Markup();
    page.element("h3", "Checked");
    List<String> checked = new ArrayList<>();
    checked.add("Structure: names, slots, legs, wiring from the panel to each box, neutrals, grounds.");
    plan.library().packs().values().forEach(p -> checked.add("Pack: " + p + "."));
    page.list(checked);
    if (!plan.house().assumed().isEmpty()) {
      page.element("h3", "Not said by the plan, and taken as usual");
      page.list(plan.house().assumed());
    }
    TreeSet<String> sources = new TreeSet<>(SheetSources.of(sheets));
    plan.findings().forEach(f -> f.source().map(Citation::toString).ifPresent(sources::add));
    if (!sources.isEmpty()) {
      page.element("h3", "Sources of the figures and findings on this page");
      page.list(List.copyOf(sources));
    }
    return Section.same("basis", "What this rests on", page.toString());
  }

  private static String resource(String name) {
    try (InputStream in = Report.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + " is missing from this build");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }
}
