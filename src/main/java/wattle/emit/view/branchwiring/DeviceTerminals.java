package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.emit.view.branchwiring.Controls.Group;
import wattle.emit.view.branchwiring.Terminal.Make;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.DeviceKind.Need;
import wattle.model.Load;
import wattle.model.Point;
import wattle.model.Role;

/**
 * The terminals of a device, and what each is joined to. Screws by their finish: brass for a hot, silver for the neutral,
 * green for the ground, dark for the common of a three-way switch (NFPA 70 200.9, 200.10 and 250.126 for the first three;
 * the last is common practice).
 */
final class DeviceTerminals {
  private final Branch branch;
  private final Controls controls;

  DeviceTerminals(Branch branch, Controls controls) {
    this.branch = branch;
    this.controls = controls;
  }

  /** @param through whether the rest of the branch hangs on this device's screws */
  List<Terminal> of(Device device, Point point, boolean through) {
    return switch (device.kind().family()) {
      case SWITCH -> ofSwitch(device, point);
      case RECEPTACLE -> ofReceptacle(device, point, through);
      case LIGHT -> ofLeads(device, point);
      case APPLIANCE, SOURCE -> ofAppliance(device, point);
      case JUNCTION -> List.of();
    };
  }

  private static Terminal top(String name, Make make, Role role) {
    return new Terminal(name, make, false, Optional.of(Net.Key.of(role)));
  }

  private static Terminal foot(String name, Make make, Role role) {
    return new Terminal(name, make, true, Optional.of(Net.Key.of(role)));
  }

  private static void ground(List<Terminal> to, Device device, String name, Make make) {
    if (device.kind().needs().contains(Need.GROUND)) {
      to.add(foot(name, make, new Role.Ground()));
    }
  }

  private List<Terminal> ofSwitch(Device device, Point point) {
    List<Terminal> all = new ArrayList<>();
    Optional<Group> group = controls.ofSwitch(device.name());
    Role feed = new Role.Hot(point.hotOf(device.name()));
    if (group.isEmpty()) {
      all.add(top("brass, feed", Make.BRASS, feed));
      all.add(new Terminal("brass", Make.BRASS, false, Optional.empty()));
    } else {
      feed = new Role.Hot(group.get().hot());
      Role leg = new Role.SwitchLeg(group.get().last(), group.get().hot());
      int place = group.get().place(device.name());
      int last = group.get().switches().size() - 1;
      if (last == 0 && group.get().hots().size() > 1) {
        for (int hot : group.get().hots()) {
          all.add(top("feed " + (hot + 1), Make.BRASS, new Role.Hot(hot)));
          all.add(top("switched " + (hot + 1), Make.BRASS, new Role.SwitchLeg(group.get().last(), hot)));
        }
      } else if (last == 0) {
        all.add(top("brass, feed", Make.BRASS, feed));
        all.add(top("brass, switched", Make.BRASS, leg));
      } else if (place == 0) {
        all.add(top("common, dark", Make.DARK, feed));
        all.addAll(pair(group.get(), 0, "brass"));
      } else if (place == last) {
        all.addAll(pair(group.get(), place - 1, "brass"));
        all.add(top("common, dark", Make.DARK, leg));
      } else {
        all.addAll(pair(group.get(), place - 1, "in"));
        all.addAll(pair(group.get(), place, "out"));
      }
    }
    if (device.kind().needs().contains(Need.NEUTRAL)) {
      all.add(foot("silver", Make.SILVER, new Role.Neutral()));
    }
    ground(all, device, "green", Make.GREEN);
    return all;
  }

  private static List<Terminal> pair(Group group, int from, String name) {
    String one = group.switches().get(from);
    String other = group.switches().get(from + 1);
    return List.of(
        top(name + ", trav. 1", Make.BRASS, new Role.Traveler(one, other, 1, group.hot())),
        top(name + ", trav. 2", Make.BRASS, new Role.Traveler(one, other, 2, group.hot())));
  }

  private List<Terminal> ofReceptacle(Device device, Point point, boolean through) {
    if (device.kind().needs().contains(Need.TWO_HOTS)) {
      return acrossLegs(device, "brass X", "brass Y", "silver W", Make.BRASS);
    }
    List<Terminal> all = new ArrayList<>();
    List<Role> feeds = feeds(device, point);
    if (feeds.size() > 1) {
      for (int i = 0; i < feeds.size(); i++) {
        all.add(top("brass, " + device.kind().halves().get(i), Make.BRASS, feeds.get(i)));
      }
    } else if (through && feeds.get(0) instanceof Role.Hot) {
      all.add(top("brass, line", Make.BRASS, feeds.get(0)));
      all.add(new Terminal("brass, onward", Make.BRASS, false, Optional.of(new Net.Key(feeds.get(0), true))));
    } else {
      all.add(top("brass", Make.BRASS, feeds.get(0)));
    }
    if (device.kind().needs().contains(Need.NEUTRAL)) {
      boolean onward = through && feeds.size() == 1;
      all.add(foot(onward ? "silver, line" : "silver", Make.SILVER, new Role.Neutral()));
      if (onward) {
        all.add(new Terminal("silver, onward", Make.SILVER, true, Optional.of(new Net.Key(new Role.Neutral(), true))));
      }
    }
    ground(all, device, "green", Make.GREEN);
    return all;
  }

  /** What feeds the brass side: one role for the whole, or one for each half where they differ. */
  List<Role> feeds(Device device, Point point) {
    List<Role> feeds = new ArrayList<>();
    for (String half : device.kind().halves()) {
      Role feed = hotOf(device, half, point);
      feeds.add(controls.ofHalf(device.name() + "." + half).<Role>map(g -> new Role.SwitchLeg(g.last(), g.hot())).orElse(feed));
    }
    if (feeds.stream().distinct().count() > 1) {
      return feeds;
    }
    return List.of(
        controls.ofLight(device.name()).<Role>map(g -> new Role.SwitchLeg(g.last(), g.hot()))
            .orElse(feeds.isEmpty() ? hotOf(device, "", point) : feeds.get(0)));
  }

  private static Role hotOf(Device device, String part, Point point) {
    return device.loads().stream()
        .filter(l -> l.part().equals(part))
        .map(Load::connection)
        .filter(Load.Connection.HotToNeutral.class::isInstance)
        .map(c -> (Role) new Role.Hot(((Load.Connection.HotToNeutral) c).hot()))
        .findFirst()
        .orElse(new Role.Hot(point.hotOf(device.name())));
  }

  private List<Terminal> ofLeads(Device device, Point point) {
    List<Terminal> all = new ArrayList<>();
    all.add(top("black lead", Make.LEAD, feeds(device, point).get(0)));
    if (device.kind().needs().contains(Need.NEUTRAL)) {
      all.add(foot("white lead", Make.LEAD, new Role.Neutral()));
    }
    ground(all, device, "ground lead", Make.LEAD);
    return all;
  }

  /** Whether the wire by which alarms sound together comes here, which only alarms have. */
  private boolean isInterconnected(Device device, Point point) {
    int here = branch.points().indexOf(point);
    return device.kind().name().endsWith(" alarm")
        && branch.sections().stream().filter(s -> s.from() == here || s.to() == here)
            .anyMatch(s -> s.conductors().stream().anyMatch(c -> c.role() instanceof Role.Interconnect));
  }

  private List<Terminal> ofAppliance(Device device, Point point) {
    if (device.kind().needs().contains(Need.TWO_HOTS)) {
      return acrossLegs(device, device.kind().isThreePhase() ? "T1" : "L1", device.kind().isThreePhase() ? "T2" : "L2", "N", Make.LEAD);
    }
    List<Terminal> all = new ArrayList<>();
    all.add(top("L", Make.LEAD, feeds(device, point).get(0)));
    if (isInterconnected(device, point)) {
      all.add(top("interconnect", Make.LEAD, new Role.Interconnect()));
    }
    if (device.kind().needs().contains(Need.NEUTRAL)) {
      all.add(foot("N", Make.LEAD, new Role.Neutral()));
    }
    ground(all, device, "ground", Make.LEAD);
    return all;
  }

  /** Between two hots; on a branch of one hot its second terminal goes to the neutral. */
  private List<Terminal> acrossLegs(Device device, String one, String two, String neutral, Make make) {
    List<Terminal> all = new ArrayList<>();
    Optional<Group> group = controls.ofLight(device.name());
    boolean single = branch.hots().size() == 1;
    all.add(top(one, make, group.flatMap(g -> g.leg(0)).orElse(new Role.Hot(0))));
    if (single) {
      all.add(foot(two, make, new Role.Neutral()));
    } else {
      all.add(top(two, make, group.flatMap(g -> g.leg(1)).orElse(new Role.Hot(1))));
    }
    if (device.kind().isThreePhase() && branch.hots().size() > 2) {
      all.add(top(make == Make.BRASS ? "brass Z" : "T3", make, group.flatMap(g -> g.leg(2)).orElse(new Role.Hot(2))));
    }
    if (device.kind().needs().contains(Need.NEUTRAL)) {
      all.add(foot(neutral, make == Make.BRASS ? Make.SILVER : make, new Role.Neutral()));
    }
    ground(all, device, make == Make.BRASS ? "green" : "ground", make == Make.BRASS ? Make.GREEN : make);
    return all;
  }

  /** What to say of the tab of a split receptacle. */
  Fixture.Tab tab(Device device, Point point) {
    if (device.kind().family() != Family.RECEPTACLE || device.kind().halves().size() < 2) {
      return Fixture.Tab.NONE;
    }
    return feeds(device, point).size() > 1 ? Fixture.Tab.BROKEN : Fixture.Tab.KEPT;
  }
}
