package wattle.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.media.table.Sheet;
import wattle.emit.sheet.coverage.CoverageSheet;
import wattle.emit.sheet.schedule.BoxSchedule;
import wattle.emit.sheet.schedule.FaultSchedule;
import wattle.emit.sheet.schedule.LoadSchedule;
import wattle.emit.sheet.schedule.MaterialsSchedule;
import wattle.emit.sheet.schedule.PanelSchedule;
import wattle.emit.sheet.schedule.RoomSchedule;
import wattle.emit.sheet.schedule.RunSchedule;
import wattle.emit.sheet.trial.WorstCaseSheets;

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
  /** What there are tables of, and how each is made. */
  enum Of {
    PANEL(plan -> PanelSchedule.of(plan.house(), plan.figures().loads())), //
    LOADS(plan -> List.of(LoadSchedule.of(plan.house(), plan.figures().loads()))), //
    RUNS(plan -> List.of(RunSchedule.of(plan.house(), plan.figures().conductors()))), //
    VOLTAGE(plan -> List.of(WorstCaseSheets.voltages(plan.figures().worst()))), //
    NEUTRAL(plan -> List.of(WorstCaseSheets.neutrals(plan.figures().worst()))), //
    HEAT(plan -> List.of(WorstCaseSheets.heat(plan.figures().worst()))), //
    BOXES(plan -> List.of(BoxSchedule.of(plan.house(), plan.figures().boxFill()))), //
    ROOMS(plan -> List.of(RoomSchedule.of(plan.house()))), //
    UNSTATED(plan -> List.of(CoverageSheet.of(plan.coverage()))), //
    MATERIALS(plan -> List.of(MaterialsSchedule.of(plan.figures().materials(), plan.house().units()))), //
    WORKSHEET(plan -> List.of()), //
    FAULTS(plan -> List.of(FaultSchedule.of(plan.house(), plan.library(), plan.figures().faults())));

    private final Function<Compilation, List<Sheet>> maker;

    Of(Function<Compilation, List<Sheet>> maker) {
      this.maker = maker;
    }
  }

  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = "--of", required = true, description = "One of: ${COMPLETION-CANDIDATES}.")
  private Of of;

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
    Compilation plan = input.compile(file);
    if (of == Of.WORKSHEET) {
      return worksheet.print(plan, format, output, spec);
    }
    worksheet.refuse(of.name().toLowerCase(java.util.Locale.ROOT));
    format.write(of.maker.apply(plan), plan.house().units(), output, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
