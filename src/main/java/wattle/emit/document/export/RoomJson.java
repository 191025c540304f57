package wattle.emit.document.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.emit.media.text.Json;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.Load;
import wattle.model.Point;
import wattle.model.Raceway;
import wattle.model.Room;
import wattle.quantity.Units;
import wattle.words.SurroundingsWords;

/** Rooms, boxes, devices and raceways. */
final class RoomJson {
  private final Compilation plan;
  private final Map<String, Set<String>> feeding = new HashMap<>();

  RoomJson(Compilation plan) {
    this.plan = plan;
    for (Branch branch : plan.house().branches().values()) {
      for (Point point : branch.points()) {
        point.devices().forEach(d -> feeding.computeIfAbsent(d, n -> new LinkedHashSet<>()).add(branch.name()));
      }
    }
  }

  static ObjectNode room(Room room) {
    ObjectNode node = Json.object().put("id", room.name());
    Members.text(node, "label", room.label());
    Members.text(node, "kind", room.kind());
    node.put("status", room.status().word());
    Members.words(node, "boxes", room.boxes());
    Members.facts(node, room.facts());
    Members.flags(node, room.flags());
    return node;
  }

  ObjectNode box(Box box) {
    ObjectNode node = Json.object().put("id", box.name()).put("room", box.room()).put("status", box.status().word());
    box.gangs().ifPresent(g -> node.put("gangs", g));
    Members.set(node, "traits", box.traits());
    Members.words(node, "devices", box.devices());
    Members.figure(node, "volumeCubicInches", box.volume(), Units.CUBIC_INCH);
    Members.derived(node, "fillCubicInches", plan.figures().boxFill().needed(box), Units.CUBIC_INCH);
    return node;
  }

  ObjectNode device(Device device) {
    ObjectNode node = Json.object().put("id", device.name());
    Members.text(node, "label", device.label());
    node.put("kind", device.kind().name()).put("room", device.room()).put("box", device.box()).put("status", device.status().word());
    Members.set(node, "traits", device.traits());
    Members.text(node, "location", device.location());
    Members.words(node, "branches", new ArrayList<>(feeding.getOrDefault(device.name(), Set.of())));
    Members.words(node, "controls", device.controls());
    Members.words(node, "controlledHalves", device.controlledHalves());
    ArrayNode loads = node.putArray("loads");
    device.loads().forEach(l -> load(loads.addObject(), l));
    node.put("voltAmperes", device.voltAmperes());
    WiringJson.terminals(node, device.terminals());
    Members.facts(node, device.facts());
    return node;
  }

  private static void load(ObjectNode node, Load load) {
    if (!load.part().isEmpty()) {
      node.put("part", load.part());
    }
    load.rated().ifPresent(r -> node.set("rated", Members.quantity(r)));
    node.put("voltAmperes", load.voltAmperes()).put("nameplateVoltAmperes", load.nameplateVoltAmperes())
        .put("powerFactor", load.powerFactor()).put("class", load.loadClass().word());
  }

  static ObjectNode raceway(Raceway raceway) {
    ObjectNode node = Json.object().put("id", raceway.name());
    Members.text(node, "label", raceway.label());
    node.put("status", raceway.status().word());
    raceway.race().ifPresent(race -> node.set("raceway", WiringJson.raceway(race)));
    Members.figure(node, "lengthMeters", raceway.length(), Units.METER);
    node.put("laid", SurroundingsWords.of(raceway.surroundings()));
    return node;
  }
}
