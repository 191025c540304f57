package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import wattle.conductors.Insulation;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.trials.WorstCases;
import wattle.words.Caution;

/** What a house can come to with nothing wrong in it: voltages, shared neutrals, hottest runs. */
public final class WorstCaseSheets {
  private static final String AID = Caution.SHORT;

  private WorstCaseSheets() {}

  public static Sheet voltages(WorstCases worst) {
    List<Row> rows = new ArrayList<>();
    for (WorstCases.VoltageCase c : worst.voltages()) {
      rows.add(
          Row.of(
              Cell.of(c.outlet()), Cell.of(c.branch()), TrialSheets.figure(c.nominal()),
              TrialSheets.optional(c.atFullLoad()), c.fall().map(TrialSheets::percent).orElse(Cell.BLANK),
              TrialSheets.figure(c.stated()), TrialSheets.percent(c.statedFall()))
              .about(c.outlet()));
    }
    return new Sheet(
        "voltage", "Voltage at each outlet",
        List.of(
            Column.words("outlet", "outlet"), Column.words("branch", "branch"),
            Column.figures("nominal-v", "nominal", "V", 0).naming("nominal voltage of *"),
            Column.figures("full-load-v", "at full load", "V", 1).naming("voltage of * at full load"),
            Column.figures("full-load-fall-percent", "fall", "%", 2).naming("voltage fall of * at full load"),
            Column.figures("stated-v", "at stated loads", "V", 1).naming("voltage of * at stated loads"),
            Column.figures("stated-fall-percent", "fall", "%", 2).naming("voltage fall of * at stated loads")),
        rows,
        List.of(
            "At full load: the full rating of the breaker drawn at that outlet, power factor 1, nothing else on; from the start of "
                + "the service run. At stated loads: every stated load on at once, source included.",
            "Conductors at " + worst.temperature() + ". " + AID));
  }

  public static Sheet neutrals(WorstCases worst) {
    List<Row> rows = new ArrayList<>();
    for (WorstCases.NeutralCase c : worst.neutrals()) {
      rows.add(
          Row.of(
              Cell.of(c.branch()), Cell.of(String.join(" + ", c.legs())), TrialSheets.figure(c.worst()),
              TrialSheets.figure(c.stated()))
              .about(c.branch()));
    }
    return new Sheet(
        "neutral", "Shared neutrals",
        List.of(
            Column.words("branch", "branch"), Column.words("legs", "legs"),
            Column.figures("largest-a", "largest current", "A", 1).naming("neutral of * at most"),
            Column.figures("stated-a", "at stated loads", "A", 1).naming("neutral of * at stated loads")),
        rows,
        List.of(
            "Largest: loads of one power factor up to the breakers, in the worst combination. At stated loads: every stated"
                + " load on at once. Harmonics of electronic loads, which add on the neutral of a wye, are not counted.",
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
              Cell.of(c.ratedCelsius(), Insulation.rating("T_r", c.ratedCelsius())),
              TrialSheets.optional(c.heat()))
              .about(c.branch().isEmpty() ? c.run() : c.branch() + " from " + c.run()));
    }
    return new Sheet(
        "heat", "Runs at the full rating of their breaker",
        List.of(
            Column.words("branch", "branch"), Column.words("run", "run"), Column.words("wiring", "wiring"),
            Column.figures("current-a", "current", "A", 0).naming("full load of *"),
            Column.figures("temperature-c", "temperature", "°C", 0).naming("temperature of * at full load"),
            Column.figures("rated-c", "insulation", "°C", 0).naming("insulation of *"),
            Column.figures("heat-w-per-m", "heat of one", "W/m", 2).naming("heat of * at full load")),
        rows,
        List.of(
            "The full rating in every hot for hours, at the ambient temperature and bundling that the plan states; nearest to the "
                + "rating of its insulation first. A blank temperature would never be steady, or a table lacks the conductor. A "
                + "shared neutral has its own line where its hots can load it beyond a breaker's rating.",
            "A dwelling seldom draws the full rating of its mains for long, so a code may allow smaller conductors for its service.",
            AID));
  }
}
