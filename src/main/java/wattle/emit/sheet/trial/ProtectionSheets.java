package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.trials.ProtectionReading;

/** What ground-fault and arc-fault protection makes of a trial, as a table. */
final class ProtectionSheets {
  private static final double MILLIAMPERES = 1000;

  private ProtectionSheets() {}

  static Sheet of(List<ProtectionReading> readings, String title) {
    List<Row> rows = new ArrayList<>();
    for (ProtectionReading p : readings) {
      rows.add(
          Row.of(
              Cell.of(p.name()), Cell.of(p.kind()), Cell.of(p.guards()),
              p.residual().map(ProtectionSheets::milliamperes).orElse(Cell.BLANK),
              p.touched().map(ProtectionSheets::milliamperes).orElse(Cell.BLANK), Cell.of(p.verdict().words()),
              TrialSheets.optional(p.within()), Cell.of(p.because()))
              .about(p.name()));
    }
    boolean touched = readings.stream().anyMatch(p -> p.touched().isPresent());
    List<String> notes = new ArrayList<>();
    notes.add(
        "Residual: the current that leaves on the hots and does not return on the neutral. Within: at most; it may be sooner, and a test "
            + "button proves it, not a calculation.");
    if (touched) {
      notes.add("When touched: with a person's hand on metal that has lost its ground. Until it trips, that current flows through the "
          + "person.");
    }
    if (readings.stream().anyMatch(p -> p.verdict() == ProtectionReading.Verdict.UNKNOWN)) {
      notes.add("Whether an arc burns, and whether arc-fault protection detects it, does not follow from volts and amperes, so it is "
          + "not calculated.");
    }
    return new Sheet(
        "protection", title + ": ground-fault and arc-fault protection",
        List.of(
            Column.words("protection", "protection"), Column.words("kind", "kind"), Column.words("guards", "guards"),
            Column.figures("residual-ma", "residual", "mA", 1).naming("residual current of *"),
            Column.figures("touched-ma", "when touched", "mA", 1).naming("residual current of * when touched"),
            Column.words("verdict", "verdict"),
            Column.figures("within-s", "within", "s", 3).naming("trip time of *"), Column.words("by", "by")),
        rows, notes);
  }

  private static Cell milliamperes(Derivation figure) {
    return Cell.of(figure.si() * MILLIAMPERES, figure);
  }
}
