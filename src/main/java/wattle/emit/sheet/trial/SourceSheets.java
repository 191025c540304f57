package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.trials.BusReading;
import wattle.trials.SourceReading;
import wattle.trials.TrialResult;

/** What feeds a house in a trial, and what its bus bars carry, as tables. */
final class SourceSheets {
  private SourceSheets() {}

  static List<Sheet> of(TrialResult result, String title) {
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(sources(result.sources(), title));
    if (!result.buses().isEmpty()) {
      sheets.add(buses(result.buses(), title));
    }
    return sheets;
  }

  private static Sheet sources(List<SourceReading> sources, String title) {
    List<Row> rows = new ArrayList<>();
    for (SourceReading s : sources) {
      rows.add(
          Row.of(
              Cell.of(s.name()), Cell.of(s.kind()), Cell.of(s.state().words()), TrialSheets.figure(s.watts()),
              TrialSheets.figure(s.volts()),
              s.rise().map(TrialSheets::percent).orElse(Cell.BLANK), TrialSheets.figure(s.amps()), TrialSheets.optional(s.rating()),
              s.share().map(TrialSheets::percent).orElse(Cell.BLANK))
              .about(s.name()));
    }
    Optional<SourceReading> exporting = sources.stream().filter(s -> s.state() == SourceReading.State.TAKES).findFirst();
    List<String> notes = new ArrayList<>();
    exporting.ifPresent(s -> notes.add("Below zero, power flows out of the house, into " + s.name() + " here."));
    notes.add(
        "Rise: above the voltage at the breaker of the source, as a percentage of nominal. A source delivers what the plan states; a "
            + "lockout sheet treats every source as live.");
    return new Sheet(
        "sources", title + ": what feeds the house",
        List.of(
            Column.words("source", "source"), Column.words("kind", "kind"), Column.words("state", "state"),
            Column.figures("power-w", "gives", "W", 0).naming("power given of *"),
            Column.figures("voltage-v", "voltage", "V", 1).naming("source voltage of *"),
            Column.figures("rise-percent", "rise", "%", 2).naming("voltage rise of *"),
            Column.figures("current-a", "current", "A", 1).naming("source current of *"),
            Column.figures("rating-a", "rating", "A", 1).naming("source rating of *"),
            Column.figures("share-percent", "of its rating", "%", 0).naming("source share of *")),
        rows, notes);
  }

  private static Sheet buses(List<BusReading> buses, String title) {
    List<Row> rows = new ArrayList<>();
    for (BusReading b : buses) {
      rows.add(
          Row.of(
              Cell.of(b.panel()), Cell.of(b.leg()), TrialSheets.figure(b.sum()), TrialSheets.figure(b.most()), Cell.of(b.at()),
              TrialSheets.optional(b.rating()),
              b.share().map(TrialSheets::percent).orElse(Cell.BLANK))
              .about(b.panel()));
    }
    return new Sheet(
        "bus-bars", title + ": bus bars that a source feeds",
        List.of(
            Column.words("panel", "panel"), Column.words("leg", "leg"),
            Column.figures("into-a", "flows in", "A", 1).naming("currents into the bus of *"),
            Column.figures("most-a", "carries", "A", 1).naming("current of the bus of *"), Column.words("at", "at"),
            Column.figures("rating-a", "rating", "A", 0).naming("rating of the bus of *"),
            Column.figures("share-percent", "of its rating", "%", 0).naming("share of the bus of *")),
        rows, List.of(
            "Row by row, with the main ahead of the first row. The busbar rule of a code covers any loads; this table covers those of "
                + "the trial."));
  }
}
