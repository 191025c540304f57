package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.Point;
import wattle.model.Room;

/** Room by room, every device with the branch, breaker and legs that feed it, and what it draws. */
public final class RoomSchedule {
  private static final List<Column> COLUMNS = List.of(
      Column.words("room", "room"),
      Column.words("device", "device"),
      Column.words("kind", "kind"),
      Column.words("label", "description"),
      Column.words("box", "box"),
      Column.words("branch", "branch"),
      Column.words("breakers", "breakers"),
      Column.words("legs", "legs"),
      Column.figures("load-va", "load", "VA", 0),
      Column.words("status", "status"));

  private final House house;
  private final Map<String, List<Branch>> feeding = new HashMap<>();

  private RoomSchedule(House house) {
    this.house = house;
    for (Branch branch : house.branches().values()) {
      for (Point point : branch.points()) {
        point.devices().forEach(d -> feeding.computeIfAbsent(d, n -> new ArrayList<>()).add(branch));
      }
    }
  }

  public static Sheet of(House house) {
    RoomSchedule schedule = new RoomSchedule(house);
    List<Row> rows = new ArrayList<>();
    for (Room room : house.rooms().values()) {
      house.devices().values().stream().filter(d -> d.room().equals(room.name())).forEach(d -> rows.add(schedule.row(room, d)));
    }
    return new Sheet(
        "rooms", "Devices, room by room", COLUMNS, rows,
        List.of("Load: as the plan states it, at nominal voltage; blank where it states none. If nothing is fed, wattle check shows why."));
  }

  private Row row(Room room, Device device) {
    List<Branch> branches = feeding.getOrDefault(device.name(), List.of()).stream().distinct().toList();
    TreeSet<String> traits = new TreeSet<>(device.traits());
    String kind = device.kind().name() + (traits.isEmpty() ? "" : ", " + String.join(", ", traits));
    return Row.of(
        Cell.of(room.title()), Cell.of(device.name()), Cell.of(kind), Cell.of(device.label().orElse("")), Cell.of(device.box()),
        Cell.of(String.join(", ", branches.stream().map(Branch::name).toList())),
        Cell.of(String.join(", ", branches.stream().flatMap(b -> b.hots().stream()).map(h -> h.breaker().toString()).distinct().toList())),
        Cell.of(String.join(" + ",
            branches.stream().flatMap(b -> b.hots().stream()).map(BranchHot::leg).flatMap(Optional::stream).map(Leg::name).distinct()
                .toList())),
        device.voltAmperes() > 0 ? Cell.of(device.voltAmperes()) : Cell.BLANK,
        Cell.of(device.status().word()));
  }
}
