package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.trials.SolvedTrials;
import wattle.trials.TrialResult;

/** What feeders carry, and what is left of the voltage at the panels that they end in. */
public final class FeederSheet {
  private FeederSheet() {}

  /** Of the house with every stated load on. */
  public static List<Sheet> ofStated(SolvedTrials trials) {
    List<TrialResult.FeederReading> feeders = trials.stated().feeders();
    return feeders.isEmpty()
        ? List.of()
        : List.of(of(feeders, "Voltage at each panel, with every stated load on",
            List.of(
                "Low by: percentage of the nominal voltage, from the start of the service run. On the feeder: the part lost along its "
                    + "own length.")));
  }

  static Sheet of(List<TrialResult.FeederReading> feeders, String title, List<String> notes) {
    List<Row> rows = new ArrayList<>();
    for (TrialResult.FeederReading f : feeders) {
      rows.add(
          Row.of(Cell.of(f.panel()), Cell.of(f.from()), TrialSheets.figure(f.amps()), TrialSheets.optional(f.neutral()),
              TrialSheets.figure(f.volts()), TrialSheets.percent(f.fall()), TrialSheets.percent(f.lost()))
              .about("feeder of " + f.panel()));
    }
    return new Sheet(
        "feeders", title,
        List.of(
            Column.words("panel", "panel"), Column.words("from", "from"),
            Column.figures("current-a", "current", "A", 2).naming("current of *"),
            Column.figures("neutral-a", "neutral", "A", 2).naming("neutral of *"),
            Column.figures("voltage-v", "voltage at the panel", "V", 1).naming("voltage of *"),
            Column.figures("fall-percent", "low by", "%", 2).naming("voltage fall of *"),
            Column.figures("lost-percent", "on the feeder", "%", 2).naming("voltage lost on *")),
        rows, notes);
  }
}
