package wattle.emit.sheet.trial;

import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.trials.Danger;
import wattle.trials.TrialResult;

/** What in a trial can hurt somebody, as a table, the deadliest first. */
final class DangerSheet {
  private static final String NONE = "None of the dangers that are checked: live metal, exchanged and hidden live conductors, faults,"
      + " voltages too high or too low, conductors above their ampacity, breakers, bus bars and sources above their rating, power into a"
      + " generator, loose joints.";

  private DangerSheet() {}

  static Sheet of(TrialResult result, String title, int most) {
    List<Danger> dangers = result.dangers();
    List<Row> rows = dangers.stream().limit(most)
        .map(d -> Row.of(Cell.of(d.kind().title()), Cell.of(d.at()), Cell.of(sentence(d.words())))).toList();
    return new Sheet(
        "dangers", title + ": dangers, the deadliest first",
        List.of(Column.words("danger", "danger"), Column.words("at", "at"), Column.words("what", "what")),
        rows, dangers.isEmpty() ? List.of(NONE) : TrialSheets.leftOut(dangers.size(), most));
  }

  private static String sentence(String words) {
    return words + ".";
  }
}
