package wattle.emit.document.report;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import wattle.compiler.Compilation;
import wattle.emit.document.directory.DirectorySheets;
import wattle.emit.document.findings.FindingMarks;
import wattle.emit.document.glance.AtAGlance;
import wattle.emit.document.permit.PermitFacts;
import wattle.emit.document.report.Part.Group;
import wattle.emit.media.drawing.Marked;
import wattle.emit.media.page.Markup;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.sheet.schedule.Alike;
import wattle.emit.sheet.schedule.LegSchedule;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.emit.sheet.tables.PlanTable;
import wattle.emit.sheet.trial.ExpectationSheets;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.oneline.OneLineView;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.plot.LegsPlot;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.loads.ConnectedLoads;
import wattle.model.House;
import wattle.model.PanelSupply;
import wattle.model.Trial;
import wattle.trials.Expectations;
import wattle.trials.TrialResult;
import wattle.words.Caution;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.ObjectionFindings;
import wattle.worksheet.Outcome;

/** The parts of a report. None needs another, so they are made side by side. */
final class ReportParts {
  /** A drawing of more panels than this is wider than any screen. */
  private static final int MOST_PANEL_FRONTS = 24;

  /** A drawing of more panels is longer than anybody reads. */
  private static final int MOST_PANELS_IN_LINE = 60;

  private static final String AT_A_GLANCE = "At a glance";

  private static final String ONE_LINE = "One-line diagram";

  private static final int MOST_WORKSHEETS = 24;
  private static final int MOST_TRIALS = 40;
  private static final int ROWS_OF_A_TRIAL = 12;

  /** Likewise, in the short edition on paper. */
  private static final int ROWS_ON_PAPER = 4;

  private final Compilation plan;
  private final HouseFigures figures;
  private final House house;
  private final ConnectedLoads loads;
  private final boolean sound;
  private final ReportPictures pictures;
  private final Alike alike;
  private final FindingMarks marks;

  private ReportParts(Compilation plan) {
    this.plan = plan;
    figures = plan.figures();
    house = plan.house();
    loads = plan.figures().loads();
    sound = plan.count(Severity.ERROR) == 0;
    alike = new Alike(house);
    marks = FindingMarks.inPage(plan);
    pictures = new ReportPictures(house, alike, marks);
  }

  /** All parts, in their order. */
  static List<Part> of(Compilation plan) {
    ReportParts parts = new ReportParts(plan);
    return together(
        List.of(
            () -> new Part(Group.FIRST, AT_A_GLANCE, List.of(new Content.Words(AtAGlance.markup(plan)))),
            () -> new Part(Group.FIRST, ONE_LINE, parts.oneLine()),
            () -> new Part(Group.CHECKED, "For the inspector", parts.permit()),
            () -> new Part(Group.SUPPLY, "Panel fronts", parts.panelFronts()),
            () -> new Part(Group.SUPPLY, "Panel schedules", parts.tables(PlanTable.PANEL)),
            () -> Part.onDemand(Group.SUPPLY, "Panel directories", parts.directories()),
            () -> new Part(Group.LOADS, "Load worksheets", parts.worksheets()),
            () -> new Part(Group.LOADS, "Connected loads", parts.tables(PlanTable.LOADS)),
            () -> new Part(Group.LOADS, "Balance of the legs", parts.balance()),
            () -> Part.onDemand(Group.BRANCHES, "Branch wiring", parts.pictures.branches()),
            () -> Part.onDemand(Group.BRANCHES, "Runs", parts.tables(PlanTable.RUNS)),
            () -> new Part(Group.BRANCHES, "Voltage", parts.tables(PlanTable.VOLTAGE)),
            () -> Part.whereAny(Group.BRANCHES, "Shared neutrals",
                parts.tables(PlanTable.NEUTRAL)),
            () -> new Part(Group.BRANCHES, "Heat", parts.tables(PlanTable.HEAT)),
            () -> new Part(Group.BRANCHES, "Fault currents", parts.tables(PlanTable.FAULTS)),
            () -> Part.onDemand(Group.ROOMS, "Rooms", parts.rooms()),
            () -> Part.onDemand(Group.ROOMS, "Boxes", parts.tables(PlanTable.BOXES)),
            () -> Part.whereAny(Group.ROOMS, "Materials", parts.tables(PlanTable.MATERIALS)),
            () -> Part.whereAny(Group.TRIALS, "Trials and expectations", parts.trials())));
  }

  private static List<Part> together(List<Callable<Part>> makers) {
    ExecutorService workers = Executors.newFixedThreadPool(Math.max(1, Runtime.getRuntime().availableProcessors()));
    try {
      List<Part> parts = new ArrayList<>();
      for (Future<Part> part : workers.invokeAll(makers)) {
        parts.add(part.get());
      }
      return parts;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while the report was made", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException known) {
        throw known;
      }
      throw new IllegalStateException("a part of the report could not be made", e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private Content table(Sheet sheet, String command) {
    return table(sheet, command, sheet);
  }

  /** @param brief the same for the short edition on paper */
  private Content table(Sheet sheet, String command, Sheet brief) {
    return new Content.Table(shown(sheet), "wattle " + command, shown(brief));
  }

  /** In the units of the plan; the caution is at the head of the page, once for all tables. */
  private Sheet shown(Sheet sheet) {
    List<String> notes = sheet.notes().stream().map(n -> n.replace(Caution.LONG, "").replace(Caution.SHORT, "").strip())
        .filter(n -> !n.isEmpty()).toList();
    return SheetUnits.shown(new Sheet(sheet.name(), sheet.title(), sheet.columns(), sheet.rows(), notes), house.units());
  }

  private List<Content> tables(PlanTable tables) {
    List<Content> contents = new ArrayList<>();
    List<Sheet> sheets = tables == PlanTable.PANEL
        ? alike.ofShownPanels(tables.of(plan))
        : tables.of(plan).stream().map(alike::shown).toList();
    for (Sheet sheet : sheets) {
      contents.add(sheet.rows().isEmpty()
          ? new Content.Remark(sheet.title() + ": the plan has none.")
          : table(sheet, "table --of " + tables, tables == PlanTable.PANEL ? PanelSchedule.used(sheet) : sheet));
    }
    return contents.isEmpty() ? List.of(new Content.Remark("The plan has none.")) : contents;
  }

  /** For which others the things stand that are shown once; nothing where none are alike. */
  private List<Content> standing() {
    return alike.lines().stream().<Content>map(Content.Remark::new).toList();
  }

  private List<Content> permit() {
    Markup words = new Markup();
    PermitFacts facts = new PermitFacts(plan, "h3");
    facts.situation(words);
    words.element("h3", "Method of load calculation");
    List<String> methods = new ArrayList<>();
    HouseWorksheets worksheets = figures.worksheets();
    for (HouseInputs.Read read : worksheets.services()) {
      worksheets.deciding(read).ifPresent(m -> methods.add(read.inputs().name() + ": " + m.title() + ", " + m.source()));
    }
    if (methods.isEmpty()) {
      words.element("p", "The plan names no code that has methods of load calculation, or no service.");
    } else {
      words.list(methods);
    }
    facts.checked(words);
    facts.silenced(words);
    Content facing = new Content.Words(words.toString());
    return Stream.concat(Stream.of(facing), plan.coverage().unstated().isEmpty() ? Stream.of() : tables(PlanTable.UNSTATED).stream())
        .toList();
  }

  private List<Content> oneLine() {
    House shown = alike.shown();
    if (shown.panels().size() > MOST_PANELS_IN_LINE) {
      return List.of(tooMany("one-line"));
    }
    List<Content> contents = new ArrayList<>(standing());
    OneLineView diagram = new OneLine(shown, figures).view();
    contents.add(new Content.Picture(ONE_LINE, marks.on(diagram.drawing(), Marked.Side.BESIDE), marks.on(diagram, Marked.Side.BESIDE)));
    return contents;
  }

  private List<Content> panelFronts() {
    House shown = alike.shown();
    List<Content> contents = new ArrayList<>(standing());
    contents.add(shown.panels().size() > MOST_PANEL_FRONTS
        ? tooMany("panel")
        : new Content.Picture("Panel fronts", marks.on(new PanelFront(shown).drawing(PanelFront.MOST_ACROSS), Marked.Side.RIGHT_CORNER),
            marks.on(new PanelFront(shown), Marked.Side.RIGHT_CORNER)));
    return contents;
  }

  private Content tooMany(String view) {
    return new Content.Remark(
        "Not drawn here: a picture of " + house.panels().size() + " panels is larger than a page. wattle draw --view " + view
            + " draws it.");
  }

  private List<Content> directories() {
    List<Content> contents = new ArrayList<>();
    alike.ofShownPanels(DirectorySheets.of(house)).forEach(s -> contents.add(table(s, "directory")));
    contents.add(new Content.Remark(
        contents.isEmpty() ? "The plan has no panel." : "For the panel door: wattle directory makes a sheet or a folded card."));
    return contents;
  }

  /** Of each service and of each feeder, by the method that decides. */
  private List<Content> worksheets() {
    HouseWorksheets worksheets = figures.worksheets();
    if (worksheets.methods().isEmpty()) {
      return List
          .of(new Content.Remark("The plan names no code that has methods of load calculation; add a line such as use code us-2023."));
    }
    List<HouseInputs.Read> services = worksheets.services();
    List<HouseInputs.Read> reads = new ArrayList<>(services);
    house.panels().values().stream()
        .filter(p -> p.supply() instanceof PanelSupply.FromBreaker && !alike.isRepeated(p.name()))
        .forEach(p -> worksheets.feeder(p.name()).ifPresent(reads::add));
    List<Content> contents = new ArrayList<>();
    for (HouseInputs.Read read : reads.subList(0, Math.min(MOST_WORKSHEETS, reads.size()))) {
      worksheets.deciding(read).ifPresent(method -> {
        Outcome outcome = worksheets.calculate(method, read);
        outcome.worksheet().ifPresent(w -> WorksheetSheets.of(w, WorksheetSheets.beside(w, figures, read), true)
            .forEach(s -> contents.add(table(s, "table --of worksheet"))));
        new ObjectionFindings(house).of(outcome.objections()).stream().map(Finding::headline)
            .map(h -> new Content.Remark(read.inputs().name() + ": " + h + ".")).forEach(contents::add);
      });
      if (services.contains(read)) {
        Sheet methods = WorksheetSheets.comparison(read.inputs().name(), worksheets.compare(read));
        contents.add(table(methods, "table --of worksheet --compare-methods", WorksheetSheets.allowed(methods)));
      }
    }
    if (reads.size() > MOST_WORKSHEETS) {
      contents.add(new Content.Remark("The first " + MOST_WORKSHEETS + " of " + reads.size()
          + " services and feeders; wattle table --of worksheet calculates all of them."));
    }
    return contents.isEmpty() ? List.of(new Content.Remark("The plan has no service.")) : contents;
  }

  private List<Content> balance() {
    if (house.panels().isEmpty()) {
      return List.of(new Content.Remark("The plan has no panel."));
    }
    List<Content> contents = new ArrayList<>();
    // The picture is behind the table: on paper it may have to begin a page, and the table fills the one before.
    contents.add(table(alike.shown(LegSchedule.of(house, loads)), "balance"));
    House shown = alike.shown();
    if (shown.panels().size() <= MOST_PANEL_FRONTS) {
      contents.add(new Content.Picture("Load of each leg", LegsPlot.of(shown, loads), LegsPlot.view(shown, loads)));
    }
    contents.add(new Content.Remark("For slots that balance the legs better, run wattle balance."));
    return contents;
  }

  private List<Content> rooms() {
    List<Content> contents = new ArrayList<>(tables(PlanTable.ROOMS));
    contents.addAll(pictures.rooms());
    return contents;
  }

  private List<Content> trials() {
    if (house.trials().isEmpty() && house.expectations().isEmpty()) {
      return List.of(new Content.Remark(
          "The plan has no trial and no expectation. A trial says what draws or what is wrong; an expectation says what the result "
              + "must be."));
    }
    List<Content> contents = new ArrayList<>();
    if (!sound) {
      contents
          .add(new Content.Remark("The plan has errors. Parts that cannot be wired cannot be tried; the figures below are for the "
              + "other parts."));
    }
    if (!house.expectations().isEmpty()) {
      contents.add(table(ExpectationSheets.of(Expectations.judged(house, figures.trials())), "check"));
    }
    List<Trial> trials = house.trials().values().stream().filter(t -> !alike.isRepeated(t.name())).toList();
    for (Trial trial : trials.stream().limit(MOST_TRIALS).toList()) {
      TrialResult result = figures.trials().result(trial).value();
      String title = trial.label().orElse(trial.name());
      List<Sheet> sheets = TrialSheets.of(result, "Trial " + title, ROWS_OF_A_TRIAL);
      List<Sheet> brief = TrialSheets.of(result, "Trial " + title, ROWS_ON_PAPER);
      // A verdict without a danger is a heading without a table, which paper leaves out.
      boolean quiet = sheets.get(0).rows().isEmpty();
      if (quiet) {
        contents.add(new Content.Remark(sheets.get(0).title() + "."));
      }
      for (int i = quiet ? 1 : 0; i < sheets.size(); i++) {
        contents.add(table(sheets.get(i), "trial", brief.get(i)));
      }
      contents.addAll(pictures.trial(trial.name(), result, title));
    }
    if (trials.size() > MOST_TRIALS) {
      contents
          .add(new Content.Remark("The first " + MOST_TRIALS + " of " + house.trials().size() + " trials; wattle trial runs all of them."));
    }
    return contents;
  }
}
