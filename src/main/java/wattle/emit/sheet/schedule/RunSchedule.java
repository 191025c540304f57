package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Conductors;
import wattle.conductors.RacewayFill;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Race;
import wattle.model.Raceway;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.words.SurroundingsWords;

/** Every run of the house: service, feeders, branches; between what, how long, of what, and what it may carry. */
public final class RunSchedule {
  private static final List<Column> COLUMNS = List.of(
      Column.words("row", "row"),
      Column.words("name", "name"),
      Column.words("from", "from"),
      Column.words("to", "to"),
      Column.figures("length-m", "length", "m", 1).naming("length of *"),
      Column.words("wiring", "wiring"),
      Column.figures("ampacity-a", "ampacity", "A", 1).naming("ampacity of *"),
      Column.figures("terminals-a", "between terminals", "A", 1).naming("current allowed between terminals of *"),
      Column.figures("raceway-fill-pct", "raceway fill", "%", 1).naming("raceway fill of *"),
      Column.words("laid", "laid"),
      Column.words("status", "status"),
      Column.words("conductors", "conductors"));

  private RunSchedule() {}

  public static Sheet of(House house, Conductors conductors) {
    List<Row> rows = new ArrayList<>();
    RunFigures figures = new RunFigures(house, conductors);
    for (Service service : house.services().values()) {
      service.run().ifPresent(
          run -> rows.add(
              stretch("service", service.name(), "supply", service.name(), run, figures.of(service, run), service.status().word())));
    }
    for (Panel panel : house.panels().values()) {
      panel.feeder().ifPresent(
          run -> rows.add(
              stretch("feeder", panel.name(), supply(panel), panel.name(), run, figures.of(panel, run), panel.status().word())));
    }
    for (Branch branch : house.branches().values()) {
      branch.sections().forEach(s -> rows.add(section(branch, s, figures.of(branch, s))));
    }
    for (Raceway raceway : house.raceways().values()) {
      raceway.race().ifPresent(race -> rows.add(raceway(raceway, race, conductors)));
    }
    return new Sheet("runs", "Runs", COLUMNS, rows, List.of(
        "Ampacity: of a hot conductor of the run, by the tables of the plan's code, with the factors for heat and bundling. Between "
            + "terminals: the same, limited by the terminals at its ends at the rating of its breaker.",
        "Raceway fill: the share of the inside area that the conductors take, insulation included; blank for cables, and where the "
            + "plan's code has no table for the raceway or the insulation. A named raceway contains everything that passes through it."));
  }

  private static String supply(Panel panel) {
    if (panel.supply() instanceof PanelSupply.FromService from) {
      return from.service();
    }
    return panel.supply() instanceof PanelSupply.FromBreaker from ? from.breaker().toString() : "?";
  }

  private static Row stretch(
      String row, String name, String from, String to, Stretch run, RunFigures.Carried carried, String status) {
    List<String> wires = run.wiring().wires().stream().map(w -> w.color()).toList();
    return Row.of(
        Cell.of(row), Cell.of(name), Cell.of(from), Cell.of(to), length(run.length()), Cell.of(run.wiring().text()),
        figure(carried.ampacity()), figure(carried.between()), percent(carried.fill()), Cell.of(SurroundingsWords.of(run.surroundings())),
        Cell.of(status),
        Cell.of(String.join(", ", wires)))
        .about(row.equals("service") ? "service " + name : "the feeder of " + name);
  }

  private static Row section(Branch branch, Section section, RunFigures.Carried carried) {
    List<String> roles = new ArrayList<>();
    section.conductors().forEach(c -> {
      String mark = c.reidentified() ? " (re-marked)" : "";
      String role = c.role() instanceof Role.Ground ? "" : " " + Role.text(c.role(), branch.hots());
      roles.add((role.isEmpty() ? "ground" : c.wire().color() + role) + mark);
    });
    return Row.of(
        Cell.of("branch"), Cell.of(branch.name()), Cell.of(RunFigures.pointOf(branch, section.from())),
        Cell.of(RunFigures.pointOf(branch, section.to())), length(section.length()), Cell.of(section.wiring().text()),
        figure(carried.ampacity()), figure(carried.between()), percent(carried.fill()),
        Cell.of(SurroundingsWords.of(section.surroundings())), Cell.of(section.status().word()),
        Cell.of(String.join(", ", roles)))
        .about(RunFigures.nameOf(branch, section));
  }

  private static Row raceway(Raceway raceway, Race race, Conductors conductors) {
    return Row.of(
        Cell.of("raceway"), Cell.of(raceway.name()), Cell.BLANK, Cell.BLANK, length(raceway.length()), Cell.of(race.text()), Cell.BLANK,
        Cell.BLANK, percent(conductors.raceways().of(raceway).map(RacewayFill.Fill::fill)),
        Cell.of(SurroundingsWords.of(raceway.surroundings())), Cell.of(raceway.status().word()), Cell.BLANK)
        .about("raceway " + raceway.name());
  }

  private static Cell percent(Optional<Derivation> part) {
    return part.map(p -> Cell.of(p.quantity().orElseThrow().in(Units.PERCENT), p)).orElse(Cell.BLANK);
  }

  private static Cell figure(Optional<Derivation> ampacity) {
    return ampacity.map(a -> Cell.of(a.si(), a)).orElse(Cell.BLANK);
  }

  private static Cell length(Optional<Quantity> length) {
    return length.map(l -> Cell.of(l.in(Units.METER), Derivation.stated("length", "l", l))).orElse(Cell.BLANK);
  }
}
