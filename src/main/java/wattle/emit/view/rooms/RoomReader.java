package wattle.emit.view.rooms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.Device;
import wattle.model.DeviceKind.Family;
import wattle.model.DeviceKind.Need;
import wattle.model.House;
import wattle.model.Load;
import wattle.model.Point;
import wattle.model.Protection;
import wattle.model.Room;
import wattle.model.Section;
import wattle.model.Status;
import wattle.words.BreakerWords;

/** Reads from the model what the schedule says of a room. */
final class RoomReader {
  private final House house;

  RoomReader(House house) {
    this.house = house;
  }

  /** Where a branch comes to. */
  private record Place(Branch branch, int index) {
    Point point() {
      return branch.points().get(index);
    }
  }

  List<RoomRow> rows(Room room) {
    List<RoomRow> rows = new ArrayList<>();
    for (String name : room.boxes()) {
      Box box = house.boxes().get(name);
      List<Device> devices = box.devices().stream().map(house.devices()::get).filter(d -> d.kind().family() != Family.JUNCTION).toList();
      if (devices.isEmpty()) {
        rows.add(row(name, box(box), joints(box), List.of(), places(p -> p.box().equals(Optional.of(name)))));
      }
      for (int i = 0; i < devices.size(); i++) {
        rows.add(row(devices.get(i), i == 0 ? box(box) : List.of(), box));
      }
    }
    return rows;
  }

  /** What is in a box without devices; a joint by its own name and label, where it has any. */
  private List<String> joints(Box box) {
    List<String> cell = new ArrayList<>();
    for (String name : box.devices()) {
      Device joint = house.devices().get(name);
      cell.add(joint.kind().name().equals("junction") ? "splices only" : joint.kind().name());
      joint.label().ifPresent(l -> cell.add("“" + l + "”"));
    }
    return cell.isEmpty() ? List.of("splices only") : cell;
  }

  private RoomRow row(Device device, List<String> boxCell, Box box) {
    List<String> what = new ArrayList<>();
    if (!device.name().equals(box.name())) {
      what.add(device.name());
    }
    String traits = String.join(", ", new TreeSet<>(device.traits()));
    what.add(device.kind().name() + (traits.isEmpty() ? "" : ", " + traits) + status(device.status()));
    device.label().ifPresent(l -> what.add("“" + l + "”"));
    device.location().ifPresent(l -> what.add("at " + l));
    if (!device.controls().isEmpty()) {
      what.add("works " + String.join(", ", device.controlledHalves().isEmpty() ? device.controls() : device.controlledHalves()));
    }
    List<String> load = device.voltAmperes() > 0 ? List.of(Math.round(device.voltAmperes()) + " VA") : List.of();
    List<Place> places = places(p -> p.devices().contains(device.name()));
    if (places.isEmpty()) {
      return new RoomRow(device.name(), List.of(boxCell, what, load, List.of("not fed"), List.of(), List.of(), List.of()));
    }
    Place place = places.get(0);
    return new RoomRow(
        device.name(),
        List.of(boxCell, what, load, branch(place.branch()), breakers(place.branch()), legs(device, place), protection(device, place)));
  }

  private RoomRow row(String name, List<String> box, List<String> what, List<String> load, List<Place> places) {
    List<String> branches = new ArrayList<>();
    List<String> breakers = new ArrayList<>();
    for (Place place : places) {
      branches.addAll(branch(place.branch()));
      breakers.addAll(breakers(place.branch()));
    }
    return new RoomRow(name, List.of(box, what, load, branches.isEmpty() ? List.of("not fed") : branches, breakers, List.of(), List.of()));
  }

  private List<Place> places(java.util.function.Predicate<Point> wanted) {
    List<Place> places = new ArrayList<>();
    for (Branch branch : house.branches().values()) {
      IntStream.range(0, branch.points().size()).filter(i -> wanted.test(branch.points().get(i)))
          .forEach(i -> places.add(new Place(branch, i)));
    }
    return places;
  }

  private static List<String> box(Box box) {
    List<String> cell = new ArrayList<>(List.of(box.name()));
    List<String> facts = new ArrayList<>();
    box.gangs().ifPresent(g -> facts.add(g + "-gang"));
    box.volume().ifPresent(v -> facts.add(v.toString()));
    facts.addAll(new TreeSet<>(box.traits()));
    facts.replaceAll(t -> t.equals("boxless") ? "no box" : t.equals("uncovered") ? "no cover" : t);
    if (!facts.isEmpty() || box.status() != Status.NEW) {
      cell.add((String.join(", ", facts) + status(box.status())).strip());
    }
    return cell;
  }

  private static String status(Status status) {
    return status == Status.NEW ? "" : status == Status.EXISTING ? " (existing)" : " (to be removed)";
  }

  private static List<String> branch(Branch branch) {
    List<String> cell = new ArrayList<>(List.of(branch.name() + ", " + branch.wiring().text()));
    branch.label().ifPresent(cell::add);
    return cell;
  }

  private List<String> breakers(Branch branch) {
    List<String> cell = new ArrayList<>();
    branch.hots().stream().map(BranchHot::breaker).distinct()
        .forEach(id -> cell.add(id + house.breaker(id).map(b -> ", " + BreakerWords.rating(b)).orElse("")));
    return cell.isEmpty() ? List.of("no breaker") : cell;
  }

  /** A line for each hot that the device is on; a half of a receptacle says which it is. */
  private List<String> legs(Device device, Place place) {
    List<BranchHot> hots = place.branch().hots();
    List<String> cell = new ArrayList<>();
    boolean halves = device.loads().stream().map(l -> hots(device, l.connection(), place)).distinct().count() > 1;
    for (int hot = 0; hot < hots.size(); hot++) {
      int wanted = hot;
      List<String> parts = device.loads().stream().filter(l -> hots(device, l.connection(), place).contains(wanted)).map(Load::part)
          .filter(p -> !p.isEmpty()).distinct().toList();
      boolean on = device.loads().isEmpty()
          ? hots(device, place).contains(hot)
          : device.loads().stream().anyMatch(l -> hots(device, l.connection(), place).contains(wanted));
      if (on) {
        cell.add((halves && !parts.isEmpty() ? String.join(", ", parts) + ": " : "") + slotAndLeg(hots.get(hot)));
      }
    }
    return cell;
  }

  private static List<Integer> hots(Device device, Load.Connection connection, Place place) {
    if (connection instanceof Load.Connection.HotToNeutral one) {
      return List.of(one.hot());
    }
    if (connection instanceof Load.Connection.HotToHot two) {
      return List.of(two.hot(), two.otherHot());
    }
    return List.of(place.point().hotOf(device.name()));
  }

  private static List<Integer> hots(Device device, Place place) {
    return device.kind().needs().contains(Need.TWO_HOTS)
        ? IntStream.range(0, place.branch().hots().size()).boxed().toList()
        : List.of(place.point().hotOf(device.name()));
  }

  private String slotAndLeg(BranchHot hot) {
    String slot = house.breaker(hot.breaker()).filter(b -> hot.pole() < b.poles().size())
        .map(b -> "slot " + b.poles().get(hot.pole()).slot()).orElse("slot ?");
    return slot + hot.leg().map(l -> ", leg " + l.name()).orElse(", leg not known");
  }

  /** By which of them the device is protected against what: its breaker, itself, or a device that it is wired through. */
  private List<String> protection(Device device, Place place) {
    List<String> cell = new ArrayList<>();
    for (Protection protection : Protection.values()) {
      List<String> by = new ArrayList<>();
      List<Breaker> breakers = place.branch().hots().stream().map(BranchHot::breaker).distinct().flatMap(b -> house.breaker(b).stream())
          .toList();
      if (!breakers.isEmpty() && breakers.stream().allMatch(b -> b.protections().contains(protection))) {
        by.add("breaker");
      }
      if (device.kind().protections().contains(protection)) {
        by.add("itself");
      }
      before(place).stream().filter(d -> d.kind().protections().contains(protection)).forEach(d -> by.add(d.name()));
      if (!by.isEmpty()) {
        cell.add(protection.word() + ": " + String.join(", ", by));
      }
    }
    return cell;
  }

  /** Devices on the way from the panel that protect what is wired onward from them. */
  private List<Device> before(Place place) {
    List<Device> before = new ArrayList<>();
    int at = place.index();
    while (at > 0) {
      int to = at;
      Optional<Section> section = place.branch().sections().stream().filter(s -> s.to() == to).findFirst();
      if (section.isEmpty()) {
        break;
      }
      at = section.get().from();
      place.branch().points().get(at).devices().stream()
          .map(house.devices()::get).filter(d -> d.traits().contains("protects-onward")).forEach(before::add);
    }
    return before;
  }

  /** All that is connected in a room and stays, in volt-amperes. */
  double voltAmperes(Room room) {
    return room.boxes().stream()
        .flatMap(b -> house.boxes().get(b).devices().stream())
        .map(house.devices()::get)
        .filter(d -> d.status() != Status.TO_REMOVE && d.kind().family() != Family.SOURCE)
        .mapToDouble(Device::voltAmperes).sum();
  }
}
