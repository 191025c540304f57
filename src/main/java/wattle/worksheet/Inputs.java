package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;

/**
 * All that a load calculation needs to know.
 *
 * @param name the service or panel that is calculated
 * @param scope whether it is a service or a feeder
 * @param system the supply, for the voltage that turns volt-amperes into amperes
 * @param rating of the service or feeder in amperes; absent where not said
 * @param dwellings those that it serves
 * @param common loads outside the dwellings
 * @param measuredPeak highest demand measured in a year; absent where none was
 * @param placement what is connected between which legs
 * @param existing whether the service or feeder, or a panel on it, is there already
 * @param farm farm buildings beside the dwellings
 */
public record Inputs(
    String name,
    Scope scope,
    SupplySystem system,
    Optional<Quantity> rating,
    List<DwellingUnit> dwellings,
    List<ConnectedLoad> common,
    Optional<Quantity> measuredPeak,
    Placement placement,
    boolean existing,
    List<FarmBuilding> farm) {
  /** What is calculated. */
  public enum Scope {
    SERVICE,
    /** A feeder to one or more whole dwellings. */
    FEEDER,
    /** A feeder to a part of a dwelling. */
    PART
  }

  public Inputs {
    dwellings = List.copyOf(dwellings);
    common = List.copyOf(common);
    farm = List.copyOf(farm);
  }

  /** Without farm buildings. */
  public Inputs(
      String name, Scope scope, SupplySystem system, Optional<Quantity> rating, List<DwellingUnit> dwellings,
      List<ConnectedLoad> common, Optional<Quantity> measuredPeak, Placement placement, boolean existing) {
    this(name, scope, system, rating, dwellings, common, measuredPeak, placement, existing, List.of());
  }

  /** Of loads of which nothing says what legs they are on. */
  public Inputs(
      String name, Scope scope, SupplySystem system, Optional<Quantity> rating, List<DwellingUnit> dwellings,
      List<ConnectedLoad> common, Optional<Quantity> measuredPeak) {
    this(name, scope, system, rating, dwellings, common, measuredPeak, Placement.NONE, false);
  }

  /** Of a service or feeder that is new. */
  public Inputs(
      String name, Scope scope, SupplySystem system, Optional<Quantity> rating, List<DwellingUnit> dwellings,
      List<ConnectedLoad> common, Optional<Quantity> measuredPeak, Placement placement) {
    this(name, scope, system, rating, dwellings, common, measuredPeak, placement, false);
  }

  /** Whether anything of it is there already. */
  boolean isStanding() {
    return existing || allLoads().anyMatch(l -> !l.added());
  }

  /** Whether it is there already and gets more load. */
  boolean grows() {
    return existing && allLoads().anyMatch(ConnectedLoad::added);
  }

  private Stream<ConnectedLoad> allLoads() {
    return Stream.concat(dwellings.stream().flatMap(u -> Stream.concat(u.loads().stream(), u.outlets().stream())),
        Stream.concat(common.stream(), farm.stream().flatMap(b -> b.loads().stream())));
  }

  /** One dwelling of them alone, with those alike. */
  Inputs only(DwellingUnit unit) {
    return new Inputs(name, scope, system, rating, List.of(unit), List.of(), Optional.empty(), placement, existing);
  }

  /** The same of these dwellings. */
  Inputs of(List<DwellingUnit> units) {
    return new Inputs(name, scope, system, rating, units, common, measuredPeak, placement, existing, farm);
  }

  /** The same with these loads outside the dwellings. */
  Inputs withCommon(List<ConnectedLoad> loads) {
    return new Inputs(name, scope, system, rating, dwellings, loads, measuredPeak, placement, existing, farm);
  }

  /** The same as of a feeder to a part of a building, which is figured without any floor area. */
  Inputs asPart() {
    return new Inputs(name, Scope.PART, system, rating, dwellings, common, measuredPeak, placement, existing, farm);
  }

  /** The dwellings alone. */
  Inputs withoutCommon() {
    return new Inputs(name, scope, system, rating, dwellings, List.of(), measuredPeak, placement, existing, farm);
  }

  /** What is outside the dwellings alone. */
  Inputs onlyCommon() {
    return new Inputs(name, scope, system, rating, List.of(), common, Optional.empty(), placement, existing);
  }

  /** The same, spread evenly over the legs. */
  Inputs evenly() {
    return new Inputs(
        name, scope, system, rating, dwellings, common, measuredPeak,
        new Placement(Map.of(), Map.of(), placement.continuous(), placement.drawn(), placement.managed()), existing, farm);
  }

  /** How many dwellings there are. */
  public int dwellingCount() {
    return dwellings.stream().mapToInt(DwellingUnit::alike).sum();
  }

  /** Loads of these classes in all dwellings, and outside them. */
  List<ConnectedLoad> all(LoadClass... classes) {
    List<ConnectedLoad> all = new ArrayList<>(inDwellings(classes));
    Set<LoadClass> wanted = Set.of(classes);
    common.stream().filter(l -> wanted.contains(l.loadClass())).forEach(all::add);
    return all;
  }

  /** Loads of these classes in all dwellings. */
  List<ConnectedLoad> inDwellings(LoadClass... classes) {
    Set<LoadClass> wanted = Set.of(classes);
    List<ConnectedLoad> all = new ArrayList<>();
    for (DwellingUnit unit : dwellings) {
      for (ConnectedLoad load : unit.loads()) {
        if (wanted.contains(load.loadClass())) {
          all.add(unit.alike() == 1 ? load : load.times(unit.alike()));
        }
      }
    }
    return all;
  }

  /**
   * The same with one more load, in one dwelling of those alike.
   *
   * @param dwelling where it is added; absent for outside the dwellings
   */
  public Inputs with(ConnectedLoad load, Optional<String> dwelling) {
    List<DwellingUnit> units = new ArrayList<>();
    boolean found = false;
    for (DwellingUnit unit : dwellings) {
      if (found || !dwelling.equals(Optional.of(unit.name()))) {
        units.add(unit);
        continue;
      }
      found = true;
      units.add(unit.alone().with(load));
      if (unit.alike() > 1) {
        units.add(unit.alike(unit.alike() - 1));
      }
    }
    List<ConnectedLoad> outside = new ArrayList<>(common);
    if (!found) {
      outside.add(load);
    }
    return new Inputs(name, scope, system, rating, units, outside, measuredPeak, placement, existing, farm);
  }
}
