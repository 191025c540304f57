package wattle.emit.schedule;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.emit.table.Cell;
import wattle.emit.table.Column;
import wattle.emit.table.Row;
import wattle.emit.table.Sheet;
import wattle.loads.ConnectedLoads;
import wattle.loads.LegLoads;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.SupplySystem;

/** Connected load of each branch and panel on each leg, and how far the legs are out of balance. */
public final class LoadSchedule {
  private LoadSchedule() {}

  /** One sheet for the house: the branches panel by panel, each panel's sum beneath its branches. */
  public static Sheet of(House house, ConnectedLoads loads) {
    Set<Leg> legs = EnumSet.noneOf(Leg.class);
    house.panels().values().forEach(p -> legs.addAll(p.system().legs()));
    List<Row> rows = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      house.branches().values().stream()
          .filter(b -> b.panel().equals(Optional.of(panel.name())))
          .forEach(b -> rows.add(branch(house, panel, b, loads.branch(b.name()), legs)));
      for (Breaker breaker : panel.breakers()) {
        if (breaker.target() instanceof Breaker.Target.ToPanel to && house.panels().containsKey(to.panel())) {
          LegLoads load = loads.panel(to.panel());
          rows.add(new Row(cells("feeder", panel, to.panel(), house.panels().get(to.panel()).title(), breaker.amperes(), load, legs), false));
        }
      }
      rows.add(sum(panel, loads.panel(panel.name()), legs));
    }
    house.branches().values().stream()
        .filter(b -> b.panel().isEmpty() || !house.panels().containsKey(b.panel().get()))
        .forEach(b -> rows.add(lost(b, loads.branch(b.name()), legs)));
    return new Sheet("loads", "Connected loads", columns(legs), rows, List.of(
        "Everything on at once, at nominal voltage; what the code counts on is in the load worksheet.",
        "A load between two legs counts half on each. Share: the heaviest leg's current as a part of the breaker.",
        "Imbalance: how far the leg that strays most lies from the mean of the legs, as a part of that mean."));
  }

  private static List<Column> columns(Set<Leg> legs) {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("row", "row"));
    columns.add(Column.words("panel", "panel"));
    columns.add(Column.words("name", "name"));
    columns.add(Column.words("description", "description"));
    columns.add(Column.figures("breaker-a", "breaker", "A", 0));
    legs.forEach(leg -> columns.add(Column.figures("load-" + leg.name().toLowerCase(java.util.Locale.ROOT) + "-va", "leg " + leg, "VA", 0)));
    columns.add(Column.figures("load-va", "all", "VA", 0));
    columns.add(Column.figures("current-a", "heaviest leg", "A", 1));
    columns.add(Column.figures("share-percent", "share", "%", 0));
    columns.add(Column.figures("imbalance-percent", "imbalance", "%", 1));
    columns.add(Column.figures("difference-va", "difference", "VA", 0));
    return columns;
  }

  private static Row branch(House house, Panel panel, Branch branch, LegLoads load, Set<Leg> legs) {
    Optional<Double> rating =
        branch.hots().stream().map(BranchHot::breaker).findFirst().flatMap(house::breaker).flatMap(Breaker::amperes);
    return new Row(cells("branch", panel, branch.name(), branch.title(), rating, load, legs), false);
  }

  private static List<Cell> cells(
      String row, Panel panel, String name, String title, Optional<Double> rating, LegLoads load, Set<Leg> legs) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of(row));
    cells.add(Cell.of(panel.name()));
    cells.add(Cell.of(name));
    cells.add(Cell.of(title.equals(name) ? "" : title));
    cells.add(rating.map(Cell::of).orElse(Cell.BLANK));
    legs.forEach(leg -> cells.add(load.on(leg) == 0 ? Cell.BLANK : Cell.of(load.on(leg))));
    cells.add(Cell.of(load.total()));
    double heaviest = heaviest(panel.system(), load);
    cells.add(Cell.of(heaviest));
    cells.add(rating.map(r -> Cell.of(100 * heaviest / r)).orElse(Cell.BLANK));
    cells.add(Cell.BLANK);
    cells.add(Cell.BLANK);
    return cells;
  }

  private static double heaviest(SupplySystem system, LegLoads load) {
    return system.legs().stream().mapToDouble(load::on).max().orElse(0) / system.legToNeutralVolts();
  }

  private static Row sum(Panel panel, LegLoads load, Set<Leg> legs) {
    Optional<Double> limit = panel.main().flatMap(m -> m.rating()).or(panel::busRating).map(q -> q.si());
    List<Cell> cells = cells("panel", panel, panel.name(), panel.title(), limit, load, legs);
    if (panel.system().legs().size() > 1) {
      cells.set(cells.size() - 2, Cell.of(100 * load.imbalance(panel.system())));
      cells.set(cells.size() - 1, Cell.of(load.difference(panel.system())));
    }
    return new Row(cells, true);
  }

  /** A branch that no panel feeds: its load is shown, on no leg. */
  private static Row lost(Branch branch, LegLoads load, Set<Leg> legs) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of("branch"));
    cells.add(Cell.of("?"));
    cells.add(Cell.of(branch.name()));
    cells.add(Cell.of(branch.label().orElse("")));
    cells.add(Cell.BLANK);
    legs.forEach(leg -> cells.add(Cell.BLANK));
    cells.add(Cell.of(load.total()));
    for (int i = 0; i < 4; i++) {
      cells.add(Cell.BLANK);
    }
    return new Row(cells, false);
  }
}
