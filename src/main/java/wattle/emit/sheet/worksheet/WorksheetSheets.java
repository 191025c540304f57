package wattle.emit.sheet.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.unfolded.DerivationText;
import wattle.finding.Severity;
import wattle.figures.HouseFigures;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.words.Caution;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Inputs;
import wattle.worksheet.Line;
import wattle.worksheet.Objection;
import wattle.worksheet.Outcome;
import wattle.worksheet.Worksheet;

/** A worksheet as tables. */
public final class WorksheetSheets {
  private static final int FEW = 4;

  static final String CAUTION = Caution.SHORT + " Check that every load of the house is in the plan.";

  private WorksheetSheets() {}

  /**
   * Lines of the legs, lines of the neutral, and what comes of them.
   *
   * @param brief whether a long list of devices is cut, as for people; the derivations have them all
   */
  public static List<Sheet> of(Worksheet worksheet, boolean brief) {
    return of(worksheet, List.of(), brief);
  }

  /** @param beside further notes to the result, such as what other methods give */
  public static List<Sheet> of(Worksheet worksheet, List<String> beside, boolean brief) {
    return List.of(
        lines("worksheet", title(worksheet), worksheet.lines(), "of " + worksheet.name(), unit(worksheet), brief),
        lines("worksheet-neutral", "Neutral of " + worksheet.name(), worksheet.neutralLines(), "of the neutral of " + worksheet.name(),
            unit(worksheet), brief),
        result(worksheet, beside));
  }

  /**
   * What stands beside the worksheet of a service or feeder: the conductors for its rating, the other methods that apply, and the
   * least number of circuits.
   */
  public static List<String> beside(Worksheet worksheet, HouseFigures figures, HouseInputs.Read read) {
    HouseWorksheets worksheets = figures.worksheets();
    List<String> notes = new ArrayList<>();
    NextConductor.note(worksheet, read.inputs(), figures.conductors()).ifPresent(notes::add);
    List<Worksheet> applicable = worksheets.applicable(read);
    List<String> others = applicable.stream()
        .filter(w -> !w.method().equals(worksheet.method()))
        .map(w -> w.method().title() + ", " + w.method().source().place() + ": " + amperes(w.current().si()))
        .toList();
    if (!others.isEmpty()) {
      boolean decides = applicable.get(0).method().equals(worksheet.method());
      notes.add((decides ? "Also allowed, with a larger result: " : "Also allowed: ") + String.join("; ", others) + ".");
    }
    worksheets.leastCircuits(read).ifPresent(c -> notes.addAll(c.lines()));
    return notes;
  }

  private static String amperes(double value) {
    return Quantity.plain(Math.round(value * 10) / 10.0, 4) + " A";
  }

  /** CSA C22.1 counts watts, NFPA 70 volt-amperes. */
  private static String unit(Worksheet worksheet) {
    return worksheet.method().mechanism().countsWatts() ? "W" : "VA";
  }

  static String title(Worksheet worksheet) {
    String what = worksheet.scope() == Inputs.Scope.SERVICE ? "service " : "feeder of ";
    return "Load worksheet, " + what + worksheet.name() + ": " + worksheet.method().title() + ", " + worksheet.method().source();
  }

  private static Sheet lines(String name, String title, List<Line> lines, String of, String unit, boolean brief) {
    List<Row> rows = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    List<Derivation> added = new ArrayList<>();
    for (Line line : lines) {
      line.result().ifPresent(added::add);
      rows.add(
          Row.of(
              Cell.of(line.name()), Cell.of(line.article()), line.connected().map(WorksheetSheets::figure).orElse(Cell.BLANK),
              line.factor().map(f -> Cell.of(100 * f.si(), f)).orElse(Cell.BLANK),
              line.result().map(WorksheetSheets::figure).orElse(Cell.BLANK), line.result().isPresent() ? sum(line, added) : Cell.BLANK,
              Cell.of(devices(line.devices(), brief)))
              .about(line.name() + " " + of));
      if (!line.remark().isEmpty()) {
        notes.add(line.name() + ": " + line.remark());
      }
    }
    return new Sheet(
        name, title,
        List.of(
            Column.words("line", "line"), Column.words("article", "article"),
            Column.figures("connected-va", "connected", unit, 0).naming("connected load, *"),
            Column.figures("factor-percent", "factor", "%", 1).naming("factor, *"),
            Column.figures("result-va", "result", unit, 0).naming("worksheet line, *"),
            Column.figures("sum-va", "sum", unit, 0).naming("subtotal up to *"),
            Column.words("devices", "made by")),
        rows, notes);
  }

  private static Cell figure(Derivation derivation) {
    return Cell.of(derivation.si(), derivation);
  }

  /** The running sum; its terms are unfolded in their own lines. */
  private static Cell sum(Line line, List<Derivation> added) {
    List<Derivation> terms = added.stream()
        .map(d -> new Derivation(d.name(), "", d.value(), d.basis(), "", List.of(), d.sources(), "Unfolded in its own line."))
        .toList();
    return Cell.of(
        line.runningSum(),
        Derivation.computed(
            "sum up to " + line.name(), "", "Σ results", new Value.Amount(Quantity.of(line.runningSum(), Units.VOLT_AMPERE)), terms));
  }

  private static String devices(List<String> names, boolean brief) {
    return brief && names.size() > FEW + 1
        ? String.join(", ", names.subList(0, FEW)) + " and " + (names.size() - FEW) + " more"
        : String.join(", ", names);
  }

  private static Sheet result(Worksheet worksheet, List<String> beside) {
    List<Row> rows = new ArrayList<>();
    String of = " of " + worksheet.name();
    rows.add(row("calculated load", of, unit(worksheet), worksheet.total()));
    if (worksheet.legs().size() == 1) {
      rows.add(row(worksheet.current().name(), of, "A", worksheet.current()));
    } else {
      worksheet.legs().values().forEach(l -> rows.add(row(l.name(), of, "A", l)));
    }
    rows.add(row("load of the neutral", of, unit(worksheet), worksheet.neutralTotal()));
    rows.add(row(worksheet.neutralCurrent().name(), of, "A", worksheet.neutralCurrent()));
    if (worksheet.continuous().si() > 0) {
      rows.add(row("continuous part of it", of, "A", worksheet.continuous()));
    }
    if (worksheet.sized().si() > worksheet.current().si()) {
      rows.add(row(worksheet.sized().name(), of, "A", worksheet.sized()));
    }
    rounded(worksheet).ifPresent(r -> rows.add(row("fraction below 0.5 A dropped, 220.5(B)", of, "A", r)));
    worksheet.nextRating().ifPresent(n -> rows.add(row("next standard rating", of, "A", n)));
    worksheet.rating().ifPresent(r -> rows.add(row("rating in the plan", of, "A", r)));
    worksheet.spare().ifPresent(s -> rows.add(row("spare capacity", of, "A", s)));
    List<String> notes = new ArrayList<>(beside);
    if (worksheet.total().toBeVerified() || worksheet.neutralTotal().toBeVerified()) {
      notes.add("Some factors are from memory; verify them in the code. The calculations mark them.");
    }
    notes.add(CAUTION);
    return new Sheet(
        "worksheet-result", "Result for " + worksheet.name(),
        List.of(Column.words("figure", "figure"), Column.figures("value", "value", "", 1).naming("*"), Column.words("unit", "unit")),
        rows, notes);
  }

  /** The whole amperes that the next rating is taken for, where a fraction was dropped. */
  private static Optional<Derivation> rounded(Worksheet worksheet) {
    return worksheet.nextRating().stream().flatMap(n -> n.inputs().stream()).filter(d -> d.name().equals("current, its fraction dropped"))
        .findFirst();
  }

  private static Row row(String name, String of, String unit, Derivation figure) {
    return Row.of(Cell.of(name), Cell.of(figure.si(), figure), Cell.of(unit)).about(name + of);
  }

  /** Methods side by side, with the reason where one does not fit. */
  public static Sheet comparison(String name, List<Outcome> outcomes) {
    List<Row> rows = new ArrayList<>();
    for (Outcome outcome : outcomes) {
      Optional<Worksheet> sheet = outcome.worksheet();
      rows.add(
          Row.of(
              Cell.of(outcome.method().name()), Cell.of(outcome.method().source().place()),
              cell(sheet.map(Worksheet::total)), cell(sheet.map(Worksheet::current)),
              cell(sheet.map(Worksheet::neutralCurrent)), cell(sheet.flatMap(Worksheet::nextRating)),
              cell(sheet.flatMap(Worksheet::spare)),
              Cell.of(reason(outcome))));
    }
    return new Sheet(
        "worksheet-methods", "Methods of load calculation for " + name,
        List.of(
            Column.words("method", "method"), Column.words("article", "article"),
            Column.figures("load-va", "load", "VA", 0), Column.figures("current-a", "current", "A", 1),
            Column.figures("neutral-a", "neutral", "A", 1), Column.figures("next-a", "next standard rating", "A", 0),
            Column.figures("spare-a", "spare", "A", 1), Column.words("remark", "remark")),
        rows, List.of("A code allows every method that applies; the smallest of their results is enough.", CAUTION));
  }

  /** A comparison with only the methods that give a result; a note names the others. */
  public static Sheet allowed(Sheet comparison) {
    List<Row> rows = comparison.rows().stream().filter(r -> !r.cells().get(2).equals(Cell.BLANK)).toList();
    List<String> others = comparison.rows().stream().filter(r -> r.cells().get(2).equals(Cell.BLANK))
        .map(r -> ((Cell.Words) r.cells().get(0)).text()).toList();
    List<String> notes = new ArrayList<>(comparison.notes());
    if (!others.isEmpty()) {
      notes.add(0,
          "Not for this plan: " + String.join(", ", others) + "; wattle table --of worksheet --compare-methods gives the reasons.");
    }
    return new Sheet(comparison.name(), comparison.title(), comparison.columns(), rows, notes);
  }

  /** Why a method gives nothing; the last objection is the method's own. */
  private static String reason(Outcome outcome) {
    return outcome.objections().stream()
        .filter(o -> o.severity() == Severity.ERROR)
        .map(Objection::headline)
        .reduce((earlier, later) -> later)
        .orElse("");
  }

  static Cell cell(Optional<Derivation> figure) {
    return figure.map(WorksheetSheets::figure).orElse(Cell.BLANK);
  }
}
