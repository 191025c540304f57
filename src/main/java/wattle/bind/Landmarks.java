package wattle.bind;

import java.util.Set;

/**
 * Names that the chains of branches lead to.
 *
 * @param panels names of panels, at which a branch starts
 * @param rooms with the boxes and devices in them
 * @param raceways names of raceways
 */
record Landmarks(Set<String> panels, RoomBinder.Bound rooms, Set<String> raceways) {
  static final Landmarks NONE = new Landmarks(Set.of(), RoomBinder.Bound.of(java.util.List.of()), Set.of());

  /** Whether every name leads where it leads there. */
  boolean areAs(Landmarks others) {
    return rooms.places() == others.rooms.places() && panels.equals(others.panels) && raceways.equals(others.raceways);
  }
}
