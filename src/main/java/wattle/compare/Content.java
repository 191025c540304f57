package wattle.compare;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a thing is apart from its name: its properties, and of a room or branch also what is in it.
 *
 * @param properties with every name in them as the later revision has it
 */
record Content(Described thing, Map<String, String> properties) {
  static Content of(Described thing, List<Described> all) {
    Map<String, String> content = new TreeMap<>(thing.comparable());
    String name = thing.matched().name();
    String inside = switch (thing.matched().kind()) {
      case ROOM -> name + ".";
      case BRANCH -> name + " to ";
      default -> "";
    };
    if (!inside.isEmpty()) {
      for (Described other : all) {
        boolean within = thing.matched().kind() == Thing.Kind.BRANCH ? other.matched().kind() == Thing.Kind.RUN : other.isDeviceIn(name);
        if (within && other.matched().name().startsWith(inside)) {
          Map<String, String> its = other.comparable();
          content.put("in it " + other.matched().name().substring(inside.length()), its.getOrDefault("kind", its.toString()));
        }
      }
    }
    return new Content(thing, content);
  }

  /** How much of all that the two are they have in common, from 0 to 1; 0 for what cannot be the same thing. */
  double shared(Content other) {
    if (!properties.getOrDefault("kind", "").equals(other.properties.getOrDefault("kind", ""))) {
      return 0;
    }
    // One receptacle taken away here and one put in there are two events; a labelled range that moved is one.
    boolean elsewhere = !room().equals(other.room());
    if (elsewhere && (!properties.equals(other.properties) || !isDistinct())) {
      return 0;
    }
    Set<Map.Entry<String, String>> both = new HashSet<>(properties.entrySet());
    both.retainAll(other.properties.entrySet());
    int either = properties.size() + other.properties.size() - both.size();
    return either == 0 ? 1 : (double) both.size() / either;
  }

  private boolean isDistinct() {
    return properties.keySet().stream().anyMatch(p -> p.equals("label") || p.startsWith("load"));
  }

  private String room() {
    String name = thing.matched().name();
    boolean inRoom = thing.matched().kind() == Thing.Kind.BOX || thing.matched().kind() == Thing.Kind.DEVICE;
    int dot = inRoom ? name.lastIndexOf('.') : -1;
    return dot < 0 ? "" : name.substring(0, dot);
  }
}
