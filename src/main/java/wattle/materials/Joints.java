package wattle.materials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.ConductorUse;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.DeviceKind.Need;
import wattle.model.House;
import wattle.model.Panel;
import wattle.model.PanelSupply;
import wattle.model.Point;
import wattle.model.Role;
import wattle.model.Section;
import wattle.model.Status;
import wattle.model.Wiring;
import wattle.quantity.WireSize;

/**
 * Connectors. A cable is held by one where it enters a box or panel, unless the box has clamps of its own. In a box,
 * conductors that do the same are joined with one wire connector, together with a pigtail to each device; a lone
 * conductor goes straight to the screw of a lone device, and where a device is wired through its screws do the joining.
 * Grounds of all cables in a box are one joint. A joint counts where something in it is new.
 */
final class Joints {
  private final House house;

  Joints(House house) {
    this.house = house;
  }

  /** Conductors that are joined, with the pigtails among them. */
  private static final class Joint {
    private int conductors;
    private int pigtails;
    private boolean toLead;
    private boolean isNew;
    private double largest;
    private String size = "";

    /** A device's end: a pigtail to a screw, or a lead that the device brings and that must be joined in any case. */
    void device(boolean lead, boolean fresh) {
      pigtails++;
      toLead |= lead;
      isNew |= fresh;
    }

    /** A lone conductor goes straight to the screw of a lone device; all else is joined. */
    boolean isJoined() {
      return conductors > 1 || conductors == 1 && (toLead || pigtails > 1);
    }

    int ends() {
      return conductors + pigtails;
    }

    void add(WireSize of, boolean fresh) {
      conductors++;
      isNew |= fresh;
      if (of.areaSquareMillimeters() > largest) {
        largest = of.areaSquareMillimeters();
        size = of.toString();
      }
    }
  }

  void count(Tally tally) {
    Map<String, Joint> grounds = new LinkedHashMap<>();
    for (Branch branch : house.branches().values()) {
      for (int p = 0; p < branch.points().size(); p++) {
        List<Section> ends = ends(branch, p);
        Point point = branch.points().get(p);
        entries(branch, point, ends, tally);
        if (point.box().isPresent()) {
          joints(branch, point, ends, grounds, tally);
        }
      }
    }
    grounds.forEach((box, joint) -> connector(joint, box, tally));
    house.panels().values().forEach(p -> feeder(p, tally));
  }

  /** A feeder enters two panels; how the service run enters is a matter of the supplier's rules. */
  private static void feeder(Panel panel, Tally tally) {
    if (panel.status() == Status.NEW && panel.feeder().isPresent() && panel.supply() instanceof PanelSupply.FromBreaker from) {
      entry(panel.feeder().get().wiring(), from.breaker().panel(), tally);
      entry(panel.feeder().get().wiring(), panel.name(), tally);
    }
  }

  private static List<Section> ends(Branch branch, int point) {
    return branch.sections().stream().filter(s -> s.from() == point || s.to() == point).toList();
  }

  private void entries(Branch branch, Point point, List<Section> ends, Tally tally) {
    Box box = point.box().map(house.boxes()::get).orElse(null);
    boolean clamps = box != null && (box.traits().contains("clamps") || box.traits().contains("plastic"));
    String place = point.box().or(branch::panel).orElse(branch.name());
    for (Section section : ends) {
      if (section.status() == Status.NEW && !clamps) {
        entry(section.wiring(), place, tally);
      }
    }
  }

  private static void entry(Wiring wiring, String place, Tally tally) {
    String kind = wiring.raceway().isPresent() ? "raceway connector, " : "cable connector, ";
    tally.add(Material.Category.CONNECTOR, kind + wiring.text().split(" with ", 2)[0], place);
  }

  private void joints(Branch branch, Point point, List<Section> ends, Map<String, Joint> grounds, Tally tally) {
    String box = point.box().orElseThrow();
    Map<Role, Joint> joints = new LinkedHashMap<>();
    for (Section section : ends) {
      for (ConductorUse use : section.conductors()) {
        if (use.role() instanceof Role.Spare) {
          continue;
        }
        Joint joint = use.role() instanceof Role.Ground
            ? grounds.computeIfAbsent(box, b -> new Joint())
            : joints.computeIfAbsent(use.role(), r -> new Joint());
        joint.add(use.wire().size(), section.status() == Status.NEW);
      }
    }
    List<Device> devices = point.devices().stream().map(house.devices()::get).filter(d -> d.kind().family() != Family.JUNCTION).toList();
    for (Device device : devices) {
      pigtails(device, joints, grounds.get(box));
    }
    joints.forEach((role, joint) -> {
      boolean onScrews = point.wiredThrough() && (role instanceof Role.Hot || role instanceof Role.Neutral);
      if (!onScrews) {
        connector(joint, box, tally);
      }
    });
  }

  /** The device's own ends: on what it switches or draws from, and on the ground. */
  private static void pigtails(Device device, Map<Role, Joint> joints, Joint ground) {
    boolean fresh = device.status() == Status.NEW;
    List<Joint> touched = new ArrayList<>();
    joints.forEach((role, joint) -> {
      boolean neutral = role instanceof Role.Neutral && device.kind().needs().contains(Need.NEUTRAL);
      boolean ownControl = role instanceof Role.SwitchLeg s
          && (s.fromSwitch().equals(device.name()) || device.kind().family() != Family.SWITCH)
          || role instanceof Role.Traveler t && (t.betweenSwitch().equals(device.name()) || t.andSwitch().equals(device.name()));
      boolean hot = role instanceof Role.Hot h && joints.keySet().stream().noneMatch(r -> replaces(r, h, device));
      if (neutral || ownControl || hot) {
        touched.add(joint);
      }
    });
    boolean lead = device.kind().family() == Family.LIGHT || device.kind().family() == Family.APPLIANCE
        || device.kind().family() == Family.SOURCE;
    touched.forEach(j -> j.device(lead, fresh));
    if (ground != null && device.kind().needs().contains(Need.GROUND)) {
      ground.device(lead, fresh);
    }
  }

  /** Whether a switch leg is what a load is joined to in place of a hot: of one between two hots, that of this very hot. */
  private static boolean replaces(Role role, Role.Hot hot, Device device) {
    boolean across = device.kind().needs().contains(Need.TWO_HOTS);
    return role instanceof Role.SwitchLeg leg && device.kind().family() != Family.SWITCH && (!across || leg.hot() == hot.hot());
  }

  private static void connector(Joint joint, String box, Tally tally) {
    if (joint.isJoined() && joint.isNew) {
      tally.add(Material.Category.CONNECTOR, "wire connector for " + joint.ends() + " × " + joint.size, box);
    }
  }
}
