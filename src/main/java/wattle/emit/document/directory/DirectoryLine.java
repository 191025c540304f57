package wattle.emit.document.directory;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import wattle.model.Breaker;

/**
 * What stands in one slot of a panel, as its directory tells it.
 *
 * @param slots as marked in the enclosure: {@code 2+4}
 * @param breaker rating and protection; empty for an empty slot
 * @param words what it is for, in plain words
 * @param rooms titles of the rooms that it serves, in the order of the plan
 * @param notes what must not be overlooked: a source behind it, a neutral shared with another handle
 * @param of the breaker; absent for an empty slot
 */
record DirectoryLine(
    String slots, String breaker, String words, List<String> rooms, List<String> notes, Optional<Breaker> of) {
  DirectoryLine {
    rooms = List.copyOf(rooms);
    notes = List.copyOf(notes);
  }

  /** Rooms that the words do not name already. */
  List<String> unsaidRooms() {
    String said = words.toLowerCase(Locale.ROOT);
    return rooms.stream().filter(r -> !said.contains(r.toLowerCase(Locale.ROOT))).toList();
  }

  static DirectoryLine empty(String slot) {
    return new DirectoryLine(slot, "", "empty", List.of(), List.of(), Optional.empty());
  }
}
