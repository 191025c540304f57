package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.faults.ClearingTime;
import wattle.faults.Fault;
import wattle.faults.FaultKind;
import wattle.faults.FaultPoint;
import wattle.faults.Faults;
import wattle.faults.TripCurve;
import wattle.faults.TripCurves;
import wattle.faults.Withstand;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;
import wattle.words.BreakerWords;
import wattle.words.Caution;

/** What a fault can drive at every panel and box, how long its breaker may take, and what the conductors stand. */
public final class FaultSchedule {
  /** A figure behind more runs than this is printed without its sum, which would be longer than the table. */
  private static final int MOST_UNFOLDED = 100;

  private static final List<Column> COLUMNS = List.of(
      Column.words("row", "row").onTheSide(),
      Column.words("name", "name"),
      Column.words("place", "place"),
      Column.figures("line-line-most-a", "line-line most", "A", 0).naming("fault current of * line to line at most"),
      Column.figures("line-line-least-a", "least", "A", 0).naming("fault current of * line to line at least"),
      Column.figures("line-neutral-most-a", "line-neutral most", "A", 0).naming("fault current of * line to neutral at most"),
      Column.figures("line-neutral-least-a", "least", "A", 0).naming("fault current of * line to neutral at least"),
      Column.figures("line-ground-most-a", "line-ground most", "A", 0).naming("fault current of * line to ground at most"),
      Column.figures("line-ground-least-a", "least", "A", 0).naming("fault current of * line to ground at least"),
      Column.words("breaker", "breaker"),
      Column.words("clears-in", "clears in"),
      Column.words("weakest", "weakest").onTheSide(),
      Column.figures("stands-a2s", "withstands", "A²s", 0).naming("let-through of the weakest to *").onTheSide());

  /** Of a house with a three-phase service. */
  private static final List<Column> THREE_PHASE_COLUMNS = threePhase();

  private static List<Column> threePhase() {
    List<Column> columns = new ArrayList<>(COLUMNS.subList(0, 3));
    columns.add(Column.figures("three-phase-most-a", "three-phase most", "A", 0).naming("fault current of * three-phase at most"));
    columns.add(Column.figures("three-phase-least-a", "least", "A", 0).naming("fault current of * three-phase at least"));
    columns.addAll(COLUMNS.subList(3, COLUMNS.size()));
    return List.copyOf(columns);
  }

  private final House house;
  private final List<FaultKind> kinds;
  private final TripCurves curves;

  private final Set<String> unfolded;

  private FaultSchedule(House house, Library library, Set<String> unfolded) {
    this.house = house;
    boolean threePhase = house.services().values().stream().anyMatch(s -> s.system().kind() == SupplySystem.Kind.THREE_PHASE_WYE);
    kinds = Stream.of(FaultKind.values()).filter(k -> threePhase || k != FaultKind.THREE_PHASE).toList();
    this.curves = new TripCurves(library);
    this.unfolded = unfolded;
  }

  public static Sheet of(House house, Library library, Faults faults) {
    return of(house, library, faults, Set.of());
  }

  /** @param unfolded subjects of rows whose figures are unfolded however long they become */
  public static Sheet of(House house, Library library, Faults faults, Set<String> unfolded) {
    FaultSchedule schedule = new FaultSchedule(house, library, unfolded);
    List<Row> rows = new ArrayList<>();
    for (Panel panel : house.panels().values()) {
      Optional<Breaker> feeding = panel.supply() instanceof PanelSupply.FromBreaker from ? house.breaker(from.breaker()) : Optional.empty();
      rows.add(schedule.row("panel", panel.name(), faults.panel(panel.name()), feeding, panel, 0));
    }
    for (Branch branch : house.branches().values()) {
      Optional<Panel> panel = branch.panel().map(house.panels()::get);
      List<FaultPoint> points = faults.branch(branch.name());
      Optional<Breaker> breaker = branch.hots().stream().findFirst().map(BranchHot::breaker).flatMap(house::breaker);
      for (int i = 1; i < points.size(); i++) {
        rows.add(schedule.row("branch", branch.name(), points.get(i), breaker, panel.orElseThrow(), i));
      }
    }
    return new Sheet("faults", "Fault currents", schedule.kinds.contains(FaultKind.THREE_PHASE) ? THREE_PHASE_COLUMNS : COLUMNS, rows,
        notes(house.units()));
  }

  private static List<String> notes(UnitSystem units) {
    return List.of(
        "Bolted faults. Most: conductors at " + units.known(Quantity.of(20, Units.CELSIUS))
            + "; least: conductors at the rating of their insulation. A blank: no path for such a fault, a length or the source is "
            + "not stated, or an interlock keeps the circuit off the utility; a trial shows what its own source delivers.",
        "Clears in: from the fastest time at the most current to the slowest at the least, by the breaker's standard. Below 0.1 s the "
            + "maker's let-through decides; it must not exceed what the weakest conductor withstands.",
        "The most includes solar, storage and generators that run in parallel with the supply, each at its own terminals. Motors add "
            + "to these figures; arcs reduce them. Not a coordination study: ask the utility. " + Caution.SHORT);
  }

  private Row row(String row, String name, FaultPoint point, Optional<Breaker> breaker, Panel panel, int runs) {
    List<Cell> cells = new ArrayList<>(List.of(Cell.of(row), Cell.of(name), Cell.of(point.place())));
    String subject = name.equals(point.place()) ? name : point.place() + " on " + name;
    boolean unfolds = runs <= MOST_UNFOLDED || unfolded.contains(subject);
    for (FaultKind kind : kinds) {
      Optional<Fault> fault = point.fault(kind);
      cells.add(fault.map(f -> unfolds ? figure(f.most()) : Cell.of(f.mostAmperes())).orElse(Cell.BLANK));
      cells.add(fault.map(f -> unfolds ? figure(f.least()) : Cell.of(f.leastAmperes())).orElse(Cell.BLANK));
    }
    Optional<TripCurve> curve = breaker.flatMap(b -> curves.of(b, panel.system()));
    Optional<Withstand> weakest = point.faults().stream().flatMap(f -> f.weakest().stream())
        .min(java.util.Comparator.comparingDouble(Withstand::ampereSquaredSeconds));
    cells.add(Cell.of(breaker.map(b -> b.id() + ", " + BreakerWords.rating(b)).orElse("")));
    cells.add(Cell.of(curve.filter(c -> !point.faults().isEmpty()).map(c -> clears(c, point)).orElse("")));
    cells.add(Cell.of(weakest.map(w -> w.wire().size() + " " + w.wire().metal().symbol()).orElse("")));
    cells.add(weakest.map(w -> Cell.of(w.ampereSquaredSeconds(), w.letThrough())).orElse(Cell.BLANK));
    return new Row(cells, false, subject);
  }

  private static Cell figure(Derivation derivation) {
    return Cell.of(derivation.si(), derivation);
  }

  private static String clears(TripCurve curve, FaultPoint point) {
    double most = point.mostAmperes();
    double least = point.faults().stream().mapToDouble(Fault::leastAmperes).min().orElseThrow();
    ClearingTime fast = curve.at(most);
    ClearingTime slow = curve.at(least);
    return new ClearingTime(fast.leastSeconds(), fast.leastBound(), slow.mostSeconds(), slow.mostBound()).text();
  }
}
