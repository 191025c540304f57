package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Event;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.model.Role;
import wattle.model.SupplySystem;

/** What is in the boxes of a branch: outlets and loads, metal parts, faults. */
final class DeviceWriter {
  private final HouseNetworkBuilder out;
  private final Branch branch;
  private final List<Controls.Group> groups;
  private final SupplySystem system;
  private final Map<Integer, Integer> boxes;
  private final Map<Integer, Map<Role, Integer>> terminals;

  DeviceWriter(
      HouseNetworkBuilder out, Branch branch, List<Controls.Group> groups, SupplySystem system,
      Map<Integer, Integer> boxes, Map<Integer, Map<Role, Integer>> terminals) {
    this.out = out;
    this.branch = branch;
    this.groups = groups;
    this.system = system;
    this.boxes = boxes;
    this.terminals = terminals;
  }

  void write(int point) {
    for (String name : branch.points().get(point).devices()) {
      Device device = out.house.devices().get(name);
      if (device != null) {
        device.loads().forEach(load -> outlet(device, load, point));
        if (SupplyReader.isSource(device)) {
          List<HouseNetwork.Outlet> at = out.outlets.stream().filter(o -> o.device().equals(name) && o.branch().equals(branch.name()))
              .toList();
          new FeedingWriter(out, branch, system).write(device, at, terminals.get(point));
        }
        metal(name, point);
      }
    }
    for (Scenario.Lifted lifted : out.scenario.lifted()) {
      if (lifted.branch().equals(branch.name()) && lifted.point() == point) {
        lifted(lifted, point);
      }
    }
    for (Scenario.Fault fault : out.scenario.faults()) {
      if (fault.branch().equals(Optional.of(branch.name())) && fault.point() == point) {
        fault(fault, point);
      }
    }
  }

  private void outlet(Device device, Load load, int point) {
    Map<Role, Integer> here = terminals.get(point);
    Optional<Role> one = Optional.empty();
    Optional<Role> other = Optional.empty();
    if (load.connection() instanceof Load.Connection.HotToHot across) {
      one = Optional.of(opened(device, across.hot()));
      other = Optional.of(opened(device, across.otherHot()));
    } else if (load.connection() instanceof Load.Connection.HotToNeutral to) {
      one = Optional.of(hotOf(device, load, to.hot(), here));
      other = Optional.of(new Role.Neutral());
    }
    if (one.isEmpty() || !here.containsKey(one.get()) || !here.containsKey(other.get())) {
      return; // not connected, which is a finding of the binder
    }
    HouseNetwork.Outlet outlet = new HouseNetwork.Outlet(
        device.name(), load.part(), load.connection(), branch.name(), point, boxes.get(point), here.get(one.get()),
        here.get(other.get()), legs(load.connection()), nominal(load.connection(), system));
    out.outlets.add(outlet);
    for (Scenario.Drawn drawn : out.scenario.drawn()) {
      if (drawn.device().equals(device.name()) && drawn.part().equals(load.part())
          && drawn.connection().equals(load.connection())) {
        int element = out.net.load(
            outlet.box(), outlet.a(), outlet.b(), drawn.voltAmperes(), drawn.nominalVolts(), drawn.behavior());
        out.loads.add(new HouseNetwork.Drawing(outlet, element, drawn));
      }
    }
  }

  private List<Leg> legs(Load.Connection connection) {
    List<Integer> hots = new ArrayList<>();
    if (connection instanceof Load.Connection.HotToNeutral to) {
      hots.add(to.hot());
    } else if (connection instanceof Load.Connection.HotToHot across) {
      hots.add(across.hot());
      hots.add(across.otherHot());
    }
    return hots.stream().flatMap(h -> out.legOf(branch, h).stream()).toList();
  }

  static double nominal(Load.Connection connection, SupplySystem system) {
    return connection instanceof Load.Connection.HotToHot ? system.legToLegVolts() : system.legToNeutralVolts();
  }

  /** A hot of a load between two of them: the switch leg where a switch opens that one. */
  private Role opened(Device device, int hot) {
    return Controls.controlling(groups, device.name()).flatMap(g -> g.leg(hot)).orElse(new Role.Hot(hot));
  }

  /** The hot that a part sits on; of what a switch controls, the switch leg, but where only a half is switched. */
  private Role hotOf(Device device, Load load, int hot, Map<Role, Integer> here) {
    Role plain = new Role.Hot(hot);
    Optional<Controls.Group> group = Controls.controlling(groups, device.name());
    if (group.isEmpty()) {
      return plain;
    }
    boolean halfOnly = device.kind().halves().size() > 1 && here.containsKey(plain);
    boolean switchedHalf = !halfOnly || load.part().equals(device.kind().halves().get(0));
    Role leg = group.get().leg(hot).orElse(group.get().legs().get(0));
    return switchedHalf && here.containsKey(leg) ? leg : plain;
  }

  private void metal(String name, int point) {
    Integer ground = terminals.get(point).get(new Role.Ground());
    boolean lifted = out.scenario.lifted().stream().anyMatch(l -> l.at().equals(name));
    if (ground != null && !lifted) {
      out.metals.add(new HouseNetwork.Metal(name, branch.name(), false, boxes.get(point), ground));
    }
  }

  private void lifted(Scenario.Lifted lifted, int point) {
    Map<Role, Integer> here = terminals.get(point);
    int metal = here.get(BranchWriter.metalOf(lifted));
    int box = boxes.get(point);
    Optional<Integer> hot = new Place(branch, point, Optional.of(lifted.at())).role(Event.Conductor.HOT).map(here::get);
    if (lifted.leakage().isPresent() && hot.isPresent()) {
      int element = out.net.resistance(box, metal, hot.get(), Math.max(HouseNetworkBuilder.BOLTED, lifted.leakage().get()));
      out.leakages.add(new HouseNetwork.Leakage(lifted.at(), element));
    }
    out.touch(box, metal);
    out.metals.add(new HouseNetwork.Metal(lifted.at(), branch.name(), true, box, metal));
  }

  private void fault(Scenario.Fault fault, int point) {
    Map<Role, Integer> here = terminals.get(point);
    Place place = new Place(branch, point, Optional.of(fault.at()));
    Optional<Integer> from = place.role(fault.from()).map(here::get);
    Optional<Integer> to = place.role(fault.to()).map(here::get);
    if (from.isPresent() && to.isPresent()) {
      int element = out.net.resistance(
          boxes.get(point), from.get(), to.get(), Math.max(HouseNetworkBuilder.BOLTED, fault.ohms()));
      out.faults.add(new HouseNetwork.Faulting(fault, element));
    }
  }
}
