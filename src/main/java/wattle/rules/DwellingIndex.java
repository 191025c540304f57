package wattle.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.memo.Once;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.PanelSupply;
import wattle.model.Room;

/** What belongs to which dwelling, gone through once for all of them: a block of flats has thousands of rooms and branches. */
final class DwellingIndex {
  private final House house;
  private final HouseIndex index;
  private final Once<Map<String, Dwelling>> namedBy = new Once<>(this::findPanels);
  private final Once<Map<String, Optional<Dwelling>>> ofRoom = new Once<>(this::findRooms);
  private final Once<Map<Dwelling, List<Branch>>> branches = new Once<>(this::findBranches);
  private final Once<Map<Dwelling, List<Room>>> rooms = new Once<>(this::findRoomsOfDwellings);
  private final Once<Map<Dwelling, Integer>> numbers = new Once<>(this::findNumbers);
  private final Once<Map<Floor, List<Room>>> floors = new Once<>(this::findFloors);

  /**
   * A story of the house, or of one dwelling where each is a part of the house.
   *
   * @param dwelling its place among them; -1 for none
   */
  private record Floor(double number, int dwelling) {}

  DwellingIndex(House house, HouseIndex index) {
    this.house = house;
    this.index = index;
  }

  /** Whether dwellings name their panels, so that each is a part of the house and not all of it. */
  boolean arePartial() {
    return !namedBy.get().isEmpty();
  }

  /** The dwelling whose panels feed something in a room; absent where none does, or where dwellings name no panels. */
  Optional<Dwelling> of(Room room) {
    return ofRoom.get().getOrDefault(room.name(), Optional.empty());
  }

  /** The dwelling that a branch is fed in; absent where dwellings name no panels, and for what is common to several. */
  Optional<Dwelling> of(Branch branch) {
    return branch.panel().flatMap(this::ofPanel);
  }

  /** Branches from the panels of a dwelling, and from what those feed; all where it names none. */
  List<Branch> branches(Dwelling dwelling) {
    return dwelling.panels().isEmpty() ? List.copyOf(house.branches().values()) : branches.get().getOrDefault(dwelling, List.of());
  }

  /** Rooms with something fed from the panels of a dwelling; all where it names none. */
  List<Room> rooms(Dwelling dwelling) {
    return dwelling.panels().isEmpty() ? List.copyOf(house.rooms().values()) : rooms.get().getOrDefault(dwelling, List.of());
  }

  /** Rooms of the same dwelling on the story of a room, itself with them; none where its story is not stated. */
  List<Room> onFloorOf(Room room) {
    return floor(room).map(f -> floors.get().get(f)).orElse(List.of());
  }

  private Optional<Floor> floor(Room room) {
    return Optional.ofNullable(room.facts().get("floor")).map(f -> new Floor(f.si(), of(room).map(numbers.get()::get).orElse(-1)));
  }

  private Optional<Dwelling> ofPanel(String panel) {
    String at = panel;
    for (int steps = 0; steps <= house.panels().size() && house.panels().containsKey(at); steps++) {
      Dwelling own = namedBy.get().get(at);
      if (own != null || !(house.panels().get(at).supply() instanceof PanelSupply.FromBreaker from)) {
        return Optional.ofNullable(own);
      }
      at = from.breaker().panel();
    }
    return Optional.empty();
  }

  private Map<String, Dwelling> findPanels() {
    Map<String, Dwelling> found = new HashMap<>();
    house.dwellings().values().forEach(d -> d.panels().forEach(p -> found.putIfAbsent(p, d)));
    return found;
  }

  private Map<String, Optional<Dwelling>> findRooms() {
    Map<String, Optional<Dwelling>> found = new HashMap<>();
    house.rooms().values().forEach(r -> found.put(r.name(), find(r)));
    return found;
  }

  private Optional<Dwelling> find(Room room) {
    return arePartial()
        ? devices(room).stream().flatMap(d -> index.placeOf(d).stream()).flatMap(p -> p.branch().panel().stream()).distinct()
            .flatMap(p -> ofPanel(p).stream()).findFirst()
        : Optional.empty();
  }

  List<Device> devices(Room room) {
    List<Device> devices = new ArrayList<>();
    for (String name : room.boxes()) {
      if (house.boxes().containsKey(name)) {
        house.boxes().get(name).devices().stream().map(house.devices()::get).filter(d -> d != null).forEach(devices::add);
      }
    }
    return devices;
  }

  private Map<Dwelling, Integer> findNumbers() {
    Map<Dwelling, Integer> found = new IdentityHashMap<>();
    house.dwellings().values().forEach(d -> found.put(d, found.size()));
    return found;
  }

  private Map<Dwelling, List<Branch>> findBranches() {
    Map<Dwelling, List<Branch>> found = new IdentityHashMap<>();
    house.branches().values().forEach(b -> of(b).ifPresent(d -> found.computeIfAbsent(d, n -> new ArrayList<>()).add(b)));
    return found;
  }

  private Map<Dwelling, List<Room>> findRoomsOfDwellings() {
    Map<Dwelling, List<Room>> found = new IdentityHashMap<>();
    house.rooms().values().forEach(r -> of(r).ifPresent(d -> found.computeIfAbsent(d, n -> new ArrayList<>()).add(r)));
    return found;
  }

  private Map<Floor, List<Room>> findFloors() {
    Map<Floor, List<Room>> found = new HashMap<>();
    house.rooms().values().forEach(r -> floor(r).ifPresent(f -> found.computeIfAbsent(f, n -> new ArrayList<>()).add(r)));
    return found;
  }
}
