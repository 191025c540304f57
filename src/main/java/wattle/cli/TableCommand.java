package wattle.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.sheet.tables.PlanTable;

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
        "  wattle table --of runs --out runs.md examples/cottage/house.wattle",
    })
final class TableCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-t", "--of"}, required = true, description = "One of: ${COMPLETION-CANDIDATES}.")
  private PlanTable of;

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
    format.write(of.of(plan), plan.house().units(), output, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
