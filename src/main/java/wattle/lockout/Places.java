package wattle.lockout;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Point;

/** The places of a house by name. A device's own box bears its name, and is then the same place. */
public final class Places {
  /** Words that say which of several things with one name is meant. */
  public static final List<String> KINDS = List.of("device", "box", "room", "branch", "panel");

  private Places() {}

  /** Every place with this name; more than one where, say, a room and a branch are called the same. */
  public static List<Place> named(House house, String name) {
    List<Place> found = new ArrayList<>();
    for (String kind : KINDS) {
      boolean sameBox = kind.equals("box") && house.devices().containsKey(name) && house.devices().get(name).box().equals(name);
      if (!sameBox && finders(house).get(kind).names.contains(name)) {
        found.add(finders(house).get(kind).place.apply(name));
      }
    }
    return found;
  }

  /** The place of this kind with this name; empty list where there is none. */
  public static List<Place> named(House house, String kind, String name) {
    Finder finder = finders(house).get(kind);
    return finder != null && finder.names.contains(name) ? List.of(finder.place.apply(name)) : List.of();
  }

  /** Names of all places of a kind. */
  public static Set<String> names(House house, String kind) {
    Finder finder = finders(house).get(kind);
    return finder == null ? Set.of() : finder.names;
  }

  private record Finder(Set<String> names, Function<String, Place> place) {}

  private static Map<String, Finder> finders(House house) {
    Map<String, Finder> finders = new LinkedHashMap<>();
    finders.put("device", new Finder(house.devices().keySet(), n -> new Place.AtDevice(n, house.devices().get(n).box())));
    finders.put("box", new Finder(house.boxes().keySet(), Place.AtBox::new));
    finders.put("room", new Finder(house.rooms().keySet(), n -> new Place.InRoom(n, house.rooms().get(n).boxes())));
    finders.put("branch", new Finder(house.branches().keySet(), n -> new Place.OnBranch(n, boxesOf(house.branches().get(n)))));
    finders.put("panel", new Finder(house.panels().keySet(), Place.InPanel::new));
    return finders;
  }

  private static List<String> boxesOf(Branch branch) {
    return branch.points().stream().map(Point::box).flatMap(java.util.Optional::stream).toList();
  }
}
