package wattle.worksheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Room;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Floor areas of dwellings and rooms, and where they contradict each other. */
final class Areas {
  /** Places that the codes leave out of the floor area: NFPA 70 220.41, CSA C22.1 8-110. */
  private static final Set<String> UNCOUNTED = Set.of("garage", "outdoors", "porch", "deck", "yard", "roof", "balcony", "patio",
      "pool", "carport", "shed", "boathouse", "crawl-space", "attic", "livestock");

  static final String ESTIMATED = "room-area-estimated";

  /** Name of the finding without which the rest of a load can still be calculated. */
  static final String MISSING = "room-area-missing";

  private static final Set<String> BASEMENT = Set.of("basement", "cellar");

  /** Rooms that are lived in wherever they are, so that those of an outbuilding are counted by floor area as those of the house. */
  private static final Set<String> LIVED_IN = Set.of("kitchen", "bathroom", "bedroom", "living", "dining", "family", "recreation", "office",
      "sunroom", "laundry");

  private final House house;

  Areas(House house) {
    this.house = house;
  }

  /** Whether a room is part of the floor area of its dwelling. */
  boolean counts(String room) {
    return kind(room).map(k -> !UNCOUNTED.contains(k)).orElse(true);
  }

  /** Whether a room of an outbuilding is lived in. */
  boolean isLivedIn(String room) {
    return kind(room).map(LIVED_IN::contains).orElse(false);
  }

  /** Square meters that a dwelling states beyond those of these rooms; absent where it states none, or less. */
  Optional<Double> rest(Dwelling dwelling, Collection<String> rooms) {
    Quantity floor = dwelling.facts().get("floor-area");
    if (floor == null) {
      return Optional.empty();
    }
    double whole = floor.si() + Optional.ofNullable(dwelling.facts().get("basement-area")).map(Quantity::si).orElse(0.0);
    double rest = whole - rooms.stream().flatMap(r -> of(r).stream()).mapToDouble(Quantity::si).sum();
    return rest > 0 ? Optional.of(rest) : Optional.empty();
  }

  /** Rooms of a feeder that state no area, where it is not certain how much of the rest of the dwelling is theirs. */
  static Objection estimated(String feeder, Collection<String> rooms, Quantity rest) {
    return Objection.warning(
        ESTIMATED, feeder, "the feeder of '" + feeder + "' serves rooms whose area is not stated: " + String.join(", ", rooms),
        "Other such rooms are fed from elsewhere, so the whole of the floor area that no room states, " + rest
            + ", is counted for these: the most that it can be.",
        "write area 14 m2, with the true figure, after the name of each room");
  }

  private Optional<String> kind(String room) {
    return Optional.ofNullable(house.rooms().get(room)).flatMap(Room::kind);
  }

  Optional<Quantity> of(String room) {
    return Optional.ofNullable(house.rooms().get(room)).map(r -> r.facts().get("area"));
  }

  void missing(String room, String feeder, List<Objection> objections) {
    Objection objection = Objection.error(
        MISSING, room, "the area of room '" + room + "' is not stated",
        "The feeder of '" + feeder + "' serves its lights or outlets, and those are counted by floor area.",
        "write area 14 m2, with the true figure, after the name of the room");
    if (!objections.contains(objection)) {
      objections.add(objection);
    }
  }

  /** How many dwellings a block stands for. */
  int alike(Dwelling dwelling, List<Objection> objections) {
    Quantity stated = dwelling.facts().get("dwellings");
    if (stated == null) {
      return 1;
    }
    if (stated.si() < 1 || stated.si() != Math.rint(stated.si()) || stated.si() > 100_000) {
      objections.add(
          Objection.error(
              "dwellings-not-whole", dwelling.name().orElse(""), "'dwellings' is " + stated + ", which is not a count of dwellings",
              "It gives the number of identical dwellings.", "write a whole number from 1 on"));
      return 1;
    }
    return (int) stated.si();
  }

  /** Rooms that are larger together than the dwelling. */
  List<Objection> contradictions(Dwelling dwelling, List<UnitReader.Fed> fed) {
    List<Objection> objections = new ArrayList<>();
    String name = dwelling.name().orElse("");
    Map<String, Quantity> basement = new LinkedHashMap<>();
    Map<String, Quantity> floors = new LinkedHashMap<>();
    for (UnitReader.Fed each : fed) {
      String room = each.device().room();
      of(room).filter(a -> counts(room))
          .ifPresent(a -> (kind(room).map(BASEMENT::contains).orElse(false) ? basement : floors).put(room, a));
    }
    boolean apart = dwelling.facts().containsKey("basement-area");
    if (!apart) {
      floors.putAll(basement);
    }
    compare(name, "floor-area", dwelling, floors, objections);
    if (apart) {
      compare(name, "basement-area", dwelling, basement, objections);
    }
    return objections;
  }

  private static void compare(
      String name, String fact, Dwelling dwelling, Map<String, Quantity> rooms, List<Objection> objections) {
    Quantity stated = dwelling.facts().get(fact);
    double sum = rooms.values().stream().mapToDouble(Quantity::si).sum();
    // Areas of rooms are measured inside the walls and stated to a figure or two.
    if (stated != null && sum > stated.si() * 1.01) {
      objections.add(
          Objection.warning(
              "areas-contradict", name,
              "the rooms have " + Quantity.of(sum, Units.SQUARE_METER).shownIn(stated.unit()) + " together, and '" + fact + "' says "
                  + stated,
              "Load calculations go by '" + fact + "', and it is less than the rooms in it: " + terms(rooms) + ".",
              "correct '" + fact + "' or the area of a room"));
    }
  }

  private static String terms(Map<String, Quantity> rooms) {
    return String.join(", ", rooms.entrySet().stream().limit(6).map(e -> e.getKey() + " " + e.getValue()).toList())
        + (rooms.size() > 6 ? " and " + (rooms.size() - 6) + " more" : "");
  }
}
