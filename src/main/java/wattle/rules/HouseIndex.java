package wattle.rules;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import wattle.boxes.BoxFill;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.figures.HouseFigures;
import wattle.finding.Severity;
import wattle.library.Library;
import wattle.loads.ConnectedLoads;
import wattle.memo.Once;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.model.Metal;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Room;
import wattle.model.RoomKind;
import wattle.model.Status;
import wattle.quantity.Quantity;
import wattle.worksheet.HouseWorksheets;
import wattle.quantity.WireSize;
import wattle.worksheet.Worksheet;

/**
 * How the things of a house hang together, each answer worked out when first asked for; and its figures.
 */
final class HouseIndex {
  private final HouseFigures figures;
  /** Places that 210.70(A) wants a light in. */
  private static final Set<String> LIT = Set.of("habitable", "bathroom", "laundry", "passage");

  private final House house;
  private final Once<Map<String, List<RunOf>>> runsOfBranch = new Once<>(this::findRuns);
  private final Once<Map<String, List<RunOf>>> runsAtBox = new Once<>(this::findRunsAtBoxes);
  private final Once<Map<String, List<Branch>>> branchesOfBox = new Once<>(this::findBranchesOfBoxes);
  private final Once<Map<String, List<Branch>>> branchesOfPanel = new Once<>(this::findBranchesOfPanels);
  private final Once<Map<String, Place>> places = new Once<>(this::findPlaces);
  private final Once<Map<String, List<Device>>> switches = new Once<>(this::findSwitches);
  private final Once<Map<BreakerId, Breaker>> breakers = new Once<>(this::findBreakers);
  private final DwellingIndex dwellings;
  private final Once<Boolean> lightingPlanned = new Once<>(this::showsLighting);
  private final Once<Boolean> farm = new Once<>(this::anyFarm);
  private final Once<Boolean> residential = new Once<>(this::isOfDwellings);
  private final Map<String, Optional<Worksheet>> calculated = new ConcurrentHashMap<>();
  private final Map<Guarded, Optional<Quantity>> largestBreakers = new ConcurrentHashMap<>();

  /**
   * Where a device hangs.
   *
   * @param index of the point in its branch
   */
  record Place(Branch branch, Point point, int index) {}

  /**
   * A conductor and its breaker.
   *
   * @param marked what the terminals at its ends allow; absent where they are not marked
   * @param mayRoundUp whether the next standard rating above the ampacity will do
   */
  record Guarded(
      Conditions conditions, Quantity rating, Optional<Derivation> marked, WireSize size, Metal metal, boolean mayRoundUp) {}

  HouseIndex(HouseFigures figures) {
    this.figures = figures;
    house = figures.house();
    dwellings = new DwellingIndex(house, this);
  }

  DwellingIndex dwellings() {
    return dwellings;
  }

  /**
   * Whether the plan shows the lighting: more than three quarters of the rooms that a code wants a light in have one. A plan of a part,
   * such as the receptacles of a kitchen, is not blamed for the lights that it leaves out.
   */
  boolean lightingPlanned() {
    return lightingPlanned.get();
  }

  /** Whether the plan is of dwellings. */
  private boolean anyFarm() {
    return house.panels().values().stream().anyMatch(p -> p.flags().getOrDefault("farm", false));
  }

  /** Whether any panel is of a farm building. */
  boolean hasFarm() {
    return farm.get();
  }

  boolean residential() {
    return residential.get();
  }

  private boolean isOfDwellings() {
    return House.isOfDwellings(house.dwellings().values(), house.rooms().values(), house.services().values());
  }

  private boolean showsLighting() {
    int wanted = 0;
    int lit = 0;
    for (Room room : house.rooms().values()) {
      Set<String> places = room.kind().flatMap(RoomKind::of).map(RoomKind::places).orElse(Set.of());
      if (!Collections.disjoint(places, LIT)) {
        wanted++;
        lit += room.boxes().stream().flatMap(b -> house.boxes().get(b).devices().stream()).map(house.devices()::get)
            .anyMatch(d -> d != null && d.kind().family() == DeviceKind.Family.LIGHT) ? 1 : 0;
      }
    }
    return lit > 0 && 4 * lit > 3 * wanted;
  }

  House house() {
    return house;
  }

  Library library() {
    return figures.library();
  }

  Conductors conductors() {
    return figures.conductors();
  }

  HouseWorksheets worksheets() {
    return figures.worksheets();
  }

  /** Whether no fault brings a finding that the house does not have as it is, with a panel in place of the one of that name. */
  boolean standsWith(Panel instead) {
    return figures.standsWith(instead);
  }

  ConnectedLoads loads() {
    return figures.loads();
  }

  BoxFill boxFill() {
    return figures.boxFill();
  }

  /** The least worksheet of a feeder; absent where no method has what it needs. */
  Optional<Worksheet> calculated(String panel) {
    return calculated.computeIfAbsent(
        panel, p -> figures.worksheets().methods().isEmpty()
            ? Optional.empty()
            : figures.worksheets().feeder(p)
                .filter(r -> r.objections().stream().noneMatch(o -> o.severity() == Severity.ERROR))
                .flatMap(figures.worksheets()::least));
  }

  /** Whether anything in it was there before. */
  boolean hasExisting() {
    for (Kind kind : Kind.values()) {
      if (kind != Kind.RUN && kind != Kind.WIRING
          && all(kind).stream().anyMatch(t -> Work.statusOf(t).filter(s -> s == Status.EXISTING).isPresent())) {
        return true;
      }
    }
    return runs().stream().anyMatch(r -> r.section().status() == Status.EXISTING);
  }

  /** All things of a kind, in the order of the plan. */
  List<?> all(Kind kind) {
    return switch (kind) {
      case HOUSE -> List.of(house);
      case DWELLING -> List.copyOf(house.dwellings().values());
      case SERVICE -> List.copyOf(house.services().values());
      case ELECTRODE ->
        Stream.concat(
            house.services().values().stream().flatMap(s -> s.electrodes().stream().map(e -> new ElectrodeOf(s, Optional.empty(), e))),
            house.panels().values().stream().flatMap(p -> electrodesOf(p).stream())).toList();
      case PANEL -> List.copyOf(house.panels().values());
      case BREAKER -> house.panels().values().stream().flatMap(p -> p.breakers().stream()).toList();
      case FEEDER ->
        house.panels().values().stream().flatMap(p -> p.feeder().map(f -> new FeederOf(p, f)).stream()).toList();
      case BRANCH -> List.copyOf(house.branches().values());
      case RUN -> runs();
      case WIRING -> runs().stream().map(r -> r.section().wiring()).toList();
      case BOX -> List.copyOf(house.boxes().values());
      case DEVICE -> List.copyOf(house.devices().values());
      case ROOM -> List.copyOf(house.rooms().values());
      case RACEWAY -> List.copyOf(house.raceways().values());
    };
  }

  /** Those at a panel itself; none where it hangs on no service. */
  List<ElectrodeOf> electrodesOf(Panel panel) {
    return house.serviceOf(panel)
        .map(s -> panel.electrodes().stream().map(e -> new ElectrodeOf(s, Optional.of(panel), e)).toList())
        .orElse(List.of());
  }

  private List<RunOf> runs() {
    return house.branches().values().stream().flatMap(b -> runsOf(b).stream()).toList();
  }

  List<RunOf> runsOf(Branch branch) {
    return runsOfBranch.get().get(branch.name());
  }

  List<RunOf> runsAt(Box box) {
    return runsAtBox.get().getOrDefault(box.name(), List.of());
  }

  /** Each once, in the order of the plan. */
  List<Branch> branchesOf(Box box) {
    return branchesOfBox.get().getOrDefault(box.name(), List.of());
  }

  List<Branch> branchesOf(Panel panel) {
    return branchesOfPanel.get().getOrDefault(panel.name(), List.of());
  }

  /** The first of its branches, which is the only one in a house without faults; absent for one that hangs on none. */
  Optional<Place> placeOf(Device device) {
    return Optional.ofNullable(places.get().get(device.name()));
  }

  /** Devices that work a device. */
  List<Device> switchesOf(Device device) {
    return switches.get().getOrDefault(device.name(), List.of());
  }

  Optional<Breaker> breaker(BreakerId id) {
    return Optional.ofNullable(breakers.get().get(id));
  }

  /** The largest breaker that guards a conductor between its terminals. */
  Optional<Quantity> largestBreaker(Guarded guarded) {
    return largestBreakers.computeIfAbsent(guarded, this::findLargestBreaker);
  }

  private Optional<Quantity> findLargestBreaker(Guarded guarded) {
    return conductors().ampacities()
        .between(guarded.conditions, Derivation.stated("rating", "I", guarded.rating), guarded.marked)
        .flatMap(a -> conductors().breakers().largestFor(a, guarded.size, guarded.metal, guarded.mayRoundUp))
        .flatMap(Derivation::quantity);
  }

  private Map<String, List<RunOf>> findRuns() {
    Map<String, List<RunOf>> runs = new HashMap<>();
    for (Branch branch : house.branches().values()) {
      runs.put(branch.name(), branch.sections().stream().map(s -> new RunOf(branch, s)).toList());
    }
    return runs;
  }

  private Map<String, List<RunOf>> findRunsAtBoxes() {
    Map<String, List<RunOf>> runs = new HashMap<>();
    for (RunOf run : runs()) {
      for (int end : new int[]{run.section().from(), run.section().to()}) {
        run.branch().points().get(end).box().ifPresent(b -> runs.computeIfAbsent(b, n -> new ArrayList<>(2)).add(run));
      }
    }
    return runs;
  }

  private Map<String, List<Branch>> findBranchesOfBoxes() {
    Map<String, List<Branch>> branches = new HashMap<>();
    for (Branch branch : house.branches().values()) {
      for (Point point : branch.points()) {
        point.box().ifPresent(b -> addOnce(branches.computeIfAbsent(b, n -> new ArrayList<>(1)), branch));
      }
    }
    return branches;
  }

  private static void addOnce(List<Branch> branches, Branch branch) {
    if (!branches.contains(branch)) {
      branches.add(branch);
    }
  }

  private Map<String, List<Branch>> findBranchesOfPanels() {
    Map<String, List<Branch>> branches = new HashMap<>();
    for (Branch branch : house.branches().values()) {
      branch.panel().ifPresent(p -> branches.computeIfAbsent(p, n -> new ArrayList<>()).add(branch));
    }
    return branches;
  }

  private Map<String, Place> findPlaces() {
    Map<String, Place> found = new HashMap<>(2 * house.devices().size());
    for (Branch branch : house.branches().values()) {
      for (int i = 0; i < branch.points().size(); i++) {
        Point point = branch.points().get(i);
        for (String device : point.devices()) {
          found.putIfAbsent(device, new Place(branch, point, i));
        }
      }
    }
    return found;
  }

  private Map<String, List<Device>> findSwitches() {
    Map<String, List<Device>> found = new HashMap<>();
    for (Device worker : house.devices().values()) {
      new LinkedHashSet<>(worker.controls()).forEach(worked -> found.computeIfAbsent(worked, n -> new ArrayList<>(1)).add(worker));
    }
    return found;
  }

  private Map<BreakerId, Breaker> findBreakers() {
    Map<BreakerId, Breaker> found = new HashMap<>();
    house.panels().values().forEach(p -> p.breakers().forEach(b -> found.put(b.id(), b)));
    return found;
  }
}
