package wattle.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.model.Box;
import wattle.model.Room;
import wattle.quantity.Dimension;

/** What rules may say of rooms and boxes. */
final class RoomProperties {
  private RoomProperties() {}

  static Map<String, Property> room() {
    return new Properties<>(Room.class)
        .words("name", "its name", (f, r) -> Optional.of(r.name()))
        .words("title", "its label, or else its name", (f, r) -> Optional.of(r.title()))
        .words("use", "what it is for, such as kitchen, bath, bedroom", (f, r) -> r.kind())
        .words("status", "new, existing or to-remove", (f, r) -> Optional.of(r.status().word()))
        .figure("area", Dimension.AREA, "floor area", (f, r) -> Optional.ofNullable(r.facts().get("area")))
        .figure("wall", Dimension.LENGTH, "length of its walls along the floor, doors left out", (f, r) -> Optional.ofNullable(r.facts().get("wall")))
        .figure("counter", Dimension.LENGTH, "length of its counters along the wall", (f, r) -> Optional.ofNullable(r.facts().get("counter")))
        .figure("length", Dimension.LENGTH, "its length, for a hall", (f, r) -> Optional.ofNullable(r.facts().get("length")))
        .things("devices", Kind.DEVICE, "devices in it", (f, r) -> f.devicesOf(r)).kept()
        .things("boxes", Kind.BOX, "boxes in it", (f, r) -> r.boxes().stream().map(f.house().boxes()::get).filter(b -> b != null).toList())
        .made();
  }

  static Map<String, Property> box() {
    return new Properties<>(Box.class)
        .words("name", "room and name", (f, b) -> Optional.of(b.name()))
        .words("status", "new, existing or to-remove", (f, b) -> Optional.of(b.status().word()))
        .figure("volume", Dimension.VOLUME, "volume marked on it", (f, b) -> b.volume())
        .figure("fill", Dimension.VOLUME, "volume that its contents need", (f, b) -> f.boxFill().volumeNeeded(b)).kept()
        .words("fill-sum", "the sum behind fill, term by term", (f, b) -> f.boxFill().needed(b).map(RoomProperties::sum))
        .wordSet("traits", "words such as metal, clamps", (f, b) -> b.traits())
        .number("conductors", "insulated conductors that come in", (f, b) -> f.runsAt(b).stream().mapToInt(r -> r.section().wiring().insulated().size()).sum())
        .things("devices", Kind.DEVICE, "devices in it", (f, b) -> f.devicesOf(b)).kept()
        .things("branches", Kind.BRANCH, "branches that come to it", (f, b) -> f.branchesOf(b))
        .things("runs", Kind.RUN, "runs that start or end in it", (f, b) -> f.runsAt(b))
        .thing("room", Kind.ROOM, "where it is", (f, b) -> Optional.ofNullable(f.house().rooms().get(b.room())))
        .made();
  }

  private static String sum(wattle.derivation.Derivation fill) {
    List<String> terms = fill.inputs().stream().map(d -> d.worked() + " for " + d.name()).toList();
    return String.join(" + ", terms);
  }
}
