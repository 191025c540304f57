package wattle.emit.sheet.trial;

import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.trials.Danger;
import wattle.trials.TrialResult;

/** The verdict on a trial as a heading, and what in it can hurt somebody as a table, the deadliest first. */
final class DangerSheet {
  private DangerSheet() {}

  static Sheet of(TrialResult result, String title, int most) {
    List<Danger> dangers = result.dangers();
    List<Row> rows = dangers.stream().limit(most)
        .map(d -> Row.of(Cell.of(d.kind().title()), Cell.of(d.at()), Cell.of(sentence(d.words())))).toList();
    return new Sheet(
        "dangers", title + ": " + result.verdict(),
        List.of(Column.words("danger", "danger"), Column.words("at", "at"), Column.words("what", "what")),
        rows, TrialSheets.leftOut(dangers.size(), most));
  }

  private static String sentence(String words) {
    return words + ".";
  }
}
