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
  /** Of two things that are equally alike the one in the same room or placement is nearer. */
  private static final double ELSEWHERE = 0.99;

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
    boolean sameKind = properties.getOrDefault("kind", "").equals(other.properties.getOrDefault("kind", ""));
    if (!sameKind && thing.matched().kind() != Thing.Kind.ROOM) { // a room whose name said what it is may be the same without it
      return 0;
    }
    // One receptacle taken away here and one put in there are two events; a labeled range that moved is one.
    boolean elsewhere = !container().equals(other.container());
    if (elsewhere && isInRoom() && (!properties.equals(other.properties) || !isDistinct())) {
      return 0;
    }
    Set<Map.Entry<String, String>> both = new HashSet<>(properties.entrySet());
    both.retainAll(other.properties.entrySet());
    int either = properties.size() + other.properties.size() - both.size();
    double part = either == 0 ? 1 : (double) both.size() / either;
    return elsewhere ? part * ELSEWHERE : part;
  }

  private boolean isDistinct() {
    return properties.keySet().stream().anyMatch(p -> p.equals("label") || p.startsWith("load"));
  }

  private boolean isInRoom() {
    return thing.matched().kind() == Thing.Kind.BOX || thing.matched().kind() == Thing.Kind.DEVICE;
  }

  /** The room of a device, the placement of what a pattern has; empty for a thing of the plan. */
  private String container() {
    String name = thing.matched().name();
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(0, dot);
  }
}
