package wattle.rules;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wattle.boxes.BoxFill;
import wattle.conductors.Conductors;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.loads.ConnectedLoads;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Dwelling;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;
import wattle.model.Raceway;
import wattle.model.Room;
import wattle.model.RoomKind;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.Status;
import wattle.model.SupplySystem;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.worksheet.HouseWorksheets;

/**
 * A house with all that rules ask about it, each worked out when first asked for. For one thread; what holds for the whole
 * house is in the index, which several share.
 */
final class Facts {
  /** Stands for a value that was looked for and is not known. */
  private static final Object UNKNOWN = new Object();

  private final HouseIndex index;
  private final House house;
  private final boolean asNew;
  /** What is in doubt; null in a house without doubts, so that nothing is looked for there. */
  private final InDoubt inDoubt;
  private int doubted;
  private boolean telling;
  private final Map<Branch, OfBranch> ofBranch = new IdentityHashMap<>();
  private final Map<Object, Object[]> kept = new IdentityHashMap<>();
  private final Map<Section, CircuitLoad> loadOfRun = new IdentityHashMap<>();
  // Rules ask several things of one thing in a row.
  private Branch lastBranch;
  private OfBranch ofLastBranch;
  private Object lastThing;
  private Object[] keptOfLast;
  private Map<Property, Map<Object, Boolean>> lacking;
  private Map<Property, Map<Object, Boolean>> presumed;
  private int lacked;
  private boolean leftOpen;

  /** What is asked of a branch again and again; what is null was not asked for yet. */
  private static final class OfBranch {
    List<Device> devices;
    List<Breaker> breakers;
    int receptacles = -1;
    PointRoles roles;
  }

  /** @param asNew whether existing work is taken as new */
  Facts(HouseIndex index, boolean asNew) {
    this.asNew = asNew;
    this.index = index;
    this.house = index.house();
    this.inDoubt = house.doubts().isEmpty() ? null : new InDoubt(this, house.doubts());
  }

  House house() {
    return house;
  }

  /** Whether anything is in doubt, while a rule is asked; what a finding tells, it tells as the house has it. */
  boolean doubts() {
    return inDoubt != null && !telling;
  }

  /** Whether a property is in doubt, which is counted. */
  boolean isInDoubt(Property property, Object thing) {
    boolean is = inDoubt.has(property, thing);
    doubted += is ? 1 : 0;
    return is;
  }

  boolean isStatusInDoubt(Object thing) {
    boolean is = inDoubt != null && inDoubt.ofStatus(thing);
    doubted += is ? 1 : 0;
    return is;
  }

  /** How often something was asked for that is in doubt. */
  int doubted() {
    return doubted;
  }

  /** Has what is in doubt told as the house has it, or not. */
  void telling(boolean is) {
    telling = is;
  }

  boolean isNew(Status status) {
    return status == Status.NEW || asNew && status == Status.EXISTING;
  }

  /** Word for the status of a thing, as it is judged. */
  Optional<String> statusWord(Status status) {
    return Optional.of((isNew(status) ? Status.NEW : status).word());
  }

  Library library() {
    return index.library();
  }

  HouseWorksheets worksheets() {
    return index.worksheets();
  }

  Conductors conductors() {
    return index.conductors();
  }

  /** Whether no fault brings a finding that the house does not have as it is, with a panel in place of the one of that name. */
  boolean standsWith(Panel instead) {
    return index.standsWith(instead);
  }

  ConnectedLoads loads() {
    return index.loads();
  }

  /** The least worksheet of the feeder of a panel; absent where no method has what it needs. */
  Optional<wattle.worksheet.Worksheet> calculated(Panel panel) {
    return index.calculated(panel.name());
  }

  /** What the stated loads beyond a run have its hots carry. */
  CircuitLoad circuitLoad(RunOf run) {
    CircuitLoad known = loadOfRun.get(run.section());
    if (known == null) {
      known = CircuitLoad.of(this, run);
      loadOfRun.put(run.section(), known);
    }
    return known;
  }

  List<ElectrodeOf> electrodesOf(Panel panel) {
    return index.electrodesOf(panel);
  }

  BoxFill boxFill() {
    return index.boxFill();
  }

  List<RunOf> runsOf(Branch branch) {
    return index.runsOf(branch);
  }

  /** A property's value, worked out once for a thing. */
  Object kept(Property property, Object thing) {
    Object[] values = keptOf(thing);
    Object value = values[property.keptAt()];
    if (value == null) {
      Object read = property.read().of(this, thing);
      value = read == null ? UNKNOWN : read;
      values[property.keptAt()] = value;
    }
    return value == UNKNOWN ? null : value;
  }

  private Object[] keptOf(Object thing) {
    if (thing != lastThing) {
      keptOfLast = kept.computeIfAbsent(thing, t -> new Object[Properties.MOST_KEPT]);
      lastThing = thing;
    }
    return keptOfLast;
  }

  private OfBranch of(Branch branch) {
    if (branch != lastBranch) {
      ofLastBranch = ofBranch.computeIfAbsent(branch, b -> new OfBranch());
      lastBranch = branch;
    }
    return ofLastBranch;
  }

  /** Has what the plan turns out to lack gathered from now on. */
  void gatherLacking() {
    // Asked before each rule; mostly nothing has been gathered since.
    if (lacking == null || !lacking.isEmpty()) {
      lacking = new LinkedHashMap<>();
    }
  }

  /** What was asked for and is not stated, since gathering began, with the things that it was asked of. */
  Map<Property, Set<Object>> lacking() {
    return things(lacking);
  }

  /** Tells that a plan does not state something that it might. */
  void lacks(Property property, Object thing) {
    lacked++;
    if (lacking != null) {
      lacking.computeIfAbsent(property, p -> new IdentityHashMap<>()).put(thing, true);
    }
  }

  /**
   * Whether something is stated. What is not stated is no lack there: the rule goes on with the usual case.
   *
   * @return null where a mistake left it out, and where what is not stated shall be left open
   */
  Boolean isStated(Term term, Object[] named) {
    Map<Property, Map<Object, Boolean>> before = lacking;
    lacking = presumed;
    int doubted = doubted();
    int lackedBefore = lacked;
    boolean is = term.of(this, named) != null;
    lacking = before;
    return !is && (doubted() != doubted || leftOpen && lacked != lackedBefore) ? null : (Boolean) is;
  }

  /** Has what a rule goes on without, since it asks whether it is stated, gathered from now on. */
  void gatherPresumed() {
    presumed = new LinkedHashMap<>();
  }

  /** What is not stated and was taken as usual, since gathering began. */
  Map<Property, Set<Object>> presumed() {
    return things(presumed);
  }

  /**
   * Tells that something takes a usual value where the plan does not state a property of it.
   *
   * @return whether it shall; not where what is not stated is left open
   */
  boolean takesUsual(String property, Object thing) {
    if (presumed != null) {
      presumed.computeIfAbsent(Vocabulary.of(Kind.ofThing(thing)).get(property), p -> new IdentityHashMap<>()).put(thing, true);
    }
    lacked++;
    return !leftOpen;
  }

  /** Whether what is not stated is left open from now on, instead of taken as usual. */
  void leaveOpen(boolean open) {
    leftOpen = open;
  }

  private static Map<Property, Set<Object>> things(Map<Property, Map<Object, Boolean>> gathered) {
    Map<Property, Set<Object>> all = new LinkedHashMap<>();
    gathered.forEach((property, things) -> all.put(property, Collections.unmodifiableSet(things.keySet())));
    return all;
  }

  /** Where a thing stands in the text, for the caret; absent for what has no place of its own. */
  Optional<Span> placeOf(Object thing) {
    if (thing instanceof House) {
      return Optional.of(house.source().span(0, 0));
    }
    if (thing instanceof Dwelling d) {
      return Optional.of(d.origin().name());
    }
    if (thing instanceof Service s) {
      return Optional.of(s.origin().name());
    }
    if (thing instanceof ElectrodeOf e) {
      return Optional.of(e.electrode().origin().name());
    }
    if (thing instanceof Panel p) {
      return Optional.of(p.origin().name());
    }
    if (thing instanceof Breaker b) {
      return Optional.of(b.origin().name());
    }
    if (thing instanceof FeederOf f) {
      return Optional.of(f.stretch().origin().name());
    }
    if (thing instanceof Branch b) {
      return Optional.of(b.origin().name());
    }
    if (thing instanceof RunOf r) {
      return Optional.of(r.section().origin().name());
    }
    if (thing instanceof Wiring w) {
      return Optional.of(w.origin().name());
    }
    if (thing instanceof Box b) {
      return Optional.of(b.origin().name());
    }
    if (thing instanceof Device d) {
      return Optional.of(d.origin().name());
    }
    if (thing instanceof Room r) {
      return Optional.of(r.origin().name());
    }
    if (thing instanceof Raceway r) {
      return Optional.of(r.origin().name());
    }
    throw new AssertionError(thing);
  }

  /** Name by which a plan silences a finding at a thing; absent for what has none. */
  static Optional<String> nameOf(Object thing) {
    if (thing instanceof Service s) {
      return Optional.of(s.name());
    }
    if (thing instanceof Panel p) {
      return Optional.of(p.name());
    }
    if (thing instanceof FeederOf f) {
      return Optional.of(f.panel().name());
    }
    if (thing instanceof Breaker b) {
      return Optional.of(b.id().toString());
    }
    if (thing instanceof Branch b) {
      return Optional.of(b.name());
    }
    if (thing instanceof RunOf r) {
      return Optional.of(r.branch().name());
    }
    if (thing instanceof Box b) {
      return Optional.of(b.name());
    }
    if (thing instanceof Device d) {
      return Optional.of(d.name());
    }
    if (thing instanceof Room r) {
      return Optional.of(r.name());
    }
    if (thing instanceof Raceway r) {
      return Optional.of(r.name());
    }
    return Optional.empty();
  }

  /** What a thing is called in a list of things. */
  static String calledIn(Object thing) {
    if (thing instanceof RunOf r) {
      return r.branch().name() + " from " + pointName(r, r.section().from()) + " to " + pointName(r, r.section().to());
    }
    if (thing instanceof ElectrodeOf e) {
      return e.electrode().kind() + " of " + e.panel().map(Panel::name).orElse(e.service().name());
    }
    if (thing instanceof Dwelling d) {
      return d.title();
    }
    return nameOf(thing).orElse("the plan");
  }

  /** Name of the box, or of the panel, at an end of a run. */
  static String pointName(RunOf run, int index) {
    return run.branch().points().get(index).box().orElse(run.branch().panel().orElse("?"));
  }

  // ---- How things hang together

  Optional<Panel> panelOf(Branch branch) {
    return branch.panel().map(house.panels()::get);
  }

  Optional<SupplySystem> systemOf(Branch branch) {
    return panelOf(branch).map(Panel::system);
  }

  Optional<Breaker> breaker(BreakerId id) {
    return index.breaker(id);
  }

  /** Every breaker that a hot of the branch comes from, each once. */
  List<Breaker> breakersOf(Branch branch) {
    OfBranch of = of(branch);
    if (of.breakers == null) {
      of.breakers = branch.hots().stream().map(h -> h.breaker()).distinct().flatMap(id -> breaker(id).stream()).toList();
    }
    return of.breakers;
  }

  List<Branch> branchesOf(Box box) {
    return index.branchesOf(box);
  }

  Optional<Branch> branchOf(Device device) {
    return index.placeOf(device).map(HouseIndex.Place::branch);
  }

  Optional<Point> pointOf(Device device) {
    return index.placeOf(device).map(HouseIndex.Place::point);
  }

  /** Index of the point of its branch at which a device stands; 0, the panel, for one that is on none. */
  int pointIndexOf(Device device) {
    return index.placeOf(device).map(HouseIndex.Place::index).orElse(0);
  }

  /** Whether the plan shows the lighting of its rooms, and so may be asked for lights that are missing. */
  boolean lightingPlanned() {
    return index.lightingPlanned();
  }

  /** Devices that work a device. */
  List<Device> switchesOf(Device device) {
    return index.switchesOf(device);
  }

  /** The largest breaker that guards a conductor between its terminals. */
  Optional<Quantity> largestBreaker(HouseIndex.Guarded guarded) {
    return index.largestBreaker(guarded);
  }

  /** How many receptacles are on a branch. */
  int receptaclesOn(Branch branch) {
    OfBranch of = of(branch);
    if (of.receptacles < 0) {
      int count = 0;
      for (Device device : devicesOf(branch)) {
        count += device.kind().family() == DeviceKind.Family.RECEPTACLE ? 1 : 0;
      }
      of.receptacles = count;
    }
    return of.receptacles;
  }

  /** Which of its points the neutral and the ground of a branch come to. */
  PointRoles rolesOf(Branch branch) {
    OfBranch of = of(branch);
    if (of.roles == null) {
      of.roles = PointRoles.of(branch);
    }
    return of.roles;
  }

  List<Branch> branchesOf(Panel panel) {
    return index.branchesOf(panel);
  }

  List<Device> devicesOf(Branch branch) {
    OfBranch of = of(branch);
    if (of.devices == null) {
      List<Device> devices = new ArrayList<>();
      branch.points().forEach(p -> addDevices(p.devices(), devices));
      of.devices = List.copyOf(devices);
    }
    return of.devices;
  }

  List<Device> devicesOf(Box box) {
    List<Device> devices = new ArrayList<>(box.devices().size());
    addDevices(box.devices(), devices);
    return devices;
  }

  /** Whether the plan is of dwellings: it describes one, or has a room that only dwellings have. */
  boolean isResidential() {
    return index.residential();
  }

  /**
   * Whether a room belongs to a dwelling. Where dwellings name their panels, one whose wiring is all fed from others is common to
   * them; where the plan is of no dwelling, none does, and a place for livestock never does.
   */
  boolean isInDwelling(Room room) {
    return isResidential(room) && !isCommon(room);
  }

  /** Whether a room is of a dwelling or common to several. */
  boolean isResidential(Room room) {
    return isResidential() && !isForLivestock(room) && !isOnFarm(room);
  }

  /** Whether it is for animals beside a dwelling, and on no farm. */
  boolean isAccessory(Room room) {
    return isResidential() && isForLivestock(room) && !isOnFarm(room);
  }

  /** Whether all that is wired in it comes from panels of farm buildings. */
  private boolean isOnFarm(Room room) {
    if (!index.hasFarm()) {
      return false;
    }
    List<Panel> panels = devicesOf(room).stream().flatMap(d -> branchOf(d).stream()).flatMap(b -> panelOf(b).stream()).toList();
    return !panels.isEmpty() && panels.stream().allMatch(this::isOfFarm);
  }

  private boolean isOfFarm(Panel panel) {
    Panel at = panel;
    for (int steps = 0; steps <= house.panels().size(); steps++) {
      if (at.flags().getOrDefault("farm", false)) {
        return true;
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !house.panels().containsKey(from.breaker().panel())) {
        return false;
      }
      at = house.panels().get(from.breaker().panel());
    }
    return false;
  }

  private static boolean isForLivestock(Room room) {
    return room.kind().flatMap(RoomKind::of).filter(k -> k == RoomKind.LIVESTOCK).isPresent();
  }

  private boolean isCommon(Room room) {
    return index.dwellings().arePartial() && index.dwellings().of(room).isEmpty()
        && devicesOf(room).stream().anyMatch(d -> branchOf(d).isPresent());
  }

  /** The dwelling that a branch is fed in; absent where dwellings name no panels, and for what is common to several. */
  Optional<Dwelling> dwellingOf(Branch branch) {
    return index.dwellings().of(branch);
  }

  /** Whether a branch has outlets in a room that has more of them from the panels of another dwelling. */
  boolean strays(Branch branch) {
    Optional<Dwelling> own = dwellingOf(branch);
    return own.isPresent() && devicesOf(branch).stream().filter(d -> d.kind().outlet()).flatMap(d -> roomOf(d).stream()).distinct()
        .anyMatch(room -> {
          Map<Dwelling, Long> outlets = devicesOf(room).stream().filter(d -> d.kind().outlet())
              .flatMap(d -> branchOf(d).flatMap(this::dwellingOf).stream()).collect(Collectors.groupingBy(d -> d, Collectors.counting()));
          long here = outlets.getOrDefault(own.get(), 0L);
          return outlets.entrySet().stream().anyMatch(e -> !e.getKey().equals(own.get()) && e.getValue() > here);
        });
  }

  /** Rooms with something fed from the panels of a dwelling; all where it names none. */
  List<Room> roomsOf(Dwelling dwelling) {
    return index.dwellings().rooms(dwelling);
  }

  /** Branches from the panels of a dwelling, and from what those feed; all where it names none. */
  List<Branch> branchesOf(Dwelling dwelling) {
    return index.dwellings().branches(dwelling);
  }

  List<Device> devicesOf(Dwelling dwelling) {
    return dwelling.panels().isEmpty()
        ? List.copyOf(house.devices().values())
        : roomsOf(dwelling).stream().flatMap(r -> devicesOf(r).stream()).toList();
  }

  List<Device> devicesOf(Room room) {
    return index.dwellings().devices(room);
  }

  private void addDevices(List<String> names, List<Device> devices) {
    for (String name : names) {
      Device device = house.devices().get(name);
      if (device != null) {
        devices.add(device);
      }
    }
  }

  /** Rooms of the same dwelling on the story of a room, itself with them; none where its story is not stated. */
  List<Room> roomsOfFloor(Room room) {
    return index.dwellings().onFloorOf(room);
  }

  Optional<Room> roomOf(Device device) {
    return Optional.ofNullable(house.rooms().get(device.room()));
  }

  /** Runs that start or end in a box. */
  List<RunOf> runsAt(Box box) {
    return index.runsAt(box);
  }

  /** Runs of a branch on the way from the panel to a device, nearest the panel first. */
  static List<Section> wayTo(Branch branch, int point) {
    Map<Integer, Section> into = new HashMap<>();
    branch.sections().forEach(s -> into.put(s.to(), s));
    List<Section> way = new ArrayList<>();
    for (int at = point; into.containsKey(at) && way.size() <= branch.sections().size(); at = into.get(at).from()) {
      way.add(0, into.get(at));
    }
    return way;
  }
}
