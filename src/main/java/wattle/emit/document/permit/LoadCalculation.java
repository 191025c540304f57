package wattle.emit.document.permit;

import java.util.ArrayList;
import java.util.List;
import wattle.compiler.Compilation;
import wattle.emit.media.table.Sheet;
import wattle.emit.media.table.SheetUnits;
import wattle.emit.sheet.worksheet.WorksheetSheets;
import wattle.finding.Finding;
import wattle.quantity.UnitSystem;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.ObjectionFindings;
import wattle.worksheet.Outcome;

/**
 * The load calculation of each service: all methods side by side, then the one that decides line by line.
 *
 * @param sheets in the units of the plan; none where its codes have no method
 * @param objections why one could not be calculated, in words
 */
record LoadCalculation(List<Sheet> sheets, List<String> objections) {
  LoadCalculation {
    sheets = List.copyOf(sheets);
    objections = List.copyOf(objections);
  }

  static LoadCalculation of(Compilation plan) {
    UnitSystem units = plan.house().units();
    List<Sheet> sheets = new ArrayList<>();
    List<String> objections = new ArrayList<>();
    HouseWorksheets worksheets = plan.figures().worksheets();
    // Without a method there is no comparison: an empty table would say that some code allows what stands in it.
    for (HouseInputs.Read read : worksheets.methods().isEmpty() ? List.<HouseInputs.Read>of() : worksheets.services()) {
      sheets.add(WorksheetSheets.comparison(read.inputs().name(), worksheets.compare(read)));
      worksheets.deciding(read).ifPresent(method -> {
        Outcome outcome = worksheets.calculate(method, read);
        outcome.worksheet().ifPresent(w -> sheets.addAll(WorksheetSheets.of(w, WorksheetSheets.beside(w, plan.figures(), read), true)));
        new ObjectionFindings(plan.house()).of(outcome.objections()).stream().map(Finding::headline).forEach(objections::add);
      });
    }
    return new LoadCalculation(SheetUnits.shown(sheets, units), objections);
  }
}
