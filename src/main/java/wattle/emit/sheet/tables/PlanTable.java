package wattle.emit.sheet.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
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
import wattle.emit.sheet.trial.FeederSheet;
import wattle.emit.sheet.trial.WorstCaseSheets;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.materials.Demolition;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;

/** A table of a whole plan; some are several sheets, such as one for each panel. */
public enum PlanTable {
  PANEL(plan -> PanelSchedule.of(plan.house(), plan.figures().loads())), //
  LOADS(plan -> List.of(LoadSchedule.of(plan.house(), plan.figures().loads()))), //
  RUNS(plan -> List.of(RunSchedule.of(plan.house(), plan.figures().conductors()))), //
  VOLTAGE(plan -> Stream.concat(Stream.of(WorstCaseSheets.voltages(plan.figures().worst())),
      FeederSheet.ofStated(plan.figures().trials()).stream()).toList()), //
  NEUTRAL(plan -> List.of(WorstCaseSheets.neutrals(plan.figures().worst()))), //
  HEAT(plan -> List.of(WorstCaseSheets.heat(plan.figures().worst()))), //
  BOXES(plan -> List.of(BoxSchedule.of(plan.house(), plan.figures().boxFill()))), //
  ROOMS(plan -> List.of(RoomSchedule.of(plan.house()))), //
  UNSTATED(plan -> List.of(CoverageSheet.of(plan.coverage()))), //
  MATERIALS(plan -> List.of(MaterialsSchedule.of(plan.figures().materials(), plan.house().units()))), //
  DEMOLITION(plan -> List.of(MaterialsSchedule.of(Demolition.of(plan.house())))), //
  /** Of the services, by the usual method of the plan's code; none where it has none, or the method lacks something. */
  WORKSHEET(PlanTable::worksheets), //
  FAULTS(plan -> List.of(FaultSchedule.of(plan.house(), plan.library(), plan.figures().faults())));

  /** Those whose figures have names, in the order in which they are listed. */
  public static final List<PlanTable> NAMED = List.of(VOLTAGE, NEUTRAL, HEAT, FAULTS, RUNS, LOADS, PANEL, BOXES, WORKSHEET);

  private final Function<Compilation, List<Sheet>> maker;

  PlanTable(Function<Compilation, List<Sheet>> maker) {
    this.maker = maker;
  }

  /** Its sheets, in the units that programs get. */
  public List<Sheet> of(Compilation plan) {
    return maker.apply(plan);
  }

  private static List<Sheet> worksheets(Compilation plan) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    if (worksheets.methods().isEmpty()) {
      return List.of();
    }
    List<Sheet> sheets = new ArrayList<>();
    for (HouseInputs.Read read : worksheets.services()) {
      worksheets.deciding(read)
          .flatMap(m -> worksheets.calculate(m, read).worksheet())
          .ifPresent(w -> sheets.addAll(WorksheetSheets.of(w, false)));
    }
    return sheets;
  }

  /** The word that asks for it. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
