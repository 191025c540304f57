package wattle.compare;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import wattle.model.House;

/**
 * A thing in the words of its own revision, and in those of the other one.
 *
 * @param own the thing as its plan names it
 * @param properties as its plan states them
 * @param matched the same thing by the name that the other revision has for it
 * @param comparable its properties with every name in them put so
 */
record Described(Thing own, Map<String, String> properties, Thing matched, Map<String, String> comparable) {
  /** Whether it is a device of a room, which is known by the name of the later revision. */
  boolean isDeviceIn(String room) {
    return matched.kind() == Thing.Kind.DEVICE && matched.name().lastIndexOf('.') == room.length() && matched.name().startsWith(room);
  }

  /** All things of the earlier of two revisions. */
  static List<Described> of(House house, Renames renames) {
    List<Described> all = new ArrayList<>();
    Iterator<Map.Entry<Thing, Map<String, String>>> matched = Description.inOrder(house, renames).entrySet().iterator();
    Description.inOrder(house, Renames.none())
        .forEach(
            (thing, properties) -> {
              Map.Entry<Thing, Map<String, String>> other = matched.next();
              all.add(new Described(thing, properties, other.getKey(), other.getValue()));
            });
    return all;
  }
}
