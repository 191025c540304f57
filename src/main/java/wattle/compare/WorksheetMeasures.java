package wattle.compare;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import wattle.finding.Severity;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Inputs;
import wattle.worksheet.Method;
import wattle.worksheet.Outcome;
import wattle.worksheet.Worksheet;

/**
 * The calculated load of every service and feeder, by the method that decides, as in check and the permit documents; the others
 * are named beside it.
 */
final class WorksheetMeasures {
  private WorksheetMeasures() {}

  /**
   * Of one of two revisions, by a method that decides for one and that both can be worked out by, so that two figures are not of two
   * methods without need.
   */
  static void add(Plan plan, Plan before, Plan after, Measured to) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    worksheets.services().forEach(
        read -> add(worksheets, read, method(read, before, after), new Thing(Thing.Kind.SERVICE, read.inputs().name()), to));
    worksheets.feeders().forEach(
        read -> add(worksheets, read, method(read, before, after), new Thing(Thing.Kind.PANEL, read.inputs().name()), to));
  }

  /** Of the two that decide, one that both revisions can be worked out by; the method for existing work before others. */
  private static Optional<Method> method(HouseInputs.Read read, Plan before, Plan after) {
    List<Method> all = after.figures().worksheets().methods();
    return Stream.of(before, after)
        .flatMap(p -> read(p, read).flatMap(r -> p.figures().worksheets().least(r)).map(Worksheet::method).stream())
        .filter(m -> gives(m, before, read) && gives(m, after, read))
        .min(Comparator.comparing((Method m) -> !m.mechanism().isForExisting()).thenComparing(all::indexOf));
  }

  private static Optional<HouseInputs.Read> read(Plan plan, HouseInputs.Read like) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    return like.inputs().scope() == Inputs.Scope.SERVICE
        ? worksheets.services().stream().filter(r -> r.inputs().name().equals(like.inputs().name())).findFirst()
        : worksheets.feeder(like.inputs().name());
  }

  private static boolean gives(Method method, Plan plan, HouseInputs.Read like) {
    HouseWorksheets worksheets = plan.figures().worksheets();
    Optional<HouseInputs.Read> read = read(plan, like);
    return read.isPresent() && worksheets.methods().contains(method) && worksheets.calculate(method, read.get()).worksheet().isPresent();
  }

  private static void add(HouseWorksheets worksheets, HouseInputs.Read read, Optional<Method> common, Thing of, Measured to) {
    Measure load = new Measure(Measure.Topic.LOAD, of, 0, "calculated load", Units.AMPERE, 1);
    Optional<Method> method = common.or(() -> worksheets.deciding(read));
    if (worksheets.methods().isEmpty()) {
      to.unknown(load, "the plan names no code that has methods of load calculation");
    } else if (method.isEmpty()) {
      to.unknown(load, "its code has no method for " + read.inputs().dwellingCount() + " dwellings");
    } else {
      Outcome outcome = worksheets.calculate(method.get(), read);
      outcome.worksheet()
          .ifPresentOrElse(w -> to.known(load, w.current(), note(w, worksheets.applicable(read))), () -> to.unknown(load, why(outcome)));
    }
  }

  private static String note(Worksheet sheet, List<Worksheet> applicable) {
    String title = sheet.method().title();
    String by = title.substring(0, 1).toLowerCase(Locale.ROOT) + title.substring(1);
    String others = String.join(
        ", ", applicable.stream().filter(w -> !w.method().equals(sheet.method()))
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
