package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.text.VisibleWriter;
import wattle.emit.sheet.schedule.MaterialsSchedule;
import wattle.emit.sheet.tables.PlanTable;
import wattle.finding.Checked;
import wattle.materials.PriceList;

/** {@code table}: schedules and calculations of a plan. */
@Command(
    name = "table",
    description = "Prints a schedule of a plan.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle table --of panel examples/alder-court/house.wattle",
        "  wattle table --of loads --format csv examples/alder-court/house.wattle",
        "  wattle table --of worksheet --compare-methods examples/alder-court/house.wattle",
        "  wattle table --of unstated examples/alder-court/house.wattle",
        "  wattle table --of materials --prices prices.csv examples/kitchen-renovation/after.wattle",
        "  wattle table --of demolition examples/kitchen-renovation/after.wattle",
        "  wattle table --of runs --out runs.md examples/cottage/house.wattle",
    })
final class TableCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-t", "--of"}, required = true, description = "One of: ${COMPLETION-CANDIDATES}.")
  private PlanTable of;

  @Option(names = "--prices", paramLabel = "CSV",
      description = "For materials: your own price list with the columns item, unit (each, m or ft), price and hours; the totals are "
          + "added.")
  private String prices;

  @Mixin
  private SurveyOption survey = new SurveyOption();

  @Mixin
  private WorksheetOptions worksheet;

  @Mixin
  private SheetFormat format;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Compilation plan = survey.of(input.compile(file));
    if (of == PlanTable.WORKSHEET) {
      return worksheet.print(plan, format, output, spec);
    }
    worksheet.refuse(of.toString());
    if (prices != null) {
      return priced(plan);
    }
    format.write(of.of(plan), plan.house().units(), output, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }

  private int priced(Compilation plan) {
    if (of != PlanTable.MATERIALS) {
      throw new Failure("--prices goes with --of materials");
    }
    Checked<PriceList> list = PriceList.read(input.readSheet(prices));
    if (!list.findings().isEmpty()) {
      PrintWriter err = spec.commandLine().getErr();
      err.print(new TextFindings(Terminal.wantsColor(), Map.of(), VisibleWriter.columns(err)).render(list.findings()));
      return ExitCode.USAGE;
    }
    format.write(List.of(MaterialsSchedule.of(plan.figures().materials(), list.value(), plan.house().units())), plan.house().units(),
        output,
        spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
