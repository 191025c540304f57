package wattle.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.boxes.BoxFill;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
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
import wattle.model.Metal;
import wattle.model.Panel;
import wattle.model.Point;
import wattle.model.Room;
import wattle.model.Section;
import wattle.model.Service;
import wattle.model.SupplySystem;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/** A house with all that rules ask about it, each worked out when first asked for. Used by one thread. */
final class Facts {
  private final House house;
  private final Library library;
  private Conductors conductors;
  private ConnectedLoads loads;
  private BoxFill boxFill;
  private List<RunOf> runs;
  private Map<String, List<Branch>> branchesOfBox;
  private Map<String, Branch> branchOfDevice;
  private Map<String, Point> pointOfDevice;
  private Map<String, List<Device>> switchesOfDevice;
  private Map<BreakerId, Breaker> breakers;
  private Map<String, List<RunOf>> runsAtBox;
  private final Map<String, List<Device>> devicesOfBranch = new HashMap<>();
  private final Map<String, List<Breaker>> breakersOfBranch = new HashMap<>();
  private Map<String, List<RunOf>> runsOfBranch;
  private Map<String, List<Branch>> branchesOfPanel;
  private Map<String, Integer> pointIndexOfDevice;
  private final Map<Guarded, Optional<Quantity>> largestBreakers = new HashMap<>();
  private final Map<String, Integer> receptaclesOfBranch = new HashMap<>();
  private final Map<String, PointRoles> rolesOfBranch = new HashMap<>();
  private final Map<Property, Map<Object, Object>> kept = new IdentityHashMap<>();

  Facts(House house, Library library) {
    this.house = house;
    this.library = library;
  }

  House house() {
    return house;
  }

  Library library() {
    return library;
  }

  Conductors conductors() {
    if (conductors == null) {
      conductors = Conductors.of(house, library);
    }
    return conductors;
  }

  ConnectedLoads loads() {
    if (loads == null) {
      loads = ConnectedLoads.of(house);
    }
    return loads;
  }

  BoxFill boxFill() {
    if (boxFill == null) {
      boxFill = new BoxFill(house, library);
    }
    return boxFill;
  }

  /** All things of a kind, in the order of the plan. */
  Collection<?> all(Kind kind) {
    return switch (kind) {
      case HOUSE -> List.of(house);
      case DWELLING -> house.dwellings().values();
      case SERVICE -> house.services().values();
      case ELECTRODE ->
          house.services().values().stream().flatMap(s -> s.electrodes().stream().map(e -> new ElectrodeOf(s, e))).toList();
      case PANEL -> house.panels().values();
      case BREAKER -> house.panels().values().stream().flatMap(p -> p.breakers().stream()).toList();
      case FEEDER ->
          house.panels().values().stream().flatMap(p -> p.feeder().map(f -> new FeederOf(p, f)).stream()).toList();
      case BRANCH -> house.branches().values();
      case RUN -> runs();
      case WIRING -> runs().stream().map(r -> r.section().wiring()).toList();
      case BOX -> house.boxes().values();
      case DEVICE -> house.devices().values();
      case ROOM -> house.rooms().values();
    };
  }

  List<RunOf> runs() {
    if (runs == null) {
      runs = new ArrayList<>();
      runsOfBranch = new HashMap<>();
      for (Branch branch : house.branches().values()) {
        List<RunOf> own = branch.sections().stream().map(s -> new RunOf(branch, s)).toList();
        runsOfBranch.put(branch.name(), own);
        runs.addAll(own);
      }
    }
    return runs;
  }

  List<RunOf> runsOf(Branch branch) {
    runs();
    return runsOfBranch.get(branch.name());
  }

  /** A property's value, worked out once for a thing. */
  Object kept(Property property, Object thing) {
    Map<Object, Object> values = kept.computeIfAbsent(property, p -> new IdentityHashMap<>());
    Object value = values.get(thing);
    if (value == null && !values.containsKey(thing)) {
      value = property.read().of(this, thing);
      values.put(thing, value);
    }
    return value;
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
    return Optional.empty();
  }

  // ---- How things hang together

  Optional<Panel> panelOf(Branch branch) {
    return branch.panel().map(house.panels()::get);
  }

  Optional<SupplySystem> systemOf(Branch branch) {
    return panelOf(branch).map(Panel::system);
  }

  Optional<Breaker> breaker(BreakerId id) {
    if (breakers == null) {
      breakers = new HashMap<>();
      house.panels().values().forEach(p -> p.breakers().forEach(b -> breakers.put(b.id(), b)));
    }
    return Optional.ofNullable(breakers.get(id));
  }

  /** Every breaker that a hot of the branch comes from, each once. */
  List<Breaker> breakersOf(Branch branch) {
    return breakersOfBranch.computeIfAbsent(branch.name(), n ->
        branch.hots().stream().map(h -> h.breaker()).distinct().flatMap(id -> breaker(id).stream()).toList());
  }

  List<Branch> branchesOf(Box box) {
    if (branchesOfBox == null) {
      branchesOfBox = new HashMap<>();
      for (Branch branch : house.branches().values()) {
        for (Point point : branch.points()) {
          point.box().ifPresent(b -> branchesOfBox.computeIfAbsent(b, n -> new ArrayList<>()).add(branch));
        }
      }
    }
    return branchesOfBox.getOrDefault(box.name(), List.of()).stream().distinct().toList();
  }

  Optional<Branch> branchOf(Device device) {
    wire();
    return Optional.ofNullable(branchOfDevice.get(device.name()));
  }

  Optional<Point> pointOf(Device device) {
    wire();
    return Optional.ofNullable(pointOfDevice.get(device.name()));
  }

  /** Devices that work a device. */
  List<Device> switchesOf(Device device) {
    if (switchesOfDevice == null) {
      switchesOfDevice = new HashMap<>();
      for (Device worker : house.devices().values()) {
        new LinkedHashSet<>(worker.controls())
            .forEach(worked -> switchesOfDevice.computeIfAbsent(worked, n -> new ArrayList<>()).add(worker));
      }
    }
    return switchesOfDevice.getOrDefault(device.name(), List.of());
  }

  private void wire() {
    if (branchOfDevice != null) {
      return;
    }
    branchOfDevice = new HashMap<>();
    pointOfDevice = new HashMap<>();
    pointIndexOfDevice = new HashMap<>();
    for (Branch branch : house.branches().values()) {
      for (int i = 0; i < branch.points().size(); i++) {
        Point point = branch.points().get(i);
        for (String device : point.devices()) {
          branchOfDevice.putIfAbsent(device, branch);
          if (pointOfDevice.putIfAbsent(device, point) == null) {
            pointIndexOfDevice.put(device, i);
          }
        }
      }
    }
  }

  /** Index of the point of its branch at which a device stands; 0, the panel, for one that is on none. */
  int pointIndexOf(Device device) {
    wire();
    return pointIndexOfDevice.getOrDefault(device.name(), 0);
  }

  /**
   * A conductor and its breaker.
   *
   * @param marked what the terminals at its ends allow; absent where they are not marked
   * @param mayRoundUp whether the next standard rating above the ampacity will do
   */
  record Guarded(
      Conditions conditions, Quantity rating, Optional<Derivation> marked, WireSize size, Metal metal, boolean mayRoundUp) {}

  /** The largest breaker that guards a conductor between its terminals. */
  Optional<Quantity> largestBreaker(Guarded guarded) {
    return largestBreakers.computeIfAbsent(guarded, g ->
        conductors().ampacities().between(g.conditions, Derivation.stated("rating", "I", g.rating), g.marked)
            .flatMap(a -> conductors().breakers().largestFor(a, g.size, g.metal, g.mayRoundUp))
            .flatMap(Derivation::quantity));
  }

  /** How many receptacles are on a branch. */
  int receptaclesOn(Branch branch) {
    return receptaclesOfBranch.computeIfAbsent(branch.name(), n ->
        (int) devicesOf(branch).stream().filter(d -> d.kind().family() == DeviceKind.Family.RECEPTACLE).count());
  }

  /** Which of its points the neutral and the ground of a branch come to. */
  PointRoles rolesOf(Branch branch) {
    return rolesOfBranch.computeIfAbsent(branch.name(), n -> PointRoles.of(branch));
  }

  List<Branch> branchesOf(Panel panel) {
    if (branchesOfPanel == null) {
      branchesOfPanel = new HashMap<>();
      for (Branch branch : house.branches().values()) {
        branch.panel().ifPresent(p -> branchesOfPanel.computeIfAbsent(p, n -> new ArrayList<>()).add(branch));
      }
    }
    return branchesOfPanel.getOrDefault(panel.name(), List.of());
  }

  List<Device> devicesOf(Branch branch) {
    return devicesOfBranch.computeIfAbsent(branch.name(), n ->
        branch.points().stream()
            .flatMap(p -> p.devices().stream())
            .map(house.devices()::get)
            .filter(d -> d != null)
            .toList());
  }

  List<Device> devicesOf(Box box) {
    return box.devices().stream().map(house.devices()::get).filter(d -> d != null).toList();
  }

  List<Device> devicesOf(Room room) {
    return room.boxes().stream().map(house.boxes()::get).filter(b -> b != null).flatMap(b -> devicesOf(b).stream()).toList();
  }

  Optional<Room> roomOf(Device device) {
    return Optional.ofNullable(house.rooms().get(device.room()));
  }

  /** Runs that start or end in a box. */
  List<RunOf> runsAt(Box box) {
    if (runsAtBox == null) {
      runsAtBox = new HashMap<>();
      for (RunOf run : runs()) {
        for (int end : new int[] {run.section().from(), run.section().to()}) {
          run.branch().points().get(end).box()
              .ifPresent(b -> runsAtBox.computeIfAbsent(b, n -> new ArrayList<>()).add(run));
        }
      }
    }
    return runsAtBox.getOrDefault(box.name(), List.of());
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
