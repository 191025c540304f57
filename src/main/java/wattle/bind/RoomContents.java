package wattle.bind;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import wattle.model.Box;

/** Names of what is in each room: worked out where something is first missed, for all who miss something after that. */
final class RoomContents {
  private final Map<String, Box> boxes;
  private final Map<String, UnwiredDevice> devices;
  private Map<String, Set<String>> names = Map.of();

  RoomContents(Map<String, Box> boxes, Map<String, UnwiredDevice> devices) {
    this.boxes = boxes;
    this.devices = devices;
  }

  /** Full names of boxes and devices; none for a room that has none. */
  synchronized Set<String> of(String room) {
    if (names.isEmpty()) {
      Map<String, Set<String>> all = new HashMap<>();
      boxes.values().forEach(b -> all.computeIfAbsent(b.room(), r -> new TreeSet<>()).add(b.name()));
      devices.values().forEach(d -> all.computeIfAbsent(d.room(), r -> new TreeSet<>()).add(d.name()));
      names = all;
    }
    return names.getOrDefault(room, Set.of());
  }
}
