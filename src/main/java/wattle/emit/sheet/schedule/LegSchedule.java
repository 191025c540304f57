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
import wattle.loads.LegCurrents;
import wattle.loads.LegLoads;
import wattle.loads.LoadFigures;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.quantity.Units;

/** The legs of each panel beside each other: what each carries, how far they are apart, what is left for the neutral. */
public final class LegSchedule {
  private LegSchedule() {}

  /** One row a panel, with those that it feeds. */
  public static Sheet of(House house, ConnectedLoads loads) {
    LoadFigures figures = new LoadFigures(house, loads);
    Set<Leg> legs = EnumSet.noneOf(Leg.class);
    house.panels().values().forEach(p -> legs.addAll(p.legs()));
    List<Column> columns = new ArrayList<>(List.of(Column.words("panel", "panel")));
    for (Leg leg : legs) {
      String key = leg.name().toLowerCase(Locale.ROOT);
      columns.add(Column.figures("load-" + key + "-va", "leg " + leg, "VA", 0));
      columns.add(Column.figures("current-" + key + "-a", "leg " + leg, "A", 1));
    }
    columns.add(Column.figures("difference-va", "difference", "VA", 0));
    columns.add(Column.figures("imbalance-percent", "imbalance", "%", 1));
    columns.add(Column.figures("neutral-a", "neutral", "A", 1));
    List<Row> rows = house.panels().values().stream().map(p -> row(p, loads, figures, legs)).toList();
    return new Sheet(
        "legs", "Load of each leg", columns, rows,
        List.of(
            "Everything connected on at once, at nominal voltage, without demand factors. A load between two legs counts half of its VA on"
                + " each; amperes of legs and neutral are added as phasors."));
  }

  private static Row row(Panel panel, ConnectedLoads loads, LoadFigures figures, Set<Leg> legs) {
    LegLoads all = loads.panel(panel.name());
    List<Derivation> loaded = panel.legs().stream().map(l -> figures.panel(panel, Optional.of(l))).toList();
    List<Cell> cells = new ArrayList<>(List.of(Cell.of(panel.name())));
    for (Leg leg : legs) {
      int index = panel.legs().indexOf(leg);
      if (index < 0) {
        cells.addAll(List.of(Cell.BLANK, Cell.BLANK));
        continue;
      }
      Derivation load = loaded.get(index);
      Derivation current = LegCurrents.leg("current of leg " + leg + " of " + panel.name(), all, leg, panel.system());
      cells.add(Cell.of(load.si(), load));
      cells.add(Cell.of(current.si(), current));
    }
    boolean several = panel.legs().size() > 1;
    Derivation neutral = LegCurrents.neutral("current of the neutral of " + panel.name(), all, panel.system());
    cells.add(several ? figure(figures.difference(panel, loaded)) : Cell.BLANK);
    cells.add(several ? percent(figures.imbalance(panel, loaded)) : Cell.BLANK);
    cells.add(figure(neutral));
    return new Row(cells, false);
  }

  private static Cell figure(Derivation figure) {
    return Cell.of(figure.si(), figure);
  }

  private static Cell percent(Derivation share) {
    return Cell.of(share.quantity().orElseThrow().in(Units.PERCENT), share);
  }
}
