package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import wattle.compiler.Compilation;
import wattle.emit.media.page.Markup;
import wattle.emit.media.page.Page;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetHtml;
import wattle.emit.media.table.SheetText;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.model.House;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Worksheet;

/**
 * The load calculation of each service as a form for the inspector: one page, its lines in the order of the article, and room for the
 * name, the license number and the signature of who answers for it. Nothing is filled in there.
 */
public final class WorksheetForm {
  private static final List<String> SIGNED = List.of("Prepared by", "License number", "Signature", "Date");
  private static final String STYLE = """
      h1 { font-size: 12pt; line-height: 1.1; }
      table { font-size: 9pt; line-height: 1.05; margin-bottom: 0.1em; }
      p { font-size: 9pt; line-height: 1.1; margin: 0.1em 0; }
      td:nth-child(2) { white-space: nowrap; }
      th, td { padding: 0.03em 0.3em; }
      caption { text-align: left; font-weight: bold; padding: 0.05em 0; }
      .caption { font-size: 9pt; }
      .form + .form { page-break-before: always; }
      .sign td { height: 3.2em; width: 25%; vertical-align: top; }
      .steps { display: none; }
      """;

  private final Compilation plan;
  private final House house;
  private final List<Form> forms = new ArrayList<>();

  /** One service. */
  private record Form(HouseInputs.Read read, Worksheet worksheet, List<Sheet> sheets) {}

  public WorksheetForm(Compilation plan) {
    this.plan = plan;
    house = plan.house();
    HouseWorksheets worksheets = plan.figures().worksheets();
    for (HouseInputs.Read read : worksheets.services()) {
      worksheets.least(read).ifPresent(
          w -> forms.add(
              new Form(
                  read, w, SheetUnits.shown(WorksheetSheets.of(w, WorksheetSheets.beside(w, plan.figures(), read), true), house.units()))));
    }
  }

  /** Whether no service has a load calculation, so that there is nothing to sign. */
  public boolean isEmpty() {
    return forms.isEmpty();
  }

  /** The tables of all services, for programs. */
  public List<Sheet> sheets() {
    return forms.stream().flatMap(f -> f.sheets.stream()).toList();
  }

  /** @param paper {@code letter} or {@code A4} */
  public Page page(String paper) {
    Markup body = new Markup();
    for (Form form : forms) {
      body.open("div", "class", "form");
      body.element("h1", title());
      body.open("table");
      facts(form).forEach(f -> body.open("tr").element("th", f.get(0), "class", "label").element("td", f.get(1)).close());
      body.close();
      form.sheets.forEach(s -> body.raw(SheetHtml.plain(s, d -> Optional.empty())));
      body.open("table", "class", "sign").open("tr");
      SIGNED.forEach(s -> body.element("td", s));
      body.close().close();
      body.close();
    }
    return new Page(title(), paper, STYLE, body.toString());
  }

  /** The same for a terminal or an e-mail. */
  public String text(OptionalInt columns) {
    StringBuilder text = new StringBuilder();
    for (Form form : forms) {
      text.append(title()).append('\n');
      facts(form).forEach(f -> text.append(f.get(0)).append(": ").append(f.get(1)).append('\n'));
      text.append('\n').append(SheetText.plain(form.sheets, columns)).append('\n');
      SIGNED.forEach(s -> text.append(String.format("%-16s", s + ":")).append("_".repeat(40)).append("\n\n"));
    }
    return text.toString();
  }

  private String title() {
    return "Load calculation: " + house.title().orElse(plan.source().name());
  }

  private List<List<String>> facts(Form form) {
    List<List<String>> facts = new ArrayList<>();
    house.revision().ifPresent(r -> facts.add(List.of("Revision", r)));
    facts.add(List.of("Service", form.worksheet.name() + ", " + form.read.inputs().system().words()
        + form.worksheet.rating().map(r -> ", rated " + r.value().text()).orElse("")));
    facts.add(List.of("Method", form.worksheet.method().title() + ", " + form.worksheet.method().source()));
    form.read.inputs().dwellings().forEach(
        d -> facts.add(
            List.of(
                d.alike() == 1
                    ? d.name().equals("dwelling") ? "Dwelling" : "Dwelling " + d.name()
                    : d.alike() + " dwellings like " + d.name(),
                d.floorArea().map(a -> "floor area " + a).orElse("floor area not stated")
                    + d.basementArea().map(a -> ", basement " + a).orElse(""))));
    return facts;
  }
}
