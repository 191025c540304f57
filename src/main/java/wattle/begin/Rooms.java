package wattle.begin;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The rooms of a plan while it is put together. */
final class Rooms {
  private record Room(String name, String title, String kind, List<String> devices) {}

  private final Map<String, Room> rooms = new LinkedHashMap<>();
  private final Wiring wiring;

  Rooms(Wiring wiring) {
    this.wiring = wiring;
  }

  /** @param kind as {@code is} says it; empty where the name tells it */
  void add(String name, String title, String kind) {
    rooms.put(name, new Room(name, title, kind, new ArrayList<>()));
  }

  boolean has(String name) {
    return rooms.containsKey(name);
  }

  /** Puts a device into a room; its full name comes back. */
  String device(String room, String name, String what) {
    rooms.get(room).devices().add(name + ": " + wiring.device(what));
    return room + "." + name;
  }

  /** A switch and its light. */
  List<String> light(String room, int watts) {
    return List.of(device(room, "sw", "switch for lamp"), device(room, "lamp", "light " + watts + " W"));
  }

  /** So many receptacles, {@code o1} on. */
  List<String> receptacles(String room, int count, String what) {
    List<String> names = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      names.add(device(room, "o" + i, what + " tamper-resistant"));
    }
    return names;
  }

  /** @param of which dwelling they are in, behind each title; empty where there is one */
  String text(String of) {
    StringBuilder text = new StringBuilder();
    for (Room room : rooms.values()) {
      if (!room.devices().isEmpty()) {
        text.append("room ").append(room.name()).append(" \"").append(room.title()).append(of).append('"');
        text.append(room.kind().isEmpty() ? "" : " is " + room.kind());
        text.append(wiring.work().status()).append(" {\n");
        room.devices().forEach(d -> text.append("  ").append(d).append('\n'));
        text.append("}\n\n");
      }
    }
    return text.toString();
  }
}
