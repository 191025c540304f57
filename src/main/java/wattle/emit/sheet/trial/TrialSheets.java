package wattle.emit.sheet.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.faults.ClearingTime;
import wattle.quantity.Units;
import wattle.trials.TrialResult;

/** The figures of a trial as tables, worst first: what is wrong first, then outlets, then conductors. */
public final class TrialSheets {
  private static final double MILLIAMPERES = 1000;

  /** Amperes that the column would show as nothing. */
  private static final double DEAD = 0.005;

  private TrialSheets() {}

  /**
   * @param title of the trial
   * @param most rows of outlets and of conductors; what is left out is said
   */
  public static List<Sheet> of(TrialResult result, String title, int most) {
    List<Sheet> sheets = new ArrayList<>(List.of(DangerSheet.of(result, title, most)));
    if (!result.faults().isEmpty()) {
      sheets.add(faults(result, title));
    }
    if (!result.overcurrents().isEmpty()) {
      sheets.add(overcurrents(result, title));
    }
    if (!result.neutrals().isEmpty()) {
      sheets.add(NeutralSheet.of(result.neutrals(), title));
    }
    if (!result.sources().isEmpty()) {
      sheets.addAll(SourceSheets.of(result, title));
    }
    if (!result.protections().isEmpty()) {
      sheets.add(ProtectionSheets.of(result.protections(), title));
    }
    if (!result.joints().isEmpty()) {
      sheets.add(joints(result, title));
    }
    List<TrialResult.MetalReading> live = result.metals().stream().filter(m -> m.lifted() || m.volts().si() > 1).toList();
    if (!live.isEmpty()) {
      sheets.add(metals(live, title, most));
    }
    if (!result.reversed().isEmpty()) {
      sheets.add(reversed(result, title));
    }
    List<TrialResult.FeederReading> feeders = result.feeders().stream().filter(f -> f.amps().si() >= DEAD).toList();
    if (!feeders.isEmpty()) {
      sheets.add(FeederSheet.of(feeders, title + ": feeders", List.of()));
    }
    sheets.add(outlets(result, title, most));
    sheets.add(conductors(result, title, most));
    return sheets;
  }

  private static Sheet faults(TrialResult result, String title) {
    List<Row> rows = result.faults().stream()
        .map(f -> Row.of(Cell.of(f.at()), Cell.of(f.between()), figure(f.amps())).about(f.at() + " " + f.between())).toList();
    return new Sheet(
        "faults", title + ": faults",
        List.of(Column.words("at", "at"), Column.words("between", "between"),
            Column.figures("current-a", "current", "A", 1).naming("fault current of *")),
        rows, List.of());
  }

  private static Sheet overcurrents(TrialResult result, String title) {
    List<Row> rows = new ArrayList<>();
    for (TrialResult.OvercurrentReading o : result.overcurrents()) {
      rows.add(
          Row.of(
              Cell.of(o.name()), Cell.of(o.feeds()), figure(o.rating()), figure(o.amps()), percent(o.share()),
              Cell.of(o.opens().map(ClearingTime::text).orElse("by its maker's curve")),
              Cell.of(o.opens().map(ClearingTime::mostBound).orElse("")))
              .about(o.name()));
    }
    return new Sheet(
        "breakers", title + ": breakers that carry more than their rating",
        List.of(
            Column.words("breaker", "breaker"), Column.words("feeds", "feeds"),
            Column.figures("rating-a", "rating", "A", 0).naming("rating of *"),
            Column.figures("current-a", "current", "A", 1).naming("current of *"),
            Column.figures("share-percent", "of its rating", "%", 0).naming("share of *"),
            Column.words("opens-in", "opens in"), Column.words("bound", "by")),
        rows,
        List.of(
            "All figures of this trial are before anything opens; once a breaker opens, what it feeds is dead. A time up to never: "
                + "the standard allows it not to trip. Ground-fault protection is listed separately; arc-fault protection may open "
                + "sooner."));
  }

  private static Sheet joints(TrialResult result, String title) {
    List<Row> rows = new ArrayList<>();
    for (TrialResult.JointReading j : result.joints()) {
      rows.add(
          Row.of(
              Cell.of(j.at()), Cell.of(j.branch()), Cell.of(j.conductor()), figure(j.amps()), figure(j.watts()),
              j.wattsAtFullLoad().map(TrialSheets::figure).orElse(Cell.BLANK))
              .about(j.at() + " " + j.conductor()));
    }
    return new Sheet(
        "joints", title + ": joints",
        List.of(
            Column.words("at", "at"), Column.words("branch", "branch"), Column.words("conductor", "conductor"),
            Column.figures("current-a", "current", "A", 2).naming("current of the joint at *"),
            Column.figures("heat-w", "heat", "W", 1).naming("heat of the joint at *"),
            Column.figures("heat-at-full-load-w", "heat at full load", "W", 1).naming("heat of the joint at * at full load")),
        rows, List.of("Full load: the full rating of the branch's breaker through the joint."));
  }

  private static Sheet metals(List<TrialResult.MetalReading> metals, String title, int most) {
    List<Row> rows = new ArrayList<>();
    for (TrialResult.MetalReading m : metals.subList(0, Math.min(most, metals.size()))) {
      rows.add(
          Row.of(
              Cell.of(m.name()), Cell.of(m.lifted() ? m.grounded() ? "lifted" : "none" : "in place"), figure(m.volts()),
              m.bodyAmps().map(a -> Cell.of(a.si() * MILLIAMPERES, a)).orElse(Cell.BLANK))
              .about(m.name()));
    }
    return new Sheet(
        "metal", title + ": exposed metal parts",
        List.of(
            Column.words("at", "at"), Column.words("ground", "ground"),
            Column.figures("touch-voltage-v", "to remote earth", "V", 1).naming("touch voltage of *"),
            Column.figures("touch-current-ma", "through a person", "mA", 1).naming("touch current of *")),
        rows, leftOut(metals.size(), most));
  }

  private static Sheet reversed(TrialResult result, String title) {
    List<Row> rows = result.reversed().stream().map(r -> Row.of(Cell.of(r.device()), figure(r.volts())).about(r.device())).toList();
    return new Sheet(
        "reversed", title + ": hot and neutral exchanged",
        List.of(Column.words("at", "at"),
            Column.figures("neutral-contact-v", "neutral contact to remote earth", "V", 1).naming("neutral contact of *")),
        rows, List.of("A device works either way; the part that its maker keeps near ground voltage is live."));
  }

  private static Sheet outlets(TrialResult result, String title, int most) {
    List<TrialResult.OutletReading> outlets = result.outlets();
    List<Row> rows = new ArrayList<>();
    for (TrialResult.OutletReading o : outlets.subList(0, Math.min(most, outlets.size()))) {
      rows.add(
          Row.of(
              Cell.of(o.name()), Cell.of(o.branch()), figure(o.nominal()), o.floating() ? Cell.BLANK : figure(o.volts()),
              isAbove(o) || o.floating() ? Cell.BLANK : percent(o.fall()),
              isAbove(o) && !o.floating() ? risen(o) : Cell.BLANK, Cell.of(OutletStates.of(o, result.dangers())),
              o.current().map(TrialSheets::figure).orElse(Cell.BLANK))
              .about(o.name()));
    }
    return new Sheet(
        "outlets", title + ": outlets",
        List.of(
            Column.words("outlet", "outlet"), Column.words("branch", "branch"),
            Column.figures("nominal-v", "nominal", "V", 0).naming("nominal voltage of *"),
            Column.figures("voltage-v", "voltage", "V", 1).naming("voltage of *"),
            Column.figures("fall-percent", "low by", "%", 2).naming("voltage fall of *"),
            Column.figures("rise-percent", "high by", "%", 2).naming("voltage rise of *"), Column.words("state", "state"),
            Column.figures("current-a", "draws", "A", 2).naming("current of *")),
        rows, leftOut(outlets.size(), most));
  }

  private static boolean isAbove(TrialResult.OutletReading o) {
    return o.fall().si() < 0;
  }

  private static Cell risen(TrialResult.OutletReading o) {
    return Cell.of(-o.fall().quantity().orElseThrow().in(Units.PERCENT), o.rise());
  }

  private static Sheet conductors(TrialResult result, String title, int most) {
    boolean all = most == Integer.MAX_VALUE;
    List<TrialResult.ConductorReading> conductors = result.conductors().stream().filter(c -> all || c.open() || c.amps().si() >= DEAD)
        .toList();
    List<Row> rows = new ArrayList<>();
    for (TrialResult.ConductorReading c : conductors.subList(0, Math.min(most, conductors.size()))) {
      rows.add(
          Row.of(
              Cell.of(c.run()), Cell.of(c.branch()), Cell.of(c.color()), Cell.of(c.conductor()),
              Cell.of(c.open() ? "open" : ConductorStates.of(c, result.dangers())),
              figure(c.amps()), figure(c.watts()))
              .about((c.branch().isEmpty() ? "" : c.branch() + " ") + (isAlone(c, conductors) ? "" : c.color() + " ") + c.conductor()
                  + " from "
                  + c.run()));
    }
    List<String> notes = new ArrayList<>(leftOut(conductors.size(), most));
    if (conductors.size() < result.conductors().size()) {
      notes.add("Conductors without current are left out; wattle trial --all shows them.");
    }
    notes.addAll(result.notes());
    return new Sheet(
        "conductors", title + ": conductors",
        List.of(
            Column.words("run", "run"), Column.words("branch", "branch"), Column.words("color", "color"),
            Column.words("conductor", "conductor"), Column.words("state", "state"),
            Column.figures("current-a", "current", "A", 2).naming("current of *"),
            Column.figures("heat-w", "heat", "W", 2).naming("heat of *")),
        rows, notes);
  }

  /** Whether no other conductor of the run has its name, as two hots of one leg have. */
  private static boolean isAlone(TrialResult.ConductorReading c, List<TrialResult.ConductorReading> all) {
    return all.stream().filter(o -> o.run().equals(c.run()) && o.branch().equals(c.branch()) && o.conductor().equals(c.conductor()))
        .count() == 1;
  }

  static List<String> leftOut(int all, int most) {
    return all > most ? List.of("The worst " + most + " of " + all + "; wattle trial --all shows all of them.") : List.of();
  }

  static Cell figure(Derivation figure) {
    return Cell.of(figure.si(), figure);
  }

  static Cell percent(Derivation share) {
    return Cell.of(share.quantity().orElseThrow().in(Units.PERCENT), share);
  }

  static Cell optional(Optional<Derivation> figure) {
    return figure.map(TrialSheets::figure).orElse(Cell.BLANK);
  }
}
