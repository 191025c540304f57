package wattle.emit.sheet.figures;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.compiler.Compilation;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetFigure;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.sheet.schedule.FaultSchedule;
import wattle.emit.sheet.tables.PlanTable;
import wattle.emit.sheet.trial.TrialSheets;
import wattle.model.Trial;
import wattle.quantity.UnitSystem;

/** Every figure of the tables of a plan, or of one of its trials, under a name. */
public final class PlanFigures {
  private final Compilation plan;
  private final boolean ofTables;
  private final UnitSystem units;
  private final List<SheetFigure> figures;

  private PlanFigures(Compilation plan, boolean ofTables, UnitSystem units, List<Sheet> sheets) {
    this.plan = plan;
    this.ofTables = ofTables;
    this.units = units;
    figures = SheetFigure.of(SheetUnits.shown(sheets, units));
  }

  /**
   * Of the tables.
   *
   * @param units in which they are shown: for people those of the plan
   */
  public static PlanFigures of(Compilation plan, UnitSystem units) {
    List<Sheet> sheets = PlanTable.NAMED.stream().flatMap(t -> t.of(plan).stream()).toList();
    return new PlanFigures(plan, true, units, sheets);
  }

  /** The same of one of the plan's trials. */
  public static PlanFigures of(Compilation plan, Trial trial, UnitSystem units) {
    String title = trial.label().orElse(trial.name());
    return new PlanFigures(
        plan, false, units,
        TrialSheets.of(plan.figures().trials().result(trial).value(), title, Integer.MAX_VALUE));
  }

  /** All of them, table by table. */
  public List<SheetFigure> all() {
    return figures;
  }

  /**
   * What a reader asked for.
   *
   * @param figures of this very name, else the first in whose name its words stand in order
   * @param others whose names have its words too
   */
  public record Found(List<SheetFigure> figures, List<SheetFigure> others) {}

  /** Looks for a figure. Small words such as {@code of} may be left out, and of a name with points its beginning will do. */
  public Found find(String asked) {
    List<SheetFigure> alike = figures.stream().filter(f -> FigureName.has(f.name(), asked)).toList();
    List<SheetFigure> exact = figures.stream().filter(f -> FigureName.isSame(f.name(), asked)).toList();
    String first = exact.isEmpty() && !alike.isEmpty() ? alike.get(0).name() : "";
    List<SheetFigure> found = exact.isEmpty() ? alike.stream().filter(f -> f.name().equals(first)).toList() : exact;
    return new Found(unfolded(found), alike.stream().filter(f -> !found.contains(f)).toList());
  }

  /** Names like one that nothing bears, at most three. */
  public List<String> near(String asked) {
    return FigureName.near(asked, figures.stream().map(SheetFigure::name).toList());
  }

  /** The same, with those unfolded that the table leaves folded for their length. */
  private List<SheetFigure> unfolded(List<SheetFigure> found) {
    Set<String> folded = found.stream().filter(f -> f.derivation().isEmpty()).map(SheetFigure::subject).collect(Collectors.toSet());
    if (folded.isEmpty() || !ofTables) {
      return found;
    }
    List<SheetFigure> whole = SheetFigure
        .of(SheetUnits.shown(List.of(FaultSchedule.of(plan.house(), plan.library(), plan.figures().faults(), folded)), units));
    return found.stream()
        .map(f -> f.derivation().isPresent() ? f : whole.stream().filter(w -> w.name().equals(f.name())).findFirst().orElse(f))
        .toList();
  }
}
