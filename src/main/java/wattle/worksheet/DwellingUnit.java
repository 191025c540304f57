package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;

/**
 * A dwelling as load calculations see it, or the part of one that a feeder serves.
 *
 * @param floorArea counted floor area, basement left out; absent where a plan does not say
 * @param basementArea absent where there is none
 * @param loads with a class of their own; general lighting and outlets are in the floor area
 * @param outlets lights and receptacles in places that are in no counted floor area, where those count
 * @param alike how many dwellings are just so; at least 1
 */
public record DwellingUnit(
    String name,
    Optional<Quantity> floorArea,
    Optional<Quantity> basementArea,
    Circuits smallAppliance,
    Circuits laundry,
    List<ConnectedLoad> loads,
    List<ConnectedLoad> outlets,
    int alike) {
  public DwellingUnit {
    loads = List.copyOf(loads);
    outlets = List.copyOf(outlets);
    if (alike < 1) {
      throw new IllegalArgumentException(name + ": " + alike + " alike");
    }
  }

  /** One of those alike with what is added to it and nothing else, in no floor area: that is measured. */
  DwellingUnit addedAlone() {
    return new DwellingUnit(
        name, Optional.empty(), Optional.empty(), Circuits.NONE, Circuits.NONE, loads.stream().filter(ConnectedLoad::added).toList(),
        outlets.stream().filter(ConnectedLoad::added).toList(), 1);
  }

  /** Whether a range is there already. */
  boolean hasStandingRange() {
    return loads.stream().anyMatch(l -> l.loadClass() == LoadClass.COOKING && !l.added() && l.voltAmperes() > 0);
  }

  /** Only one of those that are alike. */
  DwellingUnit alone() {
    return alike == 1 ? this : alike(1);
  }

  /** So many in all. */
  DwellingUnit alike(int number) {
    return new DwellingUnit(name, floorArea, basementArea, smallAppliance, laundry, loads, outlets, number);
  }

  /** The same with these loads. */
  DwellingUnit withLoads(List<ConnectedLoad> others) {
    return new DwellingUnit(name, floorArea, basementArea, smallAppliance, laundry, others, outlets, alike);
  }

  /** The same with one more load. */
  DwellingUnit with(ConnectedLoad load) {
    List<ConnectedLoad> more = new ArrayList<>(loads);
    more.add(load);
    return withLoads(more);
  }

  /** So many dwellings like this one. */
  public DwellingUnit times(int factor) {
    return alike(alike * factor);
  }
}
