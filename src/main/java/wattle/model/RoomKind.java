package wattle.model;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Kinds of rooms, the wider places that each belongs to, and the names that are taken for them. Which rooms count as habitable, as
 * living space and as a place with spaced wall receptacles follows the lists of NFPA 70-2023 210.12(B), 210.52(A) and 210.70(A).
 */
public enum RoomKind {
  KITCHEN("habitable living-space wall-spaced food", "kit kitchenette galley"), //
  BATHROOM("", "bath powder powder-room ensuite restroom washroom lavatory shower wc"), //
  BEDROOM("habitable living-space wall-spaced", "bed master primary nursery guest guest-room"), //
  HALL("living-space passage", "hallway landing passage upstairs"), //
  STAIR("passage", "stairs stairway staircase"), //
  LIVING("habitable living-space wall-spaced", "lounge parlor parlour sitting great great-room greatroom"), //
  DINING("habitable living-space wall-spaced", "breakfast nook dinette"), //
  FAMILY("habitable living-space wall-spaced", "den"), //
  LAUNDRY("living-space", "wash"), //
  GARAGE("", ""), //
  BASEMENT("service-space below-grade", ""), //
  CELLAR("service-space below-grade basement", ""), //
  ATTIC("service-space", "loft"), //
  CRAWL_SPACE("service-space below-grade", "crawl crawlspace underfloor"), //
  OUTDOORS("outdoors", "outdoor outside exterior garden lawn driveway"), //
  YARD("outdoors", "backyard frontyard sideyard"), //
  DECK("outdoors deck-like", ""), //
  BALCONY("outdoors deck-like", ""), //
  PATIO("outdoors deck-like", "terrace"), //
  PORCH("outdoors deck-like", "veranda stoop entry-porch"), //
  ROOF("outdoors", "rooftop"), //
  POOL("outdoors", "poolside pool-area spa"), //
  CARPORT("outdoors", ""), //
  WORKSHOP("accessory", "shop barn studio"), //
  SHED("accessory", "outbuilding greenhouse toolshed"), //
  BOATHOUSE("accessory", "dock boat-house"), //
  LIVESTOCK("damp", "stall stalls stable stables byre cowshed henhouse hen-house chicken-coop coop pigsty milking-parlor dairy"), //
  UTILITY("service-space", "mechanical furnace-room boiler-room equipment plant"), //
  CLOSET("living-space", "wardrobe walk-in"), //
  PANTRY("food", "larder"), //
  OFFICE("habitable living-space wall-spaced", "study library"), //
  SUNROOM("habitable living-space wall-spaced", "conservatory solarium sun-room"), //
  RECREATION("habitable living-space wall-spaced", "rec rec-room playroom gameroom games media theater"), //
  FOYER("living-space passage", "entry entrance vestibule entryway"), //
  MUDROOM("damp", "mud mud-room boot-room"), //
  WET_BAR("food", "bar wetbar"), //
  STORAGE("", "store storeroom"), //
  CORRIDOR("hall living-space passage", ""), //
  LOBBY("foyer living-space passage", ""), //
  STAIRWELL("stair passage", ""), //
  LIFT_MACHINE_ROOM("service-space", "lift-room lift-machine"), //
  ELEVATOR_MACHINE_ROOM("service-space", "elevator-room elevator-machine"); //

  /** Ends of names written in one word that say what a room is, such as upbath. */
  private static final List<String> ENDS = List.of("bathroom", "bath", "bedroom", "kitchen", "garage", "closet", "porch", "patio", "deck",
      "yard", "attic", "basement", "shed", "hallway");

  private static final Set<RoomKind> WORKPLACES = EnumSet.of(OFFICE, WORKSHOP, CORRIDOR, LOBBY, STAIRWELL, LIVESTOCK,
      LIFT_MACHINE_ROOM, ELEVATOR_MACHINE_ROOM);

  private static final Map<String, RoomKind> BY_NAME = byName();

  private final String word = name().toLowerCase(Locale.ROOT).replace('_', '-');
  private final Set<String> places;
  private final List<String> names;

  RoomKind(String places, String names) {
    Set<String> all = new TreeSet<>(words(places));
    all.add(word);
    this.places = Set.copyOf(all);
    this.names = words(names);
  }

  private static List<String> words(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" "));
  }

  private static Map<String, RoomKind> byName() {
    Map<String, RoomKind> found = new java.util.HashMap<>();
    for (RoomKind kind : values()) {
      found.put(kind.word, kind);
      kind.names.forEach(n -> found.put(n, kind));
    }
    return Map.copyOf(found);
  }

  /** As plans write it behind {@code is}. */
  public String word() {
    return word;
  }

  /** Its own word, and those of the wider places that it belongs to, such as outdoors of a yard. */
  public Set<String> places() {
    return places;
  }

  /** Whether only dwellings have such a room, as they do bedrooms; shops and workplaces have offices, halls and baths too. */
  public boolean isOfDwellings() {
    return places.contains("habitable") && this != OFFICE;
  }

  /** Whether a building with such a room is a place of work or one of many dwellings, unless it has rooms of dwellings too. */
  public boolean isOfWorkplaces() {
    return WORKPLACES.contains(this);
  }

  /** All of them as plans write them. */
  public static List<String> allWords() {
    return Arrays.stream(values()).map(RoomKind::word).toList();
  }

  /** The kind that a plan names with its own word. */
  public static Optional<RoomKind> of(String word) {
    return Optional.ofNullable(BY_NAME.get(word)).filter(k -> k.word.equals(word));
  }

  /**
   * What a name or a label of a room says it is: all of it, its last words, or the beginning of a kind such as {@code bed}.
   *
   * @param text such as {@code back-yard}, {@code bath2} or {@code Wet bar}
   */
  public static Optional<RoomKind> named(String text) {
    String name = text.toLowerCase(Locale.ROOT).strip().replaceAll("[^\\p{L}0-9]+", "-").replaceAll("^-+|-+$", "").replaceAll("-?[0-9]+$",
        "");
    for (String end = name; !end.isEmpty();) {
      Optional<RoomKind> found = whole(end);
      if (found.isPresent()) {
        return found;
      }
      int next = end.indexOf('-');
      end = next < 0 ? "" : end.substring(next + 1);
    }
    return ENDS.stream().filter(name::endsWith).findFirst().map(BY_NAME::get);
  }

  private static Optional<RoomKind> whole(String name) {
    RoomKind exact = BY_NAME.get(name);
    if (exact == null && name.endsWith("-room")) {
      exact = BY_NAME.get(name.substring(0, name.length() - "-room".length()));
    }
    return exact != null || name.length() < 3
        ? Optional.ofNullable(exact)
        : Arrays.stream(values()).filter(k -> k.word.startsWith(name)).findFirst();
  }
}
