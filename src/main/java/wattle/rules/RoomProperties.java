package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Box;
import wattle.model.DeviceKind;
import wattle.model.Room;
import wattle.quantity.Dimension;

/** What rules may say of rooms and boxes. */
final class RoomProperties {
  private RoomProperties() {}

  static Map<String, Property> room() {
    return new Properties<>(Room.class)
        .words("name", "its name", (f, r) -> Optional.of(r.name()))
        .words("title", "its label, or else its name", (f, r) -> Optional.of(r.title()))
        .words("use", "what it is for, such as kitchen, bath, bedroom", (f, r) -> r.kind()).stated("is bedroom in the line of the room")
        .words("status", "new, existing or to-remove", (f, r) -> f.statusWord(r.status()))
        .figure("area", Dimension.AREA, "floor area", (f, r) -> Optional.ofNullable(r.facts().get("area")))
        .figure("wall", Dimension.LENGTH, "length of its walls along the floor, doors left out",
            (f, r) -> Optional.ofNullable(r.facts().get("wall")))
        .stated("wall 12 m in the line of the room", "wall 40 ft in the line of the room")
        .figure("counter", Dimension.LENGTH, "length of its counters along the wall",
            (f, r) -> Optional.ofNullable(r.facts().get("counter")))
        .stated("counter 3 m in the line of the room", "counter 10 ft in the line of the room")
        .figure("length", Dimension.LENGTH, "its length, for a hall", (f, r) -> Optional.ofNullable(r.facts().get("length")))
        .stated("length 4 m in the line of the room", "length 13 ft in the line of the room")
        .figure("floor", Dimension.NONE, "the storey that it is on, 0 for the ground",
            (f, r) -> Optional.ofNullable(r.facts().get("floor")))
        .stated("floor 1 in the line of the room")
        .truth("first-of-floor", "whether it is the first room that the plan names on its storey; not known where it states none",
            (f, r) -> r.facts().containsKey("floor") ? f.roomsOfFloor(r).get(0) == r : null)
        .stated("floor 1 in the line of the room")
        .things("floor-devices", Kind.DEVICE, "devices on its storey",
            (f, r) -> f.roomsOfFloor(r).stream().flatMap(o -> f.devicesOf(o).stream()).toList())
        .figure("vehicle-spaces", Dimension.NONE, "how many vehicles stand in it",
            (f, r) -> Optional.ofNullable(r.facts().get("vehicle-spaces")))
        .stated("vehicle-spaces 2 in the line of the garage")
        .figure("risers", Dimension.NONE, "steps of the stair between two storeys", (f, r) -> Optional.ofNullable(r.facts().get("risers")))
        .stated("risers 14 in the line of the stair")
        .truth("attached", "whether a garage is built to the dwelling", (f, r) -> r.flags().get("attached"))
        .stated("attached or no attached in the line of the garage")
        .things("devices", Kind.DEVICE, "devices in it", (f, r) -> f.devicesOf(r)).kept()
        .things("boxes", Kind.BOX, "boxes in it", (f, r) -> r.boxes().stream().map(f.house().boxes()::get).filter(b -> b != null).toList())
        .made();
  }

  static Map<String, Property> box() {
    return new Properties<>(Box.class)
        .words("name", "room and name", (f, b) -> Optional.of(b.name()))
        .words("status", "new, existing or to-remove", (f, b) -> f.statusWord(b.status()))
        .figure("volume", Dimension.VOLUME, "volume marked on it", (f, b) -> b.volume()).stated("its volume, such as 18 in3, on the box")
        .figure("fill", Dimension.VOLUME, "volume that its contents need", (f, b) -> f.boxFill().volumeNeeded(b)).kept()
        .words("fill-sum", "the sum behind fill, term by term", (f, b) -> f.boxFill().needed(b).map(RoomProperties::sum))
        .wordSet("traits", "words such as metal, clamps", (f, b) -> b.traits())
        .truth("reachable", "whether one can open it without opening the building; not known of a junction where the plan does not say",
            (f, b) -> reachable(f, b))
        .stated("accessible or concealed on the box")
        .truth("closed", "whether it has a cover, a plate or a fixture on it; not known of a junction where the plan does not say",
            (f, b) -> closed(f, b))
        .stated("covered or uncovered on the box")
        .number("conductors", "insulated conductors that come in",
            (f, b) -> f.runsAt(b).stream().mapToInt(r -> r.section().wiring().insulated().size()).sum())
        .things("devices", Kind.DEVICE, "devices in it", (f, b) -> f.devicesOf(b)).kept()
        .things("branches", Kind.BRANCH, "branches that come to it", (f, b) -> f.branchesOf(b))
        .things("runs", Kind.RUN, "runs that start or end in it", (f, b) -> f.runsAt(b))
        .thing("room", Kind.ROOM, "where it is", (f, b) -> Optional.ofNullable(f.house().rooms().get(b.room())))
        .made();
  }

  private static Boolean reachable(Facts facts, Box box) {
    return box.traits().contains("concealed")
        ? Boolean.FALSE
        : box.traits().contains("accessible") || isInUse(facts, box) ? Boolean.TRUE : null;
  }

  private static Boolean closed(Facts facts, Box box) {
    return box.traits().contains("uncovered")
        ? Boolean.FALSE
        : box.traits().contains("covered") || isInUse(facts, box) ? Boolean.TRUE : null;
  }

  /** Whether something is on it that people use, so that it can be reached and is closed by its plate. */
  private static boolean isInUse(Facts facts, Box box) {
    return facts.devicesOf(box).stream().anyMatch(d -> d.kind().family() != DeviceKind.Family.JUNCTION);
  }

  private static String sum(wattle.derivation.Derivation fill) {
    List<String> terms = fill.inputs().stream().map(d -> d.worked() + " for " + d.name()).toList();
    return String.join(" + ", terms);
  }
}
