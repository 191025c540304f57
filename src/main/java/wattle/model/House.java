package wattle.model;

import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import wattle.finding.Source;
import wattle.memo.Once;
import wattle.quantity.UnitSystem;

/**
 * A whole plan, bound: every thing in the order written, and found by name.
 *
 * @param codes names of the code packs it asks for, in order
 * @param placements names of the placements of patterns, each with its pattern
 * @param overridden of the placements those that have something of their own, each with the names of what differs
 * @param written in which units most lengths and the like are written, looked up when it is first asked for
 * @param taken what was not said and was taken as usual, in reading order, gathered when it is first asked for
 * @param doubts what mistakes in the plan leave in doubt
 */
public record House(
    Source source,
    Optional<String> title,
    Optional<String> revision,
    List<String> codes,
    Map<String, Dwelling> dwellings,
    Map<String, Service> services,
    Map<String, Panel> panels,
    Map<String, Branch> branches,
    Map<String, Raceway> raceways,
    Map<String, Room> rooms,
    Map<String, Box> boxes,
    Map<String, Device> devices,
    Map<String, Trial> trials,
    List<Expectation> expectations,
    List<Silence> silences,
    Map<String, String> placements,
    Map<String, List<String>> overridden,
    Once<UnitSystem> written,
    Once<List<String>> taken,
    Doubts doubts) {
  private static final Set<DeviceKind.Family> LOADS = EnumSet.of(
      DeviceKind.Family.APPLIANCE, DeviceKind.Family.LIGHT, DeviceKind.Family.RECEPTACLE);

  public House {
    codes = List.copyOf(codes);
    dwellings = Ordered.copyOf(dwellings);
    services = Ordered.copyOf(services);
    panels = Ordered.copyOf(panels);
    branches = Ordered.copyOf(branches);
    raceways = Ordered.copyOf(raceways);
    rooms = Ordered.copyOf(rooms);
    boxes = Ordered.copyOf(boxes);
    devices = Ordered.copyOf(devices);
    trials = Ordered.copyOf(trials);
    expectations = List.copyOf(expectations);
    silences = List.copyOf(silences);
    placements = Ordered.copyOf(placements);
    overridden = Ordered.copyOf(overridden);
  }

  /** In which units lengths and the like are shown to people. */
  public UnitSystem units() {
    return written.get();
  }

  /** What was not said and was taken as usual, in reading order. */
  public List<String> assumed() {
    return taken.get();
  }

  /** Whether one of its things is called so, of whatever kind. */
  public boolean hasNamed(String name) {
    return devices.containsKey(name) || boxes.containsKey(name) || rooms.containsKey(name) || branches.containsKey(name)
        || panels.containsKey(name) || services.containsKey(name) || raceways.containsKey(name) || dwellings.containsKey(name)
        || dwellings.values().stream().anyMatch(d -> d.title().equals(name)) || hasBreaker(name);
  }

  private boolean hasBreaker(String id) {
    int slot = id.lastIndexOf('/');
    Panel panel = slot < 0 ? null : panels.get(id.substring(0, slot));
    return panel != null && panel.breakers().stream().anyMatch(b -> b.id().toString().equals(id));
  }

  /** Unchangeable index by name, in order; of two with one name the first stays. */
  public static <T> Map<String, T> byName(List<T> things, Function<T, String> name) {
    LinkedHashMap<String, T> map = new LinkedHashMap<>(2 * things.size());
    for (T thing : things) {
      map.putIfAbsent(name.apply(thing), thing);
    }
    return Ordered.taking(map);
  }

  /** The same house, with what is in doubt of it. */
  public House doubting(Doubts doubting) {
    return new House(source, title, revision, codes, dwellings, services, panels, branches, raceways, rooms, boxes, devices, trials,
        expectations, silences, placements, overridden, written, taken, doubting);
  }

  /** The same house with another panel in place of the one of that name. */
  public House with(Panel panel) {
    LinkedHashMap<String, Panel> others = new LinkedHashMap<>(panels);
    others.replace(panel.name(), panel);
    return new House(source, title, revision, codes, dwellings, services, others, branches, raceways, rooms, boxes, devices, trials,
        expectations, silences, placements, overridden, written, taken, doubts);
  }

  /**
   * Whether a plan with these is of dwellings. One that describes none, and has no room that only dwellings have, is not where it is
   * on three phases or has a room that only workplaces have, such as an office.
   */
  public static boolean isOfDwellings(Collection<Dwelling> dwellings, Collection<Room> rooms, Collection<Service> services) {
    return !dwellings.isEmpty()
        || rooms.stream().anyMatch(r -> r.kind().flatMap(RoomKind::of).filter(RoomKind::isOfDwellings).isPresent())
        || services.stream().noneMatch(s -> s.system().kind() == SupplySystem.Kind.THREE_PHASE_WYE)
            && rooms.stream().noneMatch(r -> r.kind().flatMap(RoomKind::of).filter(RoomKind::isOfWorkplaces).isPresent());
  }

  /** The first dwelling, which is the only one in a plan of one house. */
  public Optional<Dwelling> dwelling() {
    return dwellings.values().stream().findFirst();
  }

  /** The breaker with this place. */
  public Optional<Breaker> breaker(BreakerId id) {
    Panel panel = panels.get(id.panel());
    if (panel != null) {
      for (Breaker breaker : panel.breakers()) {
        if (breaker.id().equals(id)) {
          return Optional.of(breaker);
        }
      }
    }
    return Optional.empty();
  }

  /** The branch that a breaker is for; absent where it is for something else, and where the branch could not be read. */
  public Optional<Branch> branchOf(Breaker breaker) {
    return breaker.target() instanceof Breaker.Target.ToBranch to ? Optional.ofNullable(branches.get(to.branch())) : Optional.empty();
  }

  /** The panel that a breaker is for; absent where it is for something else, and where the panel could not be read. */
  public Optional<Panel> panelOf(Breaker breaker) {
    return breaker.target() instanceof Breaker.Target.ToPanel to ? Optional.ofNullable(panels.get(to.panel())) : Optional.empty();
  }

  /** The service that a panel hangs on in the end; absent where its feeders lead nowhere or round in a circle. */
  public Optional<Service> serviceOf(Panel panel) {
    Panel at = panel;
    for (int steps = 0; steps <= panels.size(); steps++) {
      if (at.supply() instanceof PanelSupply.FromService from) {
        return Optional.ofNullable(services.get(from.service()));
      }
      if (!(at.supply() instanceof PanelSupply.FromBreaker from) || !panels.containsKey(from.breaker().panel())) {
        return Optional.empty();
      }
      at = panels.get(from.breaker().panel());
    }
    return Optional.empty();
  }

  /**
   * Whether separate loads return on one neutral of a branch, so that one goes on when another is taken away. The parts of one
   * appliance, such as a range, are no separate loads; the halves of a receptacle are.
   */
  public boolean sharesNeutralBetweenLoads(Branch branch) {
    List<Device> loads = branch.points().stream().flatMap(p -> p.devices().stream()).distinct().map(devices::get)
        .filter(d -> d != null && LOADS.contains(d.kind().family()))
        .toList();
    boolean oneAppliance = loads.size() == 1 && loads.get(0).kind().halves().isEmpty()
        && loads.get(0).kind().family() == DeviceKind.Family.APPLIANCE;
    return branch.sharesNeutral() && !oneAppliance;
  }
}
