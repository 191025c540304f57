package wattle.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.table.Sheet;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Method;
import wattle.worksheet.Objection;
import wattle.worksheet.ObjectionFindings;
import wattle.worksheet.Outcome;

/** Which load worksheet {@code table} prints, of what, and by which method. */
final class WorksheetOptions {
  @Option(
      names = "--method",
      paramLabel = "NAME",
      description = "Method of the worksheet, such as standard or optional (default: of those that apply, the one with the smallest "
          + "load, which check uses).")
  private String method;

  @Option(names = "--panel", paramLabel = "PANEL", description = "The worksheet of this panel's feeder instead of the service.")
  private String panel;

  @Option(names = "--compare-methods", description = "All methods side by side, with the reason where one does not apply.")
  private boolean compare;

  /** Ends the command where these options are given for another table. */
  void refuse(String table) {
    if (method != null || panel != null || compare) {
      throw new Failure("--method, --panel and --compare-methods are for --of worksheet, not for --of " + table);
    }
  }

  int print(Compilation plan, SheetFormat format, ResultOutput output, CommandSpec spec) {
    if (method != null && compare) {
      throw new Failure("--method and --compare-methods exclude each other: one method or all of them");
    }
    HouseWorksheets worksheets = plan.figures().worksheets();
    List<Sheet> sheets = new ArrayList<>();
    List<Objection> objections = new ArrayList<>();
    for (HouseInputs.Read read : wanted(plan, worksheets)) {
      if (compare) {
        sheets.add(WorksheetSheets.comparison(read.inputs().name(), worksheets.compare(read)));
        objections.addAll(read.objections());
      } else {
        Outcome outcome = worksheets.calculate(method(plan, worksheets, read), read);
        outcome.worksheet()
            .ifPresent(w -> sheets.addAll(
                WorksheetSheets.of(w, WorksheetSheets.beside(w, plan.figures(), read), format.isForPeople(output))));
        objections.addAll(outcome.objections());
      }
    }
    if (!sheets.isEmpty()) {
      format.write(sheets, plan.house().units(), output, spec.commandLine().getOut());
    }
    return Math.max(tell(plan, objections, spec), BesideFindings.report(plan, spec));
  }

  private List<HouseInputs.Read> wanted(Compilation plan, HouseWorksheets worksheets) {
    if (worksheets.methods().isEmpty()) {
      throw new Failure(
          plan.source().name() + " names no code that has methods of load calculation; write a line such as use code us-2023");
    }
    if (panel != null) {
      return List.of(
          worksheets.feeder(panel).orElseThrow(
              () -> new Failure("no panel is called '" + panel + "'; the plan has " + String.join(", ", plan.house().panels().keySet()))));
    }
    if (plan.house().services().isEmpty()) {
      throw new Failure(plan.source().name() + " has no service; add one, or name a panel with --panel");
    }
    return worksheets.services();
  }

  private Method method(Compilation plan, HouseWorksheets worksheets, HouseInputs.Read read) {
    Optional<Method> chosen = method == null ? worksheets.deciding(read) : worksheets.method(method);
    return chosen.orElseThrow(
        () -> new Failure(
            "the codes of " + plan.source().name() + " have no method '" + method + "'; they have "
                + String.join(", ", worksheets.methods().stream().map(Method::name).toList())));
  }

  /** What the methods lack goes beside the result. */
  private static int tell(Compilation plan, List<Objection> objections, CommandSpec spec) {
    List<Finding> findings = new ObjectionFindings(plan.house()).of(objections);
    PrintWriter err = spec.commandLine().getErr();
    err.print(new TextFindings(false).render(findings));
    err.flush();
    return findings.stream().anyMatch(f -> f.severity() == Severity.ERROR) ? ExitCode.FOUND : ExitCode.FINE;
  }
}
