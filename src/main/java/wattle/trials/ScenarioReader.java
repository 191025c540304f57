package wattle.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Mistake;
import wattle.finding.Span;
import wattle.model.Branch;
import wattle.model.BreakerId;
import wattle.model.Device;
import wattle.model.DeviceKind;
import wattle.model.Event;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Slot;
import wattle.model.Wire;
import wattle.quantity.Quantity;

/** Reads the events of a trial against the house; what cannot happen in it is a finding, and is left out. */
final class ScenarioReader {
  private final House house;
  private final StatedLoads loads;
  private final List<Finding> findings = new ArrayList<>();
  private final Set<BreakerId> openBreakers = new HashSet<>();
  private boolean serviceNeutralOpen;
  private final Set<Scenario.Wire> openConductors = new HashSet<>();
  private final Map<Scenario.Wire, Double> joints = new HashMap<>();
  private final Map<Scenario.PanelWire, Double> panelJoints = new HashMap<>();
  private final List<Scenario.Lifted> lifted = new ArrayList<>();
  private final List<Scenario.Fault> faults = new ArrayList<>();
  private final Map<String, List<Optional<Leg>>> legs = new HashMap<>();
  private final Set<String> reversed = new HashSet<>();
  private final Set<String> off = new HashSet<>();
  private final Map<String, Scenario.PanelDrawn> panelDrawn = new LinkedHashMap<>();
  private final Map<String, List<Scenario.Drawn>> drawn = new LinkedHashMap<>();
  private final SupplyReader supplies;

  /** @param stated whether every stated load is on before the first event */
  ScenarioReader(House house, boolean stated) {
    this.house = house;
    this.loads = new StatedLoads(house);
    this.supplies = new SupplyReader(house, findings);
    if (stated) {
      loads.all().forEach(d -> drawn.computeIfAbsent(d.device(), n -> new ArrayList<>()).add(d));
    }
  }

  Checked<Scenario> read(String name, List<Event> events) {
    for (Event event : events) {
      read(event);
    }
    // What is said to be off draws nothing, whatever turned it on.
    off.forEach(drawn::remove);
    Supplies fed = supplies.finish(openBreakers);
    List<Scenario.Drawn> all = drawn.values().stream().flatMap(List::stream).toList();
    return new Checked<>(
        new Scenario(
            name, openBreakers, serviceNeutralOpen, openConductors, joints, panelJoints, lifted, faults, legs, reversed,
            off, all, List.copyOf(panelDrawn.values()), fed),
        findings);
  }

  private void read(Event event) {
    if (supplies.read(event)) {
      return;
    }
    if (event instanceof Event.ConductorOpen open) {
      conductorOpen(open);
    } else if (event instanceof Event.FeederOpen open) {
      feederOpen(open);
    } else if (event instanceof Event.BreakerOpen open) {
      openBreakers.add(open.breaker());
    } else if (event instanceof Event.ServiceNeutralOpen) {
      serviceNeutralOpen = true;
    } else if (event instanceof Event.JointLoose loose) {
      jointLoose(loose);
    } else if (event instanceof Event.GroundLifted lift) {
      place(lift.at(), lift.span())
          .ifPresent(
              p -> lifted.add(
                  new Scenario.Lifted(lift.at(), p.branch().name(), p.point(), lift.leakage().map(Quantity::si))));
    } else if (event instanceof Event.Faulted fault) {
      fault(fault);
    } else if (event instanceof Event.Moved moved) {
      moved(moved);
    } else if (event instanceof Event.Reversed swap) {
      place(swap.at(), swap.span()).ifPresent(p -> reverse(swap.at(), p));
    } else if (event instanceof Event.Drawing drawing) {
      drawing(drawing);
    } else if (event instanceof Event.PanelDrawing drawing) {
      panelDrawn.put(drawing.panel(), loads.of(drawing));
    } else if (event instanceof Event.Turned turned) {
      turned(turned);
    } else {
      throw new AssertionError(event);
    }
  }

  private void reverse(String at, Place place) {
    reversed.addAll(
        house.devices().containsKey(at) ? List.of(at) : place.branch().points().get(place.point()).devices());
  }

  private Optional<Place> place(String name, Span span) {
    Optional<Place> place = Place.of(house, name);
    if (place.isEmpty()) {
      impossible(span, "no run reaches '" + name + "'", "no branch reaches it");
    }
    return place;
  }

  private void impossible(Span span, String headline, String words) {
    findings.add(
        Finding.error(Mistake.TRIAL_IMPOSSIBLE, headline)
            .at(span, words)
            .because("The trial was calculated without this.")
            .build());
  }

  private void feederOpen(Event.FeederOpen open) {
    Wire.Purpose purpose = switch (open.conductor()) {
      case HOT, HOT_2, HOT_3 -> Wire.Purpose.HOT;
      case NEUTRAL -> Wire.Purpose.NEUTRAL;
      case GROUND -> Wire.Purpose.GROUND;
    };
    boolean has = house.panels().get(open.panel()).feeder()
        .filter(f -> f.wiring().wires().stream().anyMatch(w -> w.purpose() == purpose)).isPresent();
    if (!has) {
      impossible(open.span(), "the feeder of '" + open.panel() + "' has no " + purpose.name().toLowerCase(java.util.Locale.ROOT),
          "nothing to open here");
      return;
    }
    panelJoints.put(new Scenario.PanelWire(open.panel(), open.conductor()), Scenario.OPEN);
  }

  private void conductorOpen(Event.ConductorOpen open) {
    Branch branch = house.branches().get(open.branch());
    List<Section> sections = branch.sections().stream()
        .filter(s -> open.at().isEmpty() ? s.from() == 0 : isAt(branch, s.to(), open.at().get()))
        .toList();
    boolean found = false;
    for (Section section : sections) {
      Optional<Role> role = new Place(branch, section.to()).role(open.conductor());
      role.ifPresent(r -> openConductors.add(new Scenario.Wire(branch.name(), section.to(), r)));
      found |= role.isPresent();
    }
    if (!found) {
      String where = open.at().map(a -> " that ends at '" + a + "'").orElse("");
      impossible(
          open.span(), "'" + branch.name() + "' has no run" + where + " with " + article(open.conductor()),
          "nothing to open here");
    }
  }

  private boolean isAt(Branch branch, int point, String at) {
    return branch.points().get(point).box().equals(Optional.of(at))
        || branch.points().get(point).devices().contains(at);
  }

  static String article(Event.Conductor conductor) {
    return switch (conductor) {
      case HOT -> "a hot";
      case HOT_2 -> "another hot";
      case HOT_3 -> "a third hot";
      case NEUTRAL -> "a neutral";
      case GROUND -> "a ground";
    };
  }

  private void jointLoose(Event.JointLoose loose) {
    double ohms = loose.added().si();
    if (house.panels().containsKey(loose.at())) {
      panelJoints.merge(new Scenario.PanelWire(loose.at(), loose.conductor()), ohms, Double::sum);
      return;
    }
    Optional<Place> place = place(loose.at(), loose.span());
    Optional<Role> role = place.flatMap(p -> p.role(loose.conductor()));
    if (role.isPresent()) {
      joints.merge(new Scenario.Wire(place.get().branch().name(), place.get().point(), role.get()), ohms, Double::sum);
    } else if (place.isPresent()) {
      impossible(loose.span(), "no run brings " + article(loose.conductor()) + " to '" + loose.at() + "'", "no such joint");
    }
  }

  private void fault(Event.Faulted fault) {
    double ohms = fault.through().map(Quantity::si).orElse(0.0);
    if (house.panels().containsKey(fault.at())) {
      int legCount = house.panels().get(fault.at()).legs().size();
      int most = Math.max(fault.from().ordinal() < 3 ? fault.from().ordinal() : 0, fault.to().ordinal() < 3 ? fault.to().ordinal() : 0);
      if (most >= legCount) {
        impossible(fault.span(), "panel '" + fault.at() + "' has no other hot", "only one leg reaches it");
        return;
      }
      faults.add(new Scenario.Fault(fault.at(), Optional.empty(), 0, fault.from(), fault.to(), ohms));
      return;
    }
    Optional<Place> place = place(fault.at(), fault.span());
    if (place.isEmpty()) {
      return;
    }
    if (touchesMetalWithoutGround(fault, place.get())) {
      lifted.add(new Scenario.Lifted(fault.at(), place.get().branch().name(), place.get().point(), Optional.of(ohms)));
      return;
    }
    for (Event.Conductor conductor : List.of(fault.from(), fault.to())) {
      if (place.get().role(conductor).isEmpty()) {
        impossible(fault.span(), "no run brings " + article(conductor) + " to '" + fault.at() + "'", "nothing to touch");
        return;
      }
    }
    faults.add(
        new Scenario.Fault(
            fault.at(), Optional.of(place.get().branch().name()), place.get().point(), fault.from(), fault.to(), ohms));
  }

  /** Where no ground comes, a hot that touches the metal makes it live, and no current flows that would open anything. */
  private static boolean touchesMetalWithoutGround(Event.Faulted fault, Place place) {
    boolean between = fault.from() == Event.Conductor.HOT && fault.to() == Event.Conductor.GROUND
        || fault.from() == Event.Conductor.GROUND && fault.to() == Event.Conductor.HOT;
    return between && place.role(Event.Conductor.HOT).isPresent() && place.role(Event.Conductor.GROUND).isEmpty();
  }

  private void moved(Event.Moved moved) {
    Branch branch = house.branches().get(moved.branch());
    Optional<Panel> panel = branch.panel().map(house.panels()::get);
    if (panel.isEmpty() || branch.hots().isEmpty()) {
      impossible(moved.span(), "'" + branch.name() + "' is on no breaker", "nothing to move");
      return;
    }
    if (moved.slots().size() != branch.hots().size()) {
      impossible(
          moved.span(),
          "'" + branch.name() + "' has " + count(branch.hots().size(), "hot") + " and is moved to " + count(moved.slots().size(), "slot"),
          "one slot for each hot is expected here");
      return;
    }
    List<Optional<Leg>> to = new ArrayList<>();
    for (Slot slot : moved.slots()) {
      int slots = panel.get().slotCount().orElse(Integer.MAX_VALUE);
      if (slot.number() < 1 || slot.number() > slots) {
        impossible(moved.span(), "panel '" + panel.get().name() + "' has no slot " + slot, count(slots, "slot") + " in all");
        return;
      }
      to.add(Optional.of(panel.get().order().legOf(slot.number(), panel.get().slotCount().orElse(slot.number()), panel.get().legs())));
    }
    legs.put(branch.name(), to);
  }

  private static String count(int number, String thing) {
    return number + " " + thing + (number == 1 ? "" : "s");
  }

  private void drawing(Event.Drawing event) {
    Device source = house.devices().get(event.device());
    if (SupplyReader.isSource(source) && source.kind().grid().orElseThrow() != DeviceKind.Grid.EITHER) {
      impossible(event.span(), "'" + event.device() + "' is a source and does not draw", "write gives, or on");
      return;
    }
    List<Scenario.Drawn> parts = loads.of(event);
    if (parts.isEmpty()) {
      impossible(event.span(), "'" + event.device() + "' cannot draw anything", "no load of the plan is connected here");
      return;
    }
    String key = event.device();
    List<Scenario.Drawn> before = new ArrayList<>(drawn.getOrDefault(key, List.of()));
    before.removeIf(d -> event.part().isEmpty() || d.part().equals(event.part()));
    before.addAll(parts);
    drawn.put(key, before);
  }

  private void turned(Event.Turned turned) {
    Device device = house.devices().get(turned.device());
    if (!turned.on()) {
      off.add(device.name());
      return;
    }
    off.remove(device.name());
    if (device.kind().family() == DeviceKind.Family.SWITCH) {
      device.controls().stream().map(house.devices()::get).forEach(d -> drawn.putIfAbsent(d.name(), loads.of(d)));
    } else if (loads.of(device).isEmpty()) {
      impossible(turned.span(), "'" + device.name() + "' states no load", "state what it draws, such as draws 5 A");
    } else {
      drawn.put(device.name(), loads.of(device));
    }
  }
}
