package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.loads.ConnectedLoads;
import wattle.loads.LoadFigures;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Connected load of each branch and panel on each leg, and how far the legs are out of balance. */
public final class LoadSchedule {
  private final House house;
  private final LoadFigures figures;
  private final Set<Leg> legs = EnumSet.noneOf(Leg.class);

  private LoadSchedule(House house, ConnectedLoads loads) {
    this.house = house;
    figures = new LoadFigures(house, loads);
    house.panels().values().forEach(p -> legs.addAll(p.system().legs()));
  }

  /** One sheet for the house: the branches panel by panel, each panel's sum beneath its branches. */
  public static Sheet of(House house, ConnectedLoads loads) {
    return new LoadSchedule(house, loads).sheet();
  }

  private Sheet sheet() {
    List<Row> rows = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      house.branches().values().stream()
          .filter(b -> b.panel().equals(Optional.of(panel.name())))
          .forEach(b -> rows.add(branch(panel, b)));
      for (Breaker breaker : panel.breakers()) {
        house.panelOf(breaker).ifPresent(fed -> rows.add(feeder(panel, fed, breaker)));
      }
      rows.add(sum(panel));
    }
    house.branches().values().stream()
        .filter(b -> b.panel().isEmpty() || !house.panels().containsKey(b.panel().get()))
        .forEach(b -> rows.add(lost(b)));
    return new Sheet("loads", "Connected loads", columns(), rows, List.of(
        "Everything on at once, at nominal voltage; for the calculated load, see the load worksheet.",
        "A load between two legs counts half of its VA on each and its whole current in both; currents are added as phasors.",
        "Share: the current of the heaviest hot as a percentage of its breaker.",
        "Imbalance: the largest difference of a leg from the mean of the legs, as a percentage of that mean."));
  }

  private List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("row", "row"));
    columns.add(Column.words("panel", "panel"));
    columns.add(Column.words("name", "name"));
    columns.add(Column.words("description", "description"));
    columns.add(Column.figures("breaker-a", "breaker", "A", 0).naming("rating of *"));
    for (Leg leg : legs) {
      String key = "load-" + leg.name().toLowerCase(Locale.ROOT) + "-va";
      columns.add(Column.figures(key, "leg " + leg, "VA", 0).naming("load of * on leg " + leg));
    }
    columns.add(Column.figures("load-va", "all", "VA", 0).naming("load of *"));
    columns.add(Column.figures("current-a", "heaviest hot", "A", 1).naming("current of * with everything on"));
    columns.add(Column.figures("share-percent", "share", "%", 0).naming("share of *"));
    columns.add(Column.figures("imbalance-percent", "imbalance", "%", 1).naming("imbalance of *").onTheSide());
    columns.add(Column.figures("difference-va", "difference", "VA", 0).naming("difference of *").onTheSide());
    return columns;
  }

  private Row branch(Panel panel, Branch branch) {
    Optional<Breaker> breaker = figures.busiest(branch, panel.system());
    List<Derivation> onLegs = legs.stream().map(l -> figures.branch(branch, Optional.of(l))).toList();
    List<Cell> cells = cells("branch", panel, branch.name(), branch.title(), breaker.flatMap(Breaker::amperes), onLegs,
        figures.branch(branch, Optional.empty()),
        figures.heaviest(breaker.map(figures::behind).orElseGet(() -> figures.of(branch)), panel.system()));
    return new Row(cells, false, branch.name());
  }

  private Row feeder(Panel panel, Panel fed, Breaker breaker) {
    List<Cell> cells = cells("feeder", panel, fed.name(), fed.title(), breaker.amperes(), onLegs(fed),
        figures.panel(fed, Optional.empty()), figures.heaviest(figures.of(fed), fed.system()));
    return new Row(cells, false, "the feeder of " + fed.name());
  }

  private Row sum(Panel panel) {
    Optional<Double> limit = panel.main().flatMap(m -> m.rating()).or(panel::busRating).map(Quantity::si);
    List<Cell> cells = cells("panel", panel, panel.name(), panel.title(), limit, onLegs(panel), figures.panel(panel, Optional.empty()),
        figures.heaviest(figures.of(panel), panel.system()));
    if (panel.system().legs().size() > 1) {
      List<Derivation> own = panel.system().legs().stream().map(l -> figures.panel(panel, Optional.of(l))).toList();
      Derivation imbalance = figures.imbalance(panel, own);
      cells.set(cells.size() - 2, Cell.of(imbalance.quantity().orElseThrow().in(Units.PERCENT), imbalance));
      cells.set(cells.size() - 1, figure(figures.difference(panel, own)));
    }
    return new Row(cells, true, panel.name());
  }

  private List<Derivation> onLegs(Panel panel) {
    return legs.stream().map(l -> figures.panel(panel, Optional.of(l))).toList();
  }

  private List<Cell> cells(
      String row, Panel panel, String name, String title, Optional<Double> rating, List<Derivation> onLegs, Derivation all,
      Derivation heaviest) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of(row));
    cells.add(Cell.of(panel.name()));
    cells.add(Cell.of(name));
    cells.add(Cell.of(title.equals(name) ? "" : title));
    cells.add(rating.map(r -> figure(Derivation.stated("rating", "I_n", Quantity.of(r, Units.AMPERE)))).orElse(Cell.BLANK));
    onLegs.forEach(load -> cells.add(load.si() == 0 ? Cell.BLANK : figure(load)));
    cells.add(figure(all));
    cells.add(figure(heaviest));
    cells.add(
        rating.map(r -> figures.share(heaviest, r)).map(s -> Cell.of(s.quantity().orElseThrow().in(Units.PERCENT), s)).orElse(Cell.BLANK));
    cells.add(Cell.BLANK);
    cells.add(Cell.BLANK);
    return cells;
  }

  private static Cell figure(Derivation figure) {
    return Cell.of(figure.si(), figure);
  }

  /** A branch that no panel feeds: its load is shown, on no leg. */
  private Row lost(Branch branch) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of("branch"));
    cells.add(Cell.of("?"));
    cells.add(Cell.of(branch.name()));
    cells.add(Cell.of(branch.label().orElse("")));
    cells.add(Cell.BLANK);
    legs.forEach(leg -> cells.add(Cell.BLANK));
    cells.add(figure(figures.branch(branch, Optional.empty())));
    for (int i = 0; i < 4; i++) {
      cells.add(Cell.BLANK);
    }
    return new Row(cells, false, branch.name());
  }
}
