package wattle.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.permit.PermitPage;
import wattle.emit.media.table.Sheet;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.finding.Finding;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.ObjectionFindings;
import wattle.worksheet.Outcome;

/** {@code permit}: the summary for the permit office. */
@Command(
    name = "permit",
    description = "Sums a plan up for the permit office: service, load calculation, panels, findings, what was silenced, sources.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle permit examples/alder-court/house.wattle --out permit.pdf",
        "  wattle permit examples/kitchen-renovation/after.wattle --paper A4 --out permit.pdf",
    })
final class PermitCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Mixin
  private DocumentFormat document;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Format format = document.chosen(output, Format.HTML, Set.of(Format.HTML, Format.PDF));
    String paper = document.paper();
    Compilation plan = input.compile(file);
    List<Sheet> worksheets = new ArrayList<>();
    List<String> objections = new ArrayList<>();
    HouseWorksheets methods = plan.figures().worksheets();
    for (HouseInputs.Read read : methods.services()) {
      worksheets.add(WorksheetSheets.comparison(read.inputs().name(), methods.compare(read)));
      methods.deciding(read).ifPresent(method -> {
        Outcome outcome = methods.calculate(method, read);
        outcome.worksheet().ifPresent(w -> worksheets.addAll(WorksheetSheets.of(w, true)));
        new ObjectionFindings(plan.house()).of(outcome.objections()).stream().map(Finding::headline).forEach(objections::add);
      });
    }
    List<Sheet> panels = PanelSchedule.of(plan.house(), plan.figures().loads());
    DocumentFormat.write(new PermitPage(plan, worksheets, objections, panels, plan.coverage()).page(paper), format, output,
        spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
