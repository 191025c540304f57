package wattle.compare;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wattle.finding.Severity;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Method;
import wattle.worksheet.Outcome;
import wattle.worksheet.Worksheet;

/**
 * The calculated load of every service and feeder, by the method that decides, as in check and the permit documents; the others
 * are named beside it.
 */
final class WorksheetMeasures {
  private WorksheetMeasures() {}

  static void add(Plan plan, Measured to) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    worksheets.services().forEach(read -> add(worksheets, read, new Thing(Thing.Kind.SERVICE, read.inputs().name()), to));
    worksheets.feeders().forEach(read -> add(worksheets, read, new Thing(Thing.Kind.PANEL, read.inputs().name()), to));
  }

  private static void add(HouseWorksheets worksheets, HouseInputs.Read read, Thing of, Measured to) {
    Measure load = new Measure(Measure.Topic.LOAD, of, 0, "calculated load", Units.AMPERE, 1);
    Optional<Method> method = worksheets.deciding(read);
    if (worksheets.methods().isEmpty()) {
      to.unknown(load, "the plan names no code that has methods of load calculation");
    } else if (method.isEmpty()) {
      to.unknown(load, "its code has no method for " + read.inputs().dwellingCount() + " dwellings");
    } else {
      Outcome outcome = worksheets.calculate(method.get(), read);
      outcome.worksheet().ifPresentOrElse(w -> to.known(load, w.current(), note(w, worksheets.applicable(read))),
          () -> to.unknown(load, why(outcome)));
    }
  }

  private static String note(Worksheet sheet, List<Worksheet> applicable) {
    String title = sheet.method().title();
    String by = title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
    String others = String.join(
        ", ", applicable.stream().skip(1)
            .map(w -> w.method().name() + " " + Quantity.plain(Math.round(w.current().si() * 10) / 10.0, 4) + " A").toList());
    return sheet.rating().map(r -> "of " + r.value().text() + ", ").orElse("") + by + (others.isEmpty() ? "" : " (" + others + ")");
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
