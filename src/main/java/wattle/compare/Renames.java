package wattle.compare;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import wattle.model.House;

/**
 * Names that changed between two revisions. Things of the same name are the same. Of those left over on both sides a room,
 * device, branch or panel is the one that has all of its content, where there is just one such; then the one that has
 * most of it, where each is nearest to the other, so that a thing both renamed and altered is still known. Reading the
 * revisions in the other order gives the same pairs.
 */
final class Renames {
  /** Kinds of which a renamed one is recognized, containers before what they hold. */
  private static final List<Thing.Kind> RENAMABLE = List.of(
      Thing.Kind.DWELLING, Thing.Kind.SERVICE, Thing.Kind.PANEL, Thing.Kind.RACEWAY, Thing.Kind.ROOM, Thing.Kind.BOX,
      Thing.Kind.DEVICE, Thing.Kind.BRANCH, Thing.Kind.TRIAL);

  /** Part of all that either of two things is which both must be, to be taken for one. */
  private static final double LEAST_SHARED = 0.5;

  private static final Pattern WORD = Pattern.compile("[\\p{L}\\d_]+(?:[.-][\\p{L}\\d_]+)*");

  private final Map<Thing, String> names = new TreeMap<>();
  /** Renamed things, each as the later revision has it. */
  private final Set<Thing> renamed = new HashSet<>();
  /** Placements of patterns by their earlier names. */
  private final Map<String, String> placements = new TreeMap<>();

  private Renames() {}

  static Renames none() {
    return new Renames();
  }

  /** The names of two houses whose things stand in the same order, one by one; what one house alone has is left out. */
  static Renames inOrder(House before, House after) {
    Renames renames = new Renames();
    renames.zip(Thing.Kind.DWELLING, before.dwellings(), after.dwellings());
    renames.zip(Thing.Kind.SERVICE, before.services(), after.services());
    renames.zip(Thing.Kind.PANEL, before.panels(), after.panels());
    renames.zip(Thing.Kind.BRANCH, before.branches(), after.branches());
    renames.zip(Thing.Kind.RACEWAY, before.raceways(), after.raceways());
    renames.zip(Thing.Kind.ROOM, before.rooms(), after.rooms());
    renames.zip(Thing.Kind.BOX, before.boxes(), after.boxes());
    renames.zip(Thing.Kind.DEVICE, before.devices(), after.devices());
    renames.zip(Thing.Kind.TRIAL, before.trials(), after.trials());
    return renames;
  }

  private void zip(Thing.Kind kind, Map<String, ?> before, Map<String, ?> after) {
    Iterator<String> now = after.keySet().iterator();
    for (String old : before.keySet()) {
      if (now.hasNext()) {
        put(new Thing(kind, old), now.next());
      }
    }
  }

  private void put(Thing thing, String later) {
    names.put(thing, later);
    renamed.add(new Thing(thing.kind(), later));
  }

  static Renames between(House before, House after) {
    Renames renames = new Renames();
    Map<Thing, Map<String, String>> now = Description.of(after);
    for (Thing.Kind kind : RENAMABLE) {
      List<Described> old = Described.of(before, renames);
      Set<Thing> known = new HashSet<>(old.stream().map(Described::matched).toList());
      List<Content> lost = old.stream().filter(d -> d.matched().kind() == kind && !now.containsKey(d.matched()))
          .map(d -> Content.of(d, old)).toList();
      List<Described> later = Described.of(after, none());
      List<Content> found = later.stream().filter(d -> d.matched().kind() == kind && !known.contains(d.matched()))
          .map(d -> Content.of(d, later)).toList();
      renames.pair(lost, found);
      renames.place(before, after);
    }
    return renames;
  }

  /** A placement of a pattern has another name where something that goes by its name has: all that is in it follows. */
  private void place(House before, House after) {
    Map<Thing, String> known = Map.copyOf(names);
    known.forEach(
        (thing, name) -> {
          if (before.placements().containsKey(thing.name()) && !after.placements().containsKey(thing.name())
              && after.placements().containsKey(name)) {
            placements.put(thing.name(), name);
          }
        });
  }

  private void pair(List<Content> lost, List<Content> found) {
    List<Content> from = new ArrayList<>(lost);
    List<Content> to = new ArrayList<>(found);
    pair(from, to, 1);
    pair(from, to, LEAST_SHARED);
  }

  /** Pairs that are nearest to each other, each to no second one as near: which became which is never guessed. */
  private void pair(List<Content> from, List<Content> to, double least) {
    List<Content[]> pairs = new ArrayList<>();
    for (Content one : from) {
      Optional<Content> other = nearest(one, to, least);
      if (other.isPresent() && nearest(other.get(), from, least).equals(Optional.of(one))) {
        pairs.add(new Content[]{one, other.get()});
      }
    }
    for (Content[] pair : pairs) {
      put(pair[0].thing().own(), pair[1].thing().own().name());
      from.remove(pair[0]);
      to.remove(pair[1]);
    }
  }

  private static Optional<Content> nearest(Content one, List<Content> others, double least) {
    double best = 0;
    Optional<Content> nearest = Optional.empty();
    for (Content other : others) {
      double shared = one.shared(other);
      if (shared >= least && shared >= best) {
        nearest = shared > best ? Optional.of(other) : Optional.empty();
        best = shared;
      }
    }
    return nearest;
  }

  /** The renamed things, each as the earlier revision has it, with its later name. */
  Map<Thing, String> all() {
    return Map.copyOf(names);
  }

  /** The same read from the later revision to the earlier. */
  Renames mirrored() {
    Renames mirrored = new Renames();
    names.forEach((thing, name) -> mirrored.put(new Thing(thing.kind(), name), thing.name()));
    placements.forEach((name, later) -> mirrored.placements.put(later, name));
    return mirrored;
  }

  /** A sentence of the earlier revision with every name that changed put as the later has it. */
  String inSentence(String sentence) {
    return WORD.matcher(sentence).replaceAll(m -> {
      String later = later(m.group());
      String trial = names.get(new Thing(Thing.Kind.TRIAL, m.group()));
      return Matcher.quoteReplacement(later.equals(m.group()) && trial != null ? trial : later);
    });
  }

  /**
   * A thing of the earlier revision by its later name. What is only spoken of there, such as a branch that a breaker names and that could
   * not be read, is not the thing that has come to that name since.
   */
  Thing later(Thing thing) {
    Thing later = named(thing);
    return later.equals(thing) && renamed.contains(thing) && !thing.name().equals(names.get(thing))
        ? new Thing(thing.kind(), thing.name() + " before")
        : later;
  }

  private Thing named(Thing thing) {
    String whole = names.get(thing);
    if (whole == null && thing.kind() == Thing.Kind.BOX) {
      whole = names.get(new Thing(Thing.Kind.DEVICE, thing.name())); // a device's own box goes by its name
    }
    if (whole != null) {
      return new Thing(thing.kind(), whole);
    }
    boolean inRoom = thing.kind() == Thing.Kind.BOX || thing.kind() == Thing.Kind.DEVICE;
    int dot = inRoom ? thing.name().lastIndexOf('.') : -1;
    String room = dot < 0 ? null : names.get(new Thing(Thing.Kind.ROOM, thing.name().substring(0, dot)));
    return new Thing(thing.kind(), room == null ? placed(thing.name()) : room + thing.name().substring(dot));
  }

  /** A name within a placement, such as {@code flat3.bath}, by what the placement is called later. */
  private String placed(String name) {
    for (int dot = name.lastIndexOf('.'); dot > 0; dot = name.lastIndexOf('.', dot - 1)) {
      String later = placements.get(name.substring(0, dot));
      if (later != null) {
        return later + name.substring(dot);
      }
    }
    return name;
  }

  /** The later name of something that is no trial, and of which the text does not tell the kind, such as {@code kitchen.c1.upper}. */
  String later(String name) {
    for (Thing.Kind kind : RENAMABLE) {
      String whole = kind == Thing.Kind.TRIAL ? null : names.get(new Thing(kind, name));
      if (whole != null) {
        return whole;
      }
    }
    int slots = name.indexOf('/'); // a breaker goes by its panel
    int end = slots >= 0 ? slots : name.lastIndexOf('.');
    return end < 0 ? name : later(name.substring(0, end)) + name.substring(end);
  }
}
