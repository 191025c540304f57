package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
 */
public record Inputs(
    String name,
    Scope scope,
    SupplySystem system,
    Optional<Quantity> rating,
    List<DwellingUnit> dwellings,
    List<ConnectedLoad> common,
    Optional<Quantity> measuredPeak) {
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

  /** The same with one more load in the first dwelling. */
  public Inputs with(ConnectedLoad load) {
    if (dwellings.isEmpty()) {
      List<ConnectedLoad> more = new ArrayList<>(common);
      more.add(load);
      return new Inputs(name, scope, system, rating, dwellings, more, measuredPeak);
    }
    DwellingUnit first = dwellings.get(0);
    List<ConnectedLoad> loads = new ArrayList<>(first.loads());
    loads.add(load);
    List<DwellingUnit> units = new ArrayList<>(dwellings);
    units.set(
        0,
        new DwellingUnit(
            first.name(), first.floorArea(), first.basementArea(), first.smallAppliance(), first.laundry(), loads,
            first.outlets(), first.alike()));
    return new Inputs(name, scope, system, rating, units, common, measuredPeak);
  }
}
