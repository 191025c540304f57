package wattle.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import wattle.finding.Finding;
import wattle.model.House;

/**
 * Two revisions of a house compared. Things are matched by name; of those left over on both sides, by what they are: a
 * room, device, branch or panel that has every property of one that went is that one, renamed. What refers to a renamed
 * thing has not changed by that.
 *
 * @param changes in the order of kind, then name
 * @param appeared findings that only the later revision has
 * @param gone findings that only the earlier one had
 */
public record Comparison(List<Change> changes, List<Finding> appeared, List<Finding> gone) {
  /** Kinds of which a renamed one is recognised, containers before what they hold. */
  private static final List<Thing.Kind> RENAMABLE =
      List.of(Thing.Kind.SERVICE, Thing.Kind.PANEL, Thing.Kind.ROOM, Thing.Kind.BOX, Thing.Kind.DEVICE, Thing.Kind.BRANCH, Thing.Kind.TRIAL);

  public Comparison {
    changes = List.copyOf(changes);
    appeared = List.copyOf(appeared);
    gone = List.copyOf(gone);
  }

  /** Whether anything differs. */
  public boolean isEmpty() {
    return changes.isEmpty() && appeared.isEmpty() && gone.isEmpty();
  }

  /** Compares an earlier revision with a later one. */
  public static Comparison of(House before, List<Finding> findingsBefore, House after, List<Finding> findingsAfter) {
    Map<Thing, String> renames = renames(before, after);
    SortedMap<Thing, Map<String, String>> old = Description.of(before, renaming(renames));
    SortedMap<Thing, Map<String, String>> now = Description.of(after);
    List<Change> changes = new ArrayList<>();
    renames.forEach((thing, name) -> changes.add(new Change.Renamed(new Thing(thing.kind(), name), thing.name())));
    TreeSet<Thing> all = new TreeSet<>(old.keySet());
    all.addAll(now.keySet());
    for (Thing thing : all) {
      if (!now.containsKey(thing)) {
        changes.add(new Change.Removed(thing, facts(old.get(thing))));
      } else if (!old.containsKey(thing)) {
        changes.add(new Change.Added(thing, facts(now.get(thing))));
      } else {
        addChanged(changes, thing, old.get(thing), now.get(thing));
      }
    }
    changes.sort(java.util.Comparator.comparing(Change::thing));
    return new Comparison(changes, without(findingsAfter, findingsBefore), without(findingsBefore, findingsAfter));
  }

  private static List<String> facts(Map<String, String> properties) {
    return properties.entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).toList();
  }

  private static void addChanged(List<Change> changes, Thing thing, Map<String, String> before, Map<String, String> after) {
    TreeSet<String> names = new TreeSet<>(before.keySet());
    names.addAll(after.keySet());
    for (String name : names) {
      String was = before.getOrDefault(name, "");
      String is = after.getOrDefault(name, "");
      if (!was.equals(is)) {
        changes.add(new Change.Changed(thing, name, was, is));
      }
    }
  }

  private static List<Finding> without(List<Finding> findings, List<Finding> others) {
    List<String> known = new ArrayList<>(others.stream().map(Comparison::told).toList());
    return findings.stream().filter(f -> !known.remove(told(f))).toList();
  }

  private static String told(Finding finding) {
    return finding.rule() + " " + finding.headline() + finding.silenced().map(s -> " silenced").orElse("");
  }

  // ---- Names that changed

  private static UnaryOperator<Thing> renaming(Map<Thing, String> renames) {
    return thing -> {
      String whole = renames.get(thing);
      if (whole != null) {
        return new Thing(thing.kind(), whole);
      }
      int dot = thing.name().indexOf('.');
      String room = dot < 0 ? null : renames.get(new Thing(Thing.Kind.ROOM, thing.name().substring(0, dot)));
      return room == null ? thing : new Thing(thing.kind(), room + thing.name().substring(dot));
    };
  }

  private static Map<Thing, String> renames(House before, House after) {
    Map<Thing, String> renames = new TreeMap<>();
    SortedMap<Thing, Map<String, String>> now = Description.of(after);
    for (Thing.Kind kind : RENAMABLE) {
      SortedMap<Thing, Map<String, String>> old = Description.of(before, renaming(renames));
      Map<Thing, Thing> original = new HashMap<>();
      UnaryOperator<Thing> renaming = renaming(renames);
      Description.of(before).keySet().forEach(t -> original.put(renaming.apply(t), t));
      Map<Map<String, String>, List<Thing>> lost = leftOver(kind, old, now);
      Map<Map<String, String>, List<Thing>> found = leftOver(kind, now, old);
      lost.forEach(
          (content, things) -> {
            List<Thing> others = found.getOrDefault(content, List.of());
            // Several alike on either side: which became which cannot be told, and saying so would be a guess.
            if (things.size() == 1 && others.size() == 1) {
              renames.put(original.getOrDefault(things.get(0), things.get(0)), others.get(0).name());
            }
          });
    }
    return renames;
  }

  private static Map<Map<String, String>, List<Thing>> leftOver(
      Thing.Kind kind, SortedMap<Thing, Map<String, String>> one, SortedMap<Thing, Map<String, String>> other) {
    Map<Map<String, String>, List<Thing>> byContent = new HashMap<>();
    one.forEach(
        (thing, properties) -> {
          if (thing.kind() == kind && !other.containsKey(thing)) {
            byContent.computeIfAbsent(content(thing, properties, one), c -> new ArrayList<>()).add(thing);
          }
        });
    return byContent;
  }

  /** What a thing is apart from its name: its properties, and of a room or branch also what is in it. */
  private static Map<String, String> content(Thing thing, Map<String, String> properties, SortedMap<Thing, Map<String, String>> all) {
    Map<String, String> content = new TreeMap<>(properties);
    String inside = switch (thing.kind()) {
      case ROOM -> thing.name() + ".";
      case BRANCH -> thing.name() + " to ";
      default -> "";
    };
    if (!inside.isEmpty()) {
      all.forEach(
          (other, its) -> {
            if (other.name().startsWith(inside) && other.kind() != Thing.Kind.BOX) {
              content.put("in it " + other.name().substring(inside.length()), its.getOrDefault("kind", its.toString()));
            }
          });
    }
    return content;
  }

  /** The comparison of the later revision with the earlier. */
  public Comparison mirrored() {
    List<Change> mirrored = new ArrayList<>(changes.stream().map(Change::mirrored).toList());
    mirrored.sort(java.util.Comparator.comparing(Change::thing));
    return new Comparison(mirrored, gone, appeared);
  }
}
