package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Span;
import wattle.model.Box;
import wattle.model.House;
import wattle.model.Origin;
import wattle.model.Room;
import wattle.model.RoomKind;
import wattle.model.Status;
import wattle.model.Words;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** Rooms with their boxes and devices. A device that stands in no box of the plan has a box of its own, by its name. */
final class RoomBinder {
  private final Scope scope;
  private final DeviceBinder devices;
  private final BoxSizes sizes;

  RoomBinder(Scope scope) {
    this.scope = scope;
    this.devices = new DeviceBinder(scope);
    this.sizes = new BoxSizes(scope);
  }

  /** A room with its boxes, and the devices in them before anything is wired. */
  record Part(Room room, List<Box> boxes, List<UnwiredDevice> devices) {
    /** Whether the same names stand for the same kinds of things in the same boxes. */
    private boolean hasPlacesOf(Part other) {
      boolean same = room.name().equals(other.room.name()) && boxes.size() == other.boxes.size() && devices.size() == other.devices.size();
      for (int i = 0; same && i < boxes.size(); i++) {
        same = boxes.get(i).name().equals(other.boxes.get(i).name()) && boxes.get(i).devices().equals(other.boxes.get(i).devices());
      }
      for (int i = 0; same && i < devices.size(); i++) {
        UnwiredDevice one = devices.get(i);
        UnwiredDevice two = other.devices.get(i);
        same = one.name().equals(two.name()) && one.box().equals(two.box()) && one.kind() == two.kind();
      }
      return same;
    }

    private boolean hasControlsOf(Part other) {
      return devices.stream().map(Part::controls).toList().equals(other.devices.stream().map(Part::controls).toList());
    }

    private static List<String> controls(UnwiredDevice device) {
      return device.controls().stream().map(Tree.Path::text).toList();
    }
  }

  /**
   * All rooms, boxes and devices by name, in the order written.
   *
   * @param places the same object in two of these only where the same names stand for the same kinds of things in the same boxes
   * @param controls the same object only where, besides, the same names are written of what each controls
   */
  record Bound(
      List<Part> parts, Map<String, Room> rooms, Map<String, Box> boxes, Map<String, UnwiredDevice> devices, Object places,
      Object controls) {
    static Bound of(List<Part> parts) {
      return of(parts, new Object(), new Object());
    }

    private static Bound of(List<Part> parts, Object places, Object controls) {
      List<Box> boxes = new ArrayList<>();
      List<UnwiredDevice> devices = new ArrayList<>();
      for (Part part : parts) {
        boxes.addAll(part.boxes);
        devices.addAll(part.devices);
      }
      return new Bound(
          parts, House.byName(parts.stream().map(Part::room).toList(), Room::name), House.byName(boxes, Box::name),
          House.byName(devices, UnwiredDevice::name), places, controls);
    }

    /** These rooms where others were before: the same object where they are the same. */
    Bound with(List<Part> now) {
      if (now.size() != parts.size()) {
        return of(now);
      }
      boolean same = true;
      boolean samePlaces = true;
      boolean sameControls = true;
      for (int i = 0; i < now.size(); i++) {
        if (now.get(i) != parts.get(i)) {
          same = false;
          samePlaces &= now.get(i).hasPlacesOf(parts.get(i));
          sameControls &= samePlaces && now.get(i).hasControlsOf(parts.get(i));
        }
      }
      return same ? this : of(now, samePlaces ? places : new Object(), sameControls ? controls : new Object());
    }

    /** Names of devices in rooms that are other objects there, though in the same places. */
    List<String> devicesUnlike(Bound others) {
      List<String> unlike = new ArrayList<>();
      for (int i = 0; i < parts.size(); i++) {
        if (parts.get(i) != others.parts.get(i)) {
          parts.get(i).devices.forEach(d -> unlike.add(d.name()));
        }
      }
      return unlike;
    }
  }

  Bound bind(List<Tree.Room> trees, Memory memory) {
    Map<String, Span> names = new HashMap<>();
    List<Tree.Room> kept = trees.stream().filter(t -> scope.claim(names, t.name().text(), t.name().span(), "rooms")).toList();
    return memory.rooms(
        memory.rooms.all(kept, tree -> tree, scope, (tree, known) -> Optional.of(known), within -> new RoomBinder(within)::room));
  }

  /** What has been found in a room so far. */
  private record Contents(String room, Map<String, Span> names, List<Box> boxes, List<UnwiredDevice> devices) {}

  private Part room(Tree.Room tree) {
    String room = tree.name().text();
    Contents contents = new Contents(room, new HashMap<>(), new ArrayList<>(), new ArrayList<>());
    Status status = Scope.status(tree.status());
    for (Tree.Box box : tree.boxes()) {
      if (claim(box.name(), contents)) {
        contents.boxes.add(box(box, contents, status));
      }
    }
    for (Tree.Device device : tree.devices()) {
      if (claim(device.name(), contents)) {
        devices.bind(device, room, room + "." + device.name(), status).ifPresent(d -> own(d, contents));
      }
    }
    Map<String, Boolean> flags = new HashMap<>();
    Map<String, Quantity> facts = Facts.OF_ROOM.read(tree.facts(), scope, flags);
    return new Part(
        new Room(
            room, Scope.label(tree.label()), kind(tree), facts, flags, contents.boxes.stream().map(Box::name).toList(), status,
            new Origin(tree.name().span(), tree.span())),
        contents.boxes, contents.devices);
  }

  private boolean claim(Tree.Word name, Contents contents) {
    return scope.claim(contents.names, name.text(), name.span(), "things in " + contents.room);
  }

  /** The box that a device has to itself: its size is what the device's own line says of one. */
  private static void own(UnwiredDevice device, Contents contents) {
    contents.devices.add(device);
    contents.boxes.add(
        new Box(
            device.name(), device.room(), Optional.ofNullable(device.facts().get("box-volume")), Optional.empty(),
            device.boxTraits(), List.of(device.name()), device.status(), device.origin()));
  }

  private Box box(Tree.Box tree, Contents contents, Status ofRoom) {
    Status status = Scope.status(tree.status(), ofRoom);
    String room = contents.room;
    String name = room + "." + tree.name();
    List<String> inside = new ArrayList<>();
    for (Tree.Device device : tree.devices()) {
      if (claim(device.name(), contents)) {
        devices
            .bind(device, room, name, status)
            .ifPresent(
                d -> {
                  contents.devices.add(d);
                  inside.add(d.name());
                });
      }
    }
    Set<String> traits = new LinkedHashSet<>();
    for (Tree.Word word : tree.words()) {
      scope.word(Words.BOX_TRAITS, word).ifPresent(traits::add);
    }
    Optional<Quantity> volume = sizes.volume(tree.amounts(), traits, tree.gangs().orElse(1), tree.name().span());
    return new Box(
        name, room, volume, tree.gangs(), traits, inside, status,
        new Origin(tree.name().span(), tree.span()));
  }

  private Optional<String> kind(Tree.Room tree) {
    if (tree.kind().isPresent()) {
      return scope.word(Words.ROOM_KINDS, tree.kind().get());
    }
    // By its name: 'bath' is a bathroom, 'bed2' a bedroom; where that says nothing, by its label.
    String whole = tree.name().text();
    Optional<RoomKind> byName = RoomKind.named(whole.substring(whole.lastIndexOf('.') + 1));
    Optional<RoomKind> told = byName.or(() -> Scope.label(tree.label()).flatMap(RoomKind::named));
    told.ifPresent(
        k -> scope.assume("room " + tree.name() + " counts as " + k.word() + ", by its " + (byName.isPresent() ? "name" : "label")));
    return told.map(RoomKind::word);
  }
}
