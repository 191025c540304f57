package wattle.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

  /** Only one of those that are alike. */
  DwellingUnit alone() {
    return alike == 1 ? this : alike(1);
  }

  /** So many in all. */
  DwellingUnit alike(int number) {
    return new DwellingUnit(name, floorArea, basementArea, smallAppliance, laundry, loads, outlets, number);
  }

  /** The same with one more load. */
  DwellingUnit with(ConnectedLoad load) {
    List<ConnectedLoad> more = new ArrayList<>(loads);
    more.add(load);
    return new DwellingUnit(name, floorArea, basementArea, smallAppliance, laundry, more, outlets, alike);
  }

  /** So many dwellings like this one. */
  public DwellingUnit times(int factor) {
    return alike(alike * factor);
  }
}
