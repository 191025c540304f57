package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;
import wattle.compiler.Compilation;
import wattle.emit.document.glance.AtAGlance;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.table.SheetSources;
import wattle.emit.media.table.SheetText;
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
      table { font-size: 9pt; line-height: 1.06; margin-bottom: 0.4em; -fs-table-paginate: paginate; -fs-page-break-min-height: 54pt; }
      th, td { padding: 0.03em 0.3em; }
      caption { text-align: left; font-weight: bold; padding: 0.2em 0; }
      .caption { font-size: 9pt; }
      th.label { width: 30%; }
      .note, li { font-size: 9pt; line-height: 1.15; margin: 0.1em 0; }
      @media print { .steps { display: none; } }
      """;

  private static final String NO_METHOD = "The plan names no code that has methods of load calculation.";

  private static final String NOT_CHECKED = "Not checked: missing from the plan";

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
    String title = title();
    Markup body = new Markup();
    body.element("h1", title);
    house.revision().ifPresent(r -> body.element("p", "Revision " + r));
    body.element("p", Page.CAUTION, "class", "caution small");
    body.element("h2", "At a glance").raw(AtAGlance.markup(plan));
    PermitFacts facts = new PermitFacts(plan, "h2");
    facts.situation(body);
    facts.checked(body);
    facts.standing(body);
    facts.silenced(body);
    Coverage coverage = plan.coverage();
    if (!coverage.unstated().isEmpty()) {
      body.element("h2", NOT_CHECKED).raw(SheetHtml.render(CoverageSheet.of(coverage)));
    }
    body.element("h2", "Load calculation");
    loads.sheets().forEach(s -> body.raw(SheetHtml.render(s)));
    loads.objections().forEach(o -> body.element("p", o));
    if (loads.sheets().isEmpty() && loads.objections().isEmpty()) {
      body.element("p", NO_METHOD);
    }
    body.element("h2", "Panel schedules");
    alike.lines().forEach(line -> body.element("p", line));
    panels.stream().map(PanelSchedule::used).map(PermitPage::narrow).forEach(s -> body.raw(SheetHtml.render(s)));
    for (PermitPart part : basis()) {
      part.title().ifPresent(t -> body.element("h2", t));
      part.toPage(body);
    }
    return new Page(title, paper, STYLE, body.toString());
  }

  /**
   * The same as text.
   *
   * @param columns of the terminal that shows it; absent where none does
   */
  public String text(OptionalInt columns) {
    StringBuilder text = new StringBuilder(title()).append('\n');
    house.revision().ifPresent(r -> text.append("Revision ").append(r).append('\n'));
    text.append(Page.CAUTION).append('\n');
    head(text, "At a glance");
    AtAGlance.of(plan).forEach(e -> text.append(e.name()).append(": ").append(String.join("; ", e.lines())).append('\n'));
    for (PermitPart part : new PermitFacts(plan, "h2").all()) {
      part.title().ifPresent(t -> head(text, t));
      text.append(part.toText(columns));
    }
    Coverage coverage = plan.coverage();
    if (!coverage.unstated().isEmpty()) {
      head(text, NOT_CHECKED);
      // The heading says what the title of the table says.
      Sheet unstated = CoverageSheet.of(coverage);
      text.append(SheetText.plain(List.of(new Sheet(unstated.name(), "", unstated.columns(), unstated.rows(), unstated.notes())), columns));
    }
    head(text, "Load calculation");
    text.append(SheetText.plain(loads.sheets(), columns));
    loads.objections().forEach(o -> text.append(o).append('\n'));
    if (loads.sheets().isEmpty() && loads.objections().isEmpty()) {
      text.append(NO_METHOD).append('\n');
    }
    head(text, "Panel schedules");
    alike.lines().forEach(line -> text.append(line).append('\n'));
    text.append(SheetText.plain(panels.stream().map(PanelSchedule::used).map(PermitPage::narrow).toList(), columns));
    for (PermitPart part : basis()) {
      part.title().ifPresent(t -> head(text, t));
      text.append(part.toText(columns));
    }
    return text.toString();
  }

  private static void head(StringBuilder text, String title) {
    text.append('\n').append(title.toUpperCase(Locale.ROOT)).append('\n');
  }

  private String title() {
    return "Permit summary: " + house.title().orElse(plan.source().name());
  }

  /** Without its first column, the panel, which the title names as well. */
  private static Sheet narrow(Sheet sheet) {
    List<Column> columns = sheet.columns().subList(1, sheet.columns().size());
    return new Sheet(
        sheet.name(), sheet.title(), columns,
        sheet.rows().stream().map(r -> new Row(r.cells().subList(1, r.cells().size()), r.sum())).toList(), sheet.notes());
  }

  /** What it rests on: what was assumed, and sources. */
  private List<PermitPart> basis() {
    List<PermitPart> basis = new ArrayList<>();
    List<String> assumed = house.assumed().stream().filter(a -> Arrays.stream(a.split(" ")).noneMatch(alike::isRepeated)).toList();
    if (!assumed.isEmpty()) {
      basis.add(new PermitPart.Items(Optional.of("Assumed: not stated in the plan"), assumed));
      if (assumed.size() < house.assumed().size()) {
        basis.add(new PermitPart.Items(Optional.empty(), List.of("The same for identical parts.")));
      }
    }
    List<Sheet> all = new ArrayList<>(loads.sheets());
    all.addAll(panels);
    SortedSet<String> sources = new TreeSet<>(SheetSources.of(all).stream().map(Citation::toString).toList());
    plan.findings().forEach(f -> f.source().map(Citation::toString).ifPresent(sources::add));
    if (!sources.isEmpty()) {
      basis.add(new PermitPart.Items(Optional.of("Sources"), List.copyOf(sources)));
    }
    return basis;
  }
}
