package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.quantity.Units;
import wattle.trials.NeutralReading;

/** Shared neutrals that the loads of a trial, or more of them up to the breakers, can overheat with nothing to open. */
final class NeutralSheet {
  private NeutralSheet() {}

  static Sheet of(List<NeutralReading> neutrals, String title) {
    List<Row> rows = new ArrayList<>();
    for (NeutralReading n : neutrals) {
      rows.add(
          Row.of(
              Cell.of(n.branch()), Cell.of(String.join(" + ", n.legs())), TrialSheets.figure(n.most()), TrialSheets.figure(n.rating()),
              celsius(n.temperature()), celsius(n.insulation()))
              .about(n.branch()));
    }
    return new Sheet(
        "neutrals", title + ": shared neutrals with hots on one leg",
        List.of(
            Column.words("branch", "branch"), Column.words("legs", "legs"),
            Column.figures("largest-a", "neutral at most", "A", 1).naming("neutral of * at most"),
            Column.figures("rating-a", "breaker", "A", 0).naming("breaker of *"),
            Column.figures("temperature-c", "temperature", "°C", 0).naming("temperature of the neutral of * at most"),
            Column.figures("rated-c", "insulation", "°C", 0).naming("insulation of the neutral of *")),
        rows,
        List.of(
            "With loads up to the breakers, whatever draws in this trial; no breaker protects a neutral. A blank temperature would "
                + "never be steady, or a table lacks the conductor."));
  }

  private static Cell celsius(Optional<Derivation> temperature) {
    return temperature.map(t -> Cell.of(t.quantity().orElseThrow().in(Units.CELSIUS), t)).orElse(Cell.BLANK);
  }
}
