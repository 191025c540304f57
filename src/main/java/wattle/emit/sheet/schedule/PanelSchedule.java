package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.loads.ConnectedLoads;
import wattle.loads.LegLoads;
import wattle.loads.LoadFigures;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Pole;
import wattle.model.Slot;
import wattle.model.Stretch;
import wattle.model.Wiring;
import wattle.words.BondWords;
import wattle.words.BreakerWords;
import wattle.words.Caution;

/** The schedule of each panel: one row a slot, in order, empty ones too. */
public final class PanelSchedule {
  private static final String EMPTY = "empty";

  private static final List<Column> COLUMNS = List.of(
      Column.words("panel", "panel").onTheSide(),
      Column.words("slot", "slot"),
      Column.words("leg", "leg"),
      Column.words("breaker", "breaker"),
      Column.words("protection", "protection"),
      Column.words("feeds", "feeds"),
      Column.words("description", "description"),
      Column.words("wiring", "wiring"),
      Column.figures("load-va", "load of the pole", "VA", 0).naming("load of slot *"));

  private PanelSchedule() {}

  /** One sheet a panel, in the order of the plan. */
  public static List<Sheet> of(House house, ConnectedLoads loads) {
    return house.panels().values().stream().map(p -> of(house, loads, p)).toList();
  }

  private static Sheet of(House house, ConnectedLoads loads, Panel panel) {
    List<Row> rows = new ArrayList<>();
    for (Slot slot : slots(panel)) {
      rows.add(row(house, loads, panel, slot));
    }
    return new Sheet("panel", title(house, panel), COLUMNS, rows, notes(loads, panel));
  }

  /** Every slot or half of one that something stands in, and every other as a whole. */
  private static List<Slot> slots(Panel panel) {
    TreeSet<Slot> slots = new TreeSet<>(Comparator.comparingInt(Slot::number).thenComparing(s -> s.half().orElse('\0')));
    panel.breakers().forEach(b -> b.poles().forEach(p -> slots.add(p.slot())));
    List<Slot> taken = List.copyOf(slots);
    for (int number = 1; number <= panel.slotCount().orElse(0); number++) {
      Slot whole = new Slot(number, Optional.empty());
      Slot upper = new Slot(number, Optional.of('a'));
      Slot lower = new Slot(number, Optional.of('b'));
      if (taken.contains(upper) != taken.contains(lower)) {
        slots.add(taken.contains(upper) ? lower : upper);
      } else if (taken.stream().noneMatch(whole::overlaps)) {
        slots.add(whole);
      }
    }
    return List.copyOf(slots);
  }

  private static Row row(House house, ConnectedLoads loads, Panel panel, Slot slot) {
    for (Breaker breaker : panel.breakers()) {
      for (Pole pole : breaker.poles()) {
        if (pole.slot().equals(slot)) {
          return taken(house, loads, panel, breaker, pole);
        }
      }
    }
    String leg = slot.number() <= panel.slotCount().orElse(0)
        ? panel.order().legOf(slot.number(), panel.slotCount().orElse(0), panel.legs()).name()
        : "";
    return Row.of(
        Cell.of(panel.name()), Cell.of(slot.toString()), Cell.of(leg), Cell.BLANK, Cell.BLANK, Cell.BLANK,
        Cell.of(EMPTY), Cell.BLANK, Cell.BLANK);
  }

  private static Row taken(House house, ConnectedLoads loads, Panel panel, Breaker breaker, Pole pole) {
    boolean first = breaker.poles().indexOf(pole) == 0;
    Cell load = pole.leg().map(l -> load(house, loads, breaker, l)).orElse(Cell.BLANK);
    return Row.of(
        Cell.of(panel.name()),
        Cell.of(pole.slot().toString()),
        Cell.of(pole.leg().map(Leg::name).orElse("?")),
        Cell.of(first ? BreakerWords.rating(breaker) : "with " + breaker.poles().get(0).slot()),
        first ? Cell.of(BreakerWords.protection(breaker)) : Cell.BLANK,
        Cell.of(BreakerWords.target(breaker)),
        Cell.of(BreakerWords.description(house, breaker)),
        first ? Cell.of(wiring(house, breaker)) : Cell.BLANK,
        load)
        .about(panel.name() + "/" + pole.slot());
  }

  /** Of a pole; none on it counts as nothing where its branch is another pole's. */
  private static Cell load(House house, ConnectedLoads loads, Breaker breaker, Leg leg) {
    boolean feeds = breaker.target() instanceof Breaker.Target.ToBranch || breaker.target() instanceof Breaker.Target.ToPanel;
    return new LoadFigures(house, loads).behind(breaker, leg)
        .map(d -> Cell.of(d.si(), d))
        .orElse(feeds ? Cell.of(loads.behind(house, breaker).on(leg)) : Cell.BLANK);
  }

  private static String wiring(House house, Breaker breaker) {
    return house.branchOf(breaker).map(Branch::wiring)
        .or(() -> house.panelOf(breaker).flatMap(Panel::feeder).map(Stretch::wiring))
        .map(Wiring::text).orElse("");
  }

  /** Name, supply, main, bus, slots, bonding: the head of the schedule. */
  static String title(House house, Panel panel) {
    List<String> words = new ArrayList<>();
    words.add("Panel " + panel.name() + (panel.label().isPresent() ? ", " + panel.label().get() : ""));
    if (panel.supply() instanceof PanelSupply.FromService from) {
      words.add("from service " + from.service());
    } else if (panel.supply() instanceof PanelSupply.FromBreaker from) {
      words.add("from " + from.breaker());
    }
    words.add(panel.system().text());
    panel.main().ifPresent(m -> words.add(BreakerWords.main(m)));
    panel.busRating().ifPresent(b -> words.add("bus " + b));
    panel.slotCount().ifPresent(s -> words.add(s + " slots"));
    words.add(BondWords.of(panel));
    return String.join("; ", words);
  }

  private static List<String> notes(ConnectedLoads loads, Panel panel) {
    LegLoads load = loads.panel(panel.name());
    List<String> legs = new ArrayList<>();
    panel.system().legs().forEach(leg -> legs.add(leg + " " + Math.round(load.on(leg)) + " VA"));
    List<String> notes = new ArrayList<>();
    notes.add("Connected load: " + String.join(", ", legs) + ".");
    notes.add(Caution.LONG);
    return notes;
  }

  /** A schedule without its empty slots, which are named in a note. */
  public static Sheet used(Sheet sheet) {
    List<String> empty = sheet.rows().stream().flatMap(r -> emptySlot(r).stream()).toList();
    if (empty.isEmpty()) {
      return sheet;
    }
    List<String> notes = new ArrayList<>(sheet.notes());
    notes.add("Empty slots: " + String.join(", ", empty) + ".");
    List<Row> rows = sheet.rows().stream().filter(r -> emptySlot(r).isEmpty()).toList();
    return new Sheet(sheet.name(), sheet.title(), sheet.columns(), rows, notes);
  }

  /** The slot of a row that has nothing in it; absent for a row that has. */
  private static Optional<String> emptySlot(Row row) {
    boolean empty = row.cells().size() > 6 && row.cells().get(3).equals(Cell.BLANK) && row.cells().get(6).equals(Cell.of(EMPTY));
    return empty && row.cells().get(1) instanceof Cell.Words slot ? Optional.of(slot.text()) : Optional.empty();
  }
}
