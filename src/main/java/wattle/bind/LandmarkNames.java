package wattle.bind;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import wattle.finding.KnownNames;

/** Names that a misspelled one in a chain may have meant; those in each room are put together where something is first missed. */
final class LandmarkNames {
  private static final KnownNames NOTHING = new KnownNames(Set.of());

  private final RoomBinder.Bound bound;
  private final KnownNames panels;
  private final KnownNames raceways;
  private final KnownNames rooms;
  private final KnownNames boxes;
  private Map<String, KnownNames> contents = Map.of();

  LandmarkNames(Landmarks landmarks) {
    this.bound = landmarks.rooms();
    this.panels = new KnownNames(landmarks.panels());
    this.raceways = new KnownNames(landmarks.raceways());
    this.rooms = new KnownNames(bound.rooms().keySet());
    this.boxes = new KnownNames(bound.boxes().keySet());
  }

  KnownNames panels() {
    return panels;
  }

  KnownNames raceways() {
    return raceways;
  }

  KnownNames rooms() {
    return rooms;
  }

  KnownNames boxes() {
    return boxes;
  }

  /** Full names of boxes and devices in a room, in order; none for a room that has none. */
  synchronized KnownNames in(String room) {
    if (contents.isEmpty()) {
      Map<String, Set<String>> all = new HashMap<>();
      bound.boxes().values().forEach(b -> all.computeIfAbsent(b.room(), r -> new TreeSet<>()).add(b.name()));
      bound.devices().values().forEach(d -> all.computeIfAbsent(d.room(), r -> new TreeSet<>()).add(d.name()));
      contents = new HashMap<>();
      all.forEach((name, inIt) -> contents.put(name, new KnownNames(inIt)));
    }
    return contents.getOrDefault(room, NOTHING);
  }
}
