package wattle.compare;

import java.util.Locale;
import java.util.Optional;
import wattle.finding.Severity;
import wattle.quantity.Units;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Method;
import wattle.worksheet.Outcome;
import wattle.worksheet.Worksheet;

/** The calculated load of every service and feeder, by the usual method of the plan's code. */
final class WorksheetMeasures {
  private WorksheetMeasures() {}

  static void add(Plan plan, Measured to) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    worksheets.services().forEach(read -> add(worksheets, read, new Thing(Thing.Kind.SERVICE, read.inputs().name()), to));
    worksheets.feeders().forEach(read -> add(worksheets, read, new Thing(Thing.Kind.PANEL, read.inputs().name()), to));
  }

  private static void add(HouseWorksheets worksheets, HouseInputs.Read read, Thing of, Measured to) {
    Measure load = new Measure(Measure.Topic.LOAD, of, 0, "calculated load", Units.AMPERE, 1);
    Optional<Method> method = worksheets.usual(read.inputs());
    if (worksheets.methods().isEmpty()) {
      to.unknown(load, "the plan names no code that has methods of load calculation");
    } else if (method.isEmpty()) {
      to.unknown(load, "its code has no method for " + read.inputs().dwellingCount() + " dwellings");
    } else {
      Outcome outcome = worksheets.calculate(method.get(), read);
      outcome.worksheet().ifPresentOrElse(w -> to.known(load, w.current(), note(w)), () -> to.unknown(load, why(outcome)));
    }
  }

  private static String note(Worksheet sheet) {
    String title = sheet.method().title();
    String by = title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
    return sheet.rating().map(r -> "of " + r.value().text() + ", ").orElse("") + by;
  }

  private static String why(Outcome outcome) {
    return outcome.objections().stream()
        .filter(o -> o.severity() == Severity.ERROR)
        .findFirst()
        .or(() -> outcome.objections().stream().findFirst())
        .map(o -> o.headline())
        .orElse("the " + outcome.method().title() + " does not apply");
  }
}
