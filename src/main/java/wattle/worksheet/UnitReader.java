package wattle.worksheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.library.Library;
import wattle.loads.ConnectedLoads;
import wattle.loads.Ends;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** A dwelling, or the part of one that a feeder serves, as the branches of its panels have it. */
final class UnitReader {
  private final House house;
  private final Territory territory;
  private final LoadReader loads;
  private final Areas areas;

  UnitReader(House house, Library library, Territory territory) {
    this.house = house;
    this.territory = territory;
    loads = new LoadReader(library);
    areas = new Areas(house);
  }

  /** A device with the branch that feeds it. */
  record Fed(Device device, Branch branch) {}

  DwellingUnit unit(Dwelling dwelling, List<Panel> panels, Inputs.Scope scope, boolean estimating, List<Objection> objections) {
    List<Fed> fed = fed(panels);
    String name = dwelling.name().orElse("dwelling");
    if (scope == Inputs.Scope.PART) {
      return part(name, Optional.of(dwelling), panels, estimating, objections);
    }
    int alike = areas.alike(dwelling, objections);
    objections.addAll(areas.contradictions(dwelling, fed));
    return new DwellingUnit(
        name, Optional.ofNullable(dwelling.facts().get("floor-area")),
        Optional.ofNullable(dwelling.facts().get("basement-area")), circuits(panels, "small-appliance"),
        circuits(panels, "laundry"), classed(fed, objections), List.of(), alike);
  }

  /**
   * The part of a dwelling that a feeder serves: the rooms whose lights and outlets hang on it. In an outbuilding that is no dwelling
   * lights and outlets count one by one, and so they do in rooms that are in no floor area.
   *
   * @param dwelling absent where the plan has none
   * @param estimating whether an area that may be that of rooms fed from elsewhere counts
   */
  DwellingUnit part(
      String name, Optional<Dwelling> dwelling, List<Panel> panels, boolean estimating, List<Objection> objections) {
    List<ConnectedLoad> outlets = new ArrayList<>();
    Set<String> rooms = new LinkedHashSet<>();
    for (Panel panel : panels) {
      for (Fed each : fed(List.of(panel))) {
        if (LoadReader.inFloorArea(each.device)) {
          if (byArea(panel, each.device.room())) {
            rooms.add(each.device.room());
          } else {
            loads.outlet(each).ifPresent(outlets::add);
          }
        }
      }
    }
    double area = rooms.stream().flatMap(r -> areas.of(r).stream()).mapToDouble(Quantity::si).sum();
    List<String> unsaid = rooms.stream().filter(r -> areas.of(r).isEmpty()).toList();
    if (!unsaid.isEmpty()) {
      area += rest(name, dwelling, panels, unsaid, estimating, objections);
    }
    // The unit decides which of the code's two figures holds, as for a whole dwelling.
    boolean feet = rooms.stream().anyMatch(r -> areas.of(r).isPresent())
        ? rooms.stream().flatMap(r -> areas.of(r).stream()).allMatch(a -> a.unit().equals(Units.SQUARE_FOOT))
        : dwelling.map(d -> d.facts().get("floor-area")).filter(a -> a.unit().equals(Units.SQUARE_FOOT)).isPresent();
    Quantity whole = Quantity.of(area, Units.SQUARE_METER);
    return new DwellingUnit(
        name, area > 0 ? Optional.of(feet ? whole.shownIn(Units.SQUARE_FOOT) : whole) : Optional.empty(), Optional.empty(),
        circuits(panels, "small-appliance"), circuits(panels, "laundry"), classed(fed(panels), objections), outlets, 1);
  }

  private boolean byArea(Panel panel, String room) {
    return territory.isInOutbuilding(panel) ? areas.isLivedIn(room) : areas.counts(room);
  }

  /** Square meters of rooms that state none: what the dwelling has beyond those that do. */
  private double rest(
      String name, Optional<Dwelling> dwelling, List<Panel> panels, List<String> unsaid, boolean estimating,
      List<Objection> objections) {
    Set<String> all = new LinkedHashSet<>();
    dwelling.ifPresent(d -> territory.panelsOf(d).forEach(
        p -> fed(List.of(p)).stream().map(f -> f.device.room()).filter(r -> byArea(p, r)).forEach(all::add)));
    Optional<Double> rest = dwelling.flatMap(d -> areas.rest(d, all));
    if (rest.isEmpty()) {
      unsaid.forEach(r -> areas.missing(r, name, objections));
      return 0;
    }
    boolean elsewhere = all.stream().anyMatch(r -> areas.of(r).isEmpty() && !unsaid.contains(r));
    if (elsewhere) {
      String feeder = panels.get(0).name();
      objections.add(Areas.estimated(feeder, unsaid, Quantity.of(Math.round(rest.get()), Units.SQUARE_METER)));
    }
    return elsewhere && !estimating ? 0 : rest.get();
  }

  /** Loads outside the dwellings: everything at its rating, receptacles as outlets. */
  List<ConnectedLoad> all(List<Panel> panels, List<Objection> objections) {
    List<Fed> fed = fed(panels);
    List<ConnectedLoad> all = new ArrayList<>(classed(fed, objections));
    fed.stream().filter(f -> LoadReader.inFloorArea(f.device)).forEach(f -> loads.outlet(f).ifPresent(all::add));
    return all;
  }

  /** A building of a farm: everything at its rating, receptacles as outlets. */
  FarmBuilding farm(String name, List<Panel> panels, List<Objection> objections) {
    Set<String> together = fed(panels).stream().map(Fed::device).filter(d -> d.traits().contains("simultaneous")).map(Device::name)
        .collect(Collectors.toSet());
    int circuits = panels.stream().mapToInt(p -> territory.branches(p).size()).sum();
    return new FarmBuilding(name, all(panels, objections), together, circuits);
  }

  private List<ConnectedLoad> classed(List<Fed> fed, List<Objection> objections) {
    List<ConnectedLoad> classed = new ArrayList<>();
    for (Fed each : fed) {
      if (!LoadReader.inFloorArea(each.device)) {
        loads.load(each, objections).ifPresent(classed::add);
      }
    }
    return classed;
  }

  /** Where the loads of some panels are connected, and which legs their dwellings have. */
  Placement placement(List<Panel> panels) {
    Map<String, Ends> ends = new HashMap<>();
    Set<String> continuous = new HashSet<>();
    Set<String> managed = new HashSet<>();
    Map<String, String> drawn = new HashMap<>();
    for (Fed each : fed(panels)) {
      Set<Ends> own = each.device.loads().stream()
          .flatMap(l -> ConnectedLoads.ends(l.connection(), each.branch).stream())
          .filter(e -> e.legs().size() == 2 || each.device.loads().size() == 1)
          .collect(Collectors.toSet());
      if (own.size() == 1) {
        ends.put(each.device.name(), own.iterator().next());
      }
      if (Math.abs(each.device.voltAmperes() - each.device.nameplateVoltAmperes()) > 0.01 * each.device.nameplateVoltAmperes()) {
        double counted = loads.counted(each.device) * each.device.voltAmperes() / each.device.nameplateVoltAmperes();
        drawn.put(each.device.name(), Math.round(counted) + " VA at the voltage that it gets");
      }
      if (each.device.traits().contains("load-managed")) {
        managed.add(each.device.name());
      }
      if (each.device.traits().contains("continuous")) {
        continuous.add(each.device.name());
      }
    }
    Map<String, Set<Leg>> legs = new LinkedHashMap<>();
    for (Panel panel : panels) {
      territory.dwellingOf(panel).filter(d -> !territory.branches(panel).isEmpty())
          .ifPresent(
              d -> legs.computeIfAbsent(d.name().orElse("dwelling"), n -> EnumSet.noneOf(Leg.class)).addAll(panel.system().legs()));
    }
    Map<String, List<Leg>> dwellings = new LinkedHashMap<>();
    legs.forEach((name, own) -> dwellings.put(name, List.copyOf(own)));
    return new Placement(ends, dwellings, continuous, drawn, managed);
  }

  private List<Fed> fed(List<Panel> panels) {
    List<Fed> fed = new ArrayList<>();
    for (Panel panel : panels) {
      for (Branch branch : territory.branches(panel)) {
        for (Point point : branch.points()) {
          for (String name : point.devices()) {
            Device device = house.devices().get(name);
            if (device != null && device.status() != Status.TO_REMOVE) {
              fed.add(new Fed(device, branch));
            }
          }
        }
      }
    }
    return fed;
  }

  /** Branches of a purpose; each hot is a circuit. */
  private Circuits circuits(List<Panel> panels, String kind) {
    List<Branch> branches = panels.stream()
        .flatMap(p -> territory.branches(p).stream())
        .filter(b -> b.kind().equals(Optional.of(kind)))
        .toList();
    int count = branches.stream().mapToInt(b -> Math.max(1, b.hots().size())).sum();
    return new Circuits(count, branches.stream().map(Branch::name).toList());
  }

  /** Circuits for lights and general receptacles: those of no special purpose. */
  LeastCircuits.General general(List<Panel> panels) {
    List<Branch> branches = panels.stream()
        .filter(p -> !territory.isInOutbuilding(p))
        .flatMap(p -> territory.branches(p).stream())
        .filter(b -> b.kind().isEmpty() && isForGeneralUse(b))
        .toList();
    int circuits = branches.stream().mapToInt(b -> Math.max(1, b.hots().size())).sum();
    List<Optional<Quantity>> ratings = branches.stream()
        .flatMap(b -> b.hots().stream())
        .map(h -> house.breaker(h.breaker()).flatMap(Breaker::rating))
        .toList();
    return new LeastCircuits.General(
        circuits, ratings.isEmpty() || ratings.stream().anyMatch(Optional::isEmpty)
            ? Optional.empty()
            : Optional.of(ratings.stream().mapToDouble(r -> r.orElseThrow().si()).sum()));
  }

  private boolean isForGeneralUse(Branch branch) {
    return branch.points().stream().flatMap(p -> p.devices().stream()).map(house.devices()::get)
        .filter(d -> d != null && d.status() != Status.TO_REMOVE)
        .flatMap(d -> d.kind().loadClass().stream())
        .anyMatch(c -> c == LoadClass.LIGHTING || c == LoadClass.GENERAL_OUTLET);
  }

  static boolean isGeneral(LoadClass loadClass) {
    return loadClass == LoadClass.LIGHTING || loadClass == LoadClass.GENERAL_OUTLET
        || loadClass == LoadClass.SMALL_APPLIANCE || loadClass == LoadClass.LAUNDRY;
  }
}
