package wattle.emit.trial;

import java.util.ArrayList;
import java.util.List;
import wattle.emit.table.Cell;
import wattle.emit.table.Column;
import wattle.emit.table.Row;
import wattle.emit.table.Sheet;
import wattle.quantity.Units;
import wattle.trials.WorstCases;

/** What a house can come to with nothing wrong in it: voltages, shared neutrals, hottest runs. */
public final class WorstCaseSheets {
  private static final String AID = "Figures are an aid: the adopted local code and a licensed person decide.";

  private WorstCaseSheets() {}

  public static Sheet voltages(WorstCases worst) {
    List<Row> rows = new ArrayList<>();
    for (WorstCases.VoltageCase c : worst.voltages()) {
      rows.add(
          Row.of(
              Cell.of(c.outlet()), Cell.of(c.branch()), TrialSheets.figure(c.nominal()),
              TrialSheets.optional(c.atFullLoad()), c.fall().map(TrialSheets::percent).orElse(Cell.BLANK),
              TrialSheets.figure(c.stated()), TrialSheets.percent(c.statedFall())));
    }
    return new Sheet(
        "voltage", "Voltage at each outlet",
        List.of(
            Column.words("outlet", "outlet"), Column.words("branch", "branch"),
            Column.figures("nominal-v", "nominal", "V", 0), Column.figures("full-load-v", "at full load", "V", 1),
            Column.figures("full-load-fall-percent", "fall", "%", 2), Column.figures("stated-v", "at stated loads", "V", 1),
            Column.figures("stated-fall-percent", "fall", "%", 2)),
        rows,
        List.of(
            "At full load: the whole rating of the breaker drawn at that outlet, power factor 1, nothing else on; from the"
                + " beginning of the service run. At stated loads: every stated load on at once, source included.",
            "Conductors at 75 °C. " + AID));
  }

  public static Sheet neutrals(WorstCases worst) {
    List<Row> rows = new ArrayList<>();
    for (WorstCases.NeutralCase c : worst.neutrals()) {
      rows.add(
          Row.of(
              Cell.of(c.branch()), Cell.of(String.join(" + ", c.legs())), TrialSheets.figure(c.worst()),
              TrialSheets.figure(c.stated())));
    }
    return new Sheet(
        "neutral", "Shared neutrals",
        List.of(
            Column.words("branch", "branch"), Column.words("legs", "legs"),
            Column.figures("largest-a", "largest current", "A", 1), Column.figures("stated-a", "at stated loads", "A", 1)),
        rows,
        List.of(
            "Largest: loads of one power factor up to the breakers, in the worst combination. At stated loads: every stated"
                + " load on at once. Harmonics of electronic loads add on the neutral of a wye and are not counted.",
            AID));
  }

  public static Sheet heat(WorstCases worst) {
    List<Row> rows = new ArrayList<>();
    for (WorstCases.HeatCase c : worst.heat()) {
      rows.add(
          Row.of(
              Cell.of(c.branch()), Cell.of(c.run()), Cell.of(c.wiring()), TrialSheets.figure(c.current()),
              c.temperature()
                  .map(t -> Cell.of(t.quantity().orElseThrow().in(Units.CELSIUS), t))
                  .orElse(Cell.BLANK),
              Cell.of(c.ratedCelsius()), TrialSheets.optional(c.heat())));
    }
    return new Sheet(
        "heat", "Runs at the whole rating of their breaker",
        List.of(
            Column.words("branch", "branch"), Column.words("run", "run"), Column.words("wiring", "wiring"),
            Column.figures("current-a", "current", "A", 0), Column.figures("temperature-c", "temperature", "°C", 0),
            Column.figures("rated-c", "insulation", "°C", 0), Column.figures("heat-w-per-m", "heat of one hot", "W/m", 2)),
        rows,
        List.of(
            "The whole rating in every hot for hours, in the air and with the neighbours that the plan states; nearest to the"
                + " rating of its insulation first. No temperature: none would be steady, or a table lacks the conductor.",
            AID));
  }
}
