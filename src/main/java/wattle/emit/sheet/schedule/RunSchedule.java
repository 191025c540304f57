package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.conductors.RacewayFill;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
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
    for (Service service : house.services().values()) {
      service.run().ifPresent(run -> {
        Optional<Derivation> ampacity = ampacity(conductors, conductors.runs().of(run, service.system(), run.wiring().hot()));
        Carried carried = new Carried(ampacity, Optional.empty(), fill(conductors, run));
        rows.add(stretch("service", service.name(), "supply", service.name(), run, carried, service.status().word()));
      });
    }
    for (Panel panel : house.panels().values()) {
      panel.feeder().ifPresent(run -> {
        Conditions conditions = conductors.runs().of(run, panel.system(), run.wiring().hot());
        Optional<Derivation> between = supplyRating(house, panel)
            .flatMap(r -> conductors.ampacities().between(conditions, r, conductors.terminations().of(panel, run, r)));
        Carried carried = new Carried(ampacity(conductors, conditions), between, fill(conductors, run));
        rows.add(stretch("feeder", panel.name(), supply(panel), panel.name(), run, carried, panel.status().word()));
      });
    }
    for (Branch branch : house.branches().values()) {
      branch.sections().forEach(s -> rows.add(section(house, branch, s, conductors)));
    }
    for (Raceway raceway : house.raceways().values()) {
      raceway.race().ifPresent(race -> rows.add(raceway(raceway, race, conductors)));
    }
    return new Sheet("runs", "Runs", COLUMNS, rows, List.of(
        "Ampacity: of a hot conductor of the run, by the tables of the plan's code, with the factors for heat and bundling;"
            + " between terminals: the same, and not more than the terminals at its ends let it carry at the rating of its"
            + " breaker.",
        "Raceway fill: part of the area inside that the conductors take, over their insulation; blank for cables, and where the"
            + " plan's code has no table of the raceway or the insulation. A raceway with a name holds all that passes through it."));
  }

  /** What a run may carry by itself, and between its terminals. */
  private record Carried(Optional<Derivation> ampacity, Optional<Derivation> between, Optional<Derivation> fill) {}

  private static Optional<Derivation> fill(Conductors conductors, Stretch run) {
    return conductors.raceways().of(run.wiring(), run.length()).map(RacewayFill.Fill::fill);
  }

  private static Optional<Derivation> rating(House house, BreakerId breaker) {
    return house.breaker(breaker).flatMap(Breaker::rating).map(r -> Derivation.stated("rating of the breaker", "I_n", r));
  }

  private static Optional<Derivation> supplyRating(House house, Panel panel) {
    return panel.supply() instanceof PanelSupply.FromBreaker from ? rating(house, from.breaker()) : Optional.empty();
  }

  private static String supply(Panel panel) {
    if (panel.supply() instanceof PanelSupply.FromService from) {
      return from.service();
    }
    return panel.supply() instanceof PanelSupply.FromBreaker from ? from.breaker().toString() : "?";
  }

  private static Optional<Derivation> ampacity(Conductors conductors, Conditions conditions) {
    return conductors.ampacities().of(conditions).map(Ampacity::allowed);
  }

  private static Row stretch(
      String row, String name, String from, String to, Stretch run, Carried carried, String status) {
    List<String> wires = run.wiring().wires().stream().map(w -> w.color()).toList();
    return Row.of(
        Cell.of(row), Cell.of(name), Cell.of(from), Cell.of(to), length(run.length()), Cell.of(run.wiring().text()),
        figure(carried.ampacity), figure(carried.between), percent(carried.fill), Cell.of(SurroundingsWords.of(run.surroundings())),
        Cell.of(status),
        Cell.of(String.join(", ", wires)))
        .about(row.equals("service") ? "service " + name : "the feeder of " + name);
  }

  private static Row section(House house, Branch branch, Section section, Conductors conductors) {
    Optional<Conditions> conditions = conductors.runs().of(branch, section, section.wiring().hot());
    Optional<Derivation> ampacity = conditions.flatMap(c -> ampacity(conductors, c));
    Optional<Derivation> rating = branch.hots().stream().findFirst().flatMap(h -> rating(house, h.breaker()));
    Optional<Derivation> between = conditions.flatMap(
        c -> rating.flatMap(r -> conductors.ampacities().between(c, r, conductors.terminations().of(branch, section, r))));
    List<String> roles = new ArrayList<>();
    section.conductors().forEach(c -> {
      String mark = c.reidentified() ? " (re-marked)" : "";
      String role = c.role() instanceof Role.Ground ? "" : " " + Role.text(c.role(), branch.hots());
      roles.add((role.isEmpty() ? "ground" : c.wire().color() + role) + mark);
    });
    return Row.of(
        Cell.of("branch"), Cell.of(branch.name()), Cell.of(point(branch, section.from())),
        Cell.of(point(branch, section.to())), length(section.length()), Cell.of(section.wiring().text()),
        figure(ampacity), figure(between),
        percent(conductors.raceways().of(section.wiring(), section.length()).map(RacewayFill.Fill::fill)),
        Cell.of(SurroundingsWords.of(section.surroundings())), Cell.of(section.status().word()),
        Cell.of(String.join(", ", roles)))
        .about(branch.name() + " from " + point(branch, section.from()) + " to " + point(branch, section.to()));
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

  private static String point(Branch branch, int index) {
    return branch.points().get(index).box().orElse(branch.panel().orElse("?"));
  }
}
