package wattle.emit.sheet.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.quantity.Quantity;
import wattle.worksheet.Addition;
import wattle.worksheet.Method;
import wattle.worksheet.Worksheet;

/** What becomes of services and feeders when loads are added to them. */
public final class AdditionSheets {
  private AdditionSheets() {}

  /**
   * The answer by every method, then the most favorable worksheet of each service and feeder before and after.
   *
   * @param added what is added, in words
   * @param methods those that the plan's codes have
   * @param brief whether long lists of devices are cut
   */
  public static List<Sheet> of(String added, Map<String, List<Addition>> answers, List<Method> methods, boolean brief) {
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(answer(added, answers, methods));
    for (List<Addition> additions : answers.values()) {
      additions.stream().findFirst().ifPresent(a -> {
        append(sheets, "before", a.before(), brief);
        append(sheets, "after", a.after(), brief);
      });
    }
    return sheets;
  }

  private static void append(List<Sheet> sheets, String when, Worksheet worksheet, boolean brief) {
    for (Sheet sheet : WorksheetSheets.of(worksheet, brief)) {
      boolean first = sheet.name().equals("worksheet");
      String title = first
          ? when.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + when.substring(1) + ". " + sheet.title()
          : sheet.title() + ", " + when;
      sheets.add(new Sheet(sheet.name() + "-" + when, title, sheet.columns(), sheet.rows(), sheet.notes()));
    }
  }

  private static Sheet answer(String added, Map<String, List<Addition>> answers, List<Method> methods) {
    List<Row> rows = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    answers.forEach(
        (name, additions) -> {
          additions.forEach(a -> rows.add(row(name, a)));
          notes.add(verdict(name, additions));
        });
    boolean existing = answers.values().stream().flatMap(List::stream).anyMatch(a -> a.after().method().mechanism().isForExisting());
    if (!existing && methods.stream().anyMatch(m -> m.mechanism().isForExisting())) {
      notes.add(
          "Not used: "
              + String.join(" and ", methods.stream().filter(m -> m.mechanism().isForExisting()).map(m -> m.source().place()).toList())
              + ", for load added to an existing service or feeder; the plan does not mark this one existing, or lacks what they need.");
    }
    notes.add("Checked here: the calculated load. Not checked: free slots, conductors, the utility's own limits.");
    notes.add(WorksheetSheets.CAUTION);
    return new Sheet(
        "addition", "Adding " + added,
        List.of(
            Column.words("of", "of"), Column.words("method", "method"),
            Column.figures("before-va", "before", "VA", 0), Column.figures("before-a", "before", "A", 1),
            Column.figures("after-va", "after", "VA", 0), Column.figures("after-a", "after", "A", 1),
            Column.figures("rating-a", "rating", "A", 0), Column.figures("headroom-a", "headroom after", "A", 1),
            Column.words("answer", "answer")),
        rows, notes);
  }

  private static Row row(String name, Addition addition) {
    Worksheet before = addition.before();
    Worksheet after = addition.after();
    return Row.of(
        Cell.of(name), Cell.of(after.method().name()), figure(before.total()), figure(before.current()), figure(after.total()),
        figure(after.current()), WorksheetSheets.cell(after.rating()), WorksheetSheets.cell(after.spare()),
        Cell.of(after.rating().isEmpty() ? "no rating in the plan" : addition.fits() ? "fits" : "too much"));
  }

  private static Cell figure(Derivation derivation) {
    return Cell.of(derivation.si(), derivation);
  }

  private static String verdict(String name, List<Addition> additions) {
    if (additions.isEmpty()) {
      return name + ": no method could be calculated; what is missing is reported beside this.";
    }
    Addition best = additions.get(0);
    if (best.after().rating().isEmpty()) {
      return name + ": the plan states no rating to compare with.";
    }
    double spare = best.after().spare().orElseThrow().si();
    String by = " by " + best.after().method().source() + " (" + best.after().method().name() + ")";
    String next = best.after().nextRating().map(n -> "; the next standard rating that is large enough is " + n.value().text()).orElse("");
    return best.fits()
        ? name + ": is large enough" + by + ", with " + amperes(spare) + " to spare."
        : name + ": is too small; " + amperes(-spare) + " short" + by + ", the most favorable method" + next + ".";
  }

  private static String amperes(double value) {
    return Quantity.plain(Math.round(value * 10) / 10.0, 4) + " A";
  }
}
