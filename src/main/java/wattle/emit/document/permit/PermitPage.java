package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.compiler.Compilation;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.table.SheetSources;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.sheet.coverage.CoverageSheet;
import wattle.emit.sheet.schedule.Alike;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.finding.Citation;
import wattle.model.House;
import wattle.rules.Coverage;

/** A plan on a few pages, for somebody who has to judge it. */
public final class PermitPage {
  private static final String STYLE = """
      table { font-size: 8pt; margin-bottom: 0.6em; }
      caption { text-align: left; font-weight: bold; padding: 0.2em 0; }
      th.label { width: 30%; }
      .note { font-size: 8pt; margin: 0.1em 0; }
      @media print { .steps { display: none; } }
      """;

  private final Compilation plan;
  private final House house;
  private final LoadCalculation loads;
  private final Alike alike;
  private final List<Sheet> panels;

  public PermitPage(Compilation plan) {
    this.plan = plan;
    house = plan.house();
    loads = LoadCalculation.of(plan);
    alike = new Alike(house);
    panels = SheetUnits.shown(alike.ofShownPanels(PanelSchedule.of(house, plan.figures().loads())), house.units());
  }

  /** @param paper {@code letter} or {@code A4} */
  public Page page(String paper) {
    String title = "Permit summary: " + house.title().orElse(plan.source().name());
    Markup body = new Markup();
    body.element("h1", title);
    house.revision().ifPresent(r -> body.element("p", "Revision " + r));
    body.element("p", Page.CAUTION, "class", "caution small");
    PermitFacts facts = new PermitFacts(plan, "h2");
    facts.situation(body);
    facts.checked(body);
    facts.standing(body);
    facts.silenced(body);
    Coverage coverage = plan.coverage();
    if (!coverage.unstated().isEmpty()) {
      body.element("h2", "Not checked, because the plan does not say").raw(SheetHtml.render(CoverageSheet.of(coverage)));
    }
    body.element("h2", "Load calculation");
    loads.sheets().forEach(s -> body.raw(SheetHtml.render(s)));
    loads.objections().forEach(o -> body.element("p", o));
    if (loads.sheets().isEmpty() && loads.objections().isEmpty()) {
      body.element("p", "The plan names no code that has methods of load calculation.");
    }
    body.element("h2", "Panel schedules");
    alike.lines().forEach(line -> body.element("p", line));
    panels.stream().map(PermitPage::used).map(PermitPage::narrow).forEach(s -> body.raw(SheetHtml.render(s)));
    basis(body);
    return new Page(title, paper, STYLE, body.toString());
  }

  /** A schedule without its empty slots, which are named in a note. */
  private static Sheet used(Sheet sheet) {
    List<String> empty = sheet.rows().stream().flatMap(r -> PanelSchedule.emptySlot(r).stream()).toList();
    if (empty.isEmpty()) {
      return sheet;
    }
    List<String> notes = new ArrayList<>(sheet.notes());
    notes.add("Empty slots: " + String.join(", ", empty) + ".");
    List<Row> rows = sheet.rows().stream().filter(r -> PanelSchedule.emptySlot(r).isEmpty()).toList();
    return new Sheet(sheet.name(), sheet.title(), sheet.columns(), rows, notes);
  }

  /** Without its first column, the panel, which the title names as well. */
  private static Sheet narrow(Sheet sheet) {
    List<Column> columns = sheet.columns().subList(1, sheet.columns().size());
    return new Sheet(
        sheet.name(), sheet.title(), columns,
        sheet.rows().stream().map(r -> new Row(r.cells().subList(1, r.cells().size()), r.sum())).toList(), sheet.notes());
  }

  private void basis(Markup body) {
    List<String> assumed = house.assumed().stream().filter(a -> Arrays.stream(a.split(" ")).noneMatch(alike::isRepeated)).toList();
    if (!assumed.isEmpty()) {
      body.element("h2", "Not said by the plan, and taken as usual").list(assumed);
      if (assumed.size() < house.assumed().size()) {
        body.element("p", "The same for what is alike.");
      }
    }
    List<Sheet> all = new ArrayList<>(loads.sheets());
    all.addAll(panels);
    SortedSet<String> sources = new TreeSet<>(SheetSources.of(all).stream().map(Citation::toString).toList());
    plan.findings().forEach(f -> f.source().map(Citation::toString).ifPresent(sources::add));
    if (!sources.isEmpty()) {
      body.element("h2", "Sources").list(List.copyOf(sources));
    }
  }
}
