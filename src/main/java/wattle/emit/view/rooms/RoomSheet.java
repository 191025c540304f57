package wattle.emit.view.rooms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.model.House;
import wattle.model.Room;
import wattle.words.Caution;

/** Draws the schedule of rooms: a table for each, one under the other; on sheets a room is torn only where it is higher than one. */
public final class RoomSheet implements View {
  private static final double USUAL_WIDTH = 1240;
  private static final double APART = 26;

  private final House house;
  private final RoomReader reader;
  private final Map<Room, List<RoomRow>> rows = new LinkedHashMap<>();

  /** @param rooms the rooms that are shown */
  public RoomSheet(House house, List<Room> rooms) {
    this.house = house;
    reader = new RoomReader(house);
    rooms.stream().filter(r -> !r.boxes().isEmpty()).forEach(r -> rows.put(r, reader.rows(r)));
  }

  /** All rooms as one picture. */
  public Plate plate() {
    RoomColumns columns = columns(USUAL_WIDTH);
    Sketch sketch = new Sketch();
    double y = 0;
    for (Map.Entry<Room, List<RoomRow>> room : rows.entrySet()) {
      Sketch card = card(room, columns).sketch(0, room.getValue().size(), Optional.empty(), Optional.empty());
      sketch.add(card, 0, y);
      y += card.bounds().bottom() + APART;
    }
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    return new Plate(sketch.shapes(), legend(), title(), plan, scale(), description());
  }

  private RoomColumns columns(double width) {
    return RoomColumns.fitting(rows.values().stream().flatMap(List::stream).toList(), width);
  }

  private RoomCard card(Map.Entry<Room, List<RoomRow>> room, RoomColumns columns) {
    return new RoomCard(room.getKey(), room.getValue(), columns, reader.voltAmperes(room.getKey()));
  }

  @Override
  public String title() {
    return "Rooms";
  }

  @Override
  public String description() {
    return "Tables of boxes and devices, room by room: "
        + String.join(", ", rows.keySet().stream().map(Room::title).toList()) + ".";
  }

  @Override
  public Legend legend() {
    return new Legend(
        List.of(),
        List.of(
            "Load: as the plan states it, at nominal voltage; blank where it states none. Slot and leg: of each hot of the device. "
                + "Protection: the kind, and the device that gives it.",
            Caution.LONG));
  }

  @Override
  public String scale() {
    return Plate.NO_SCALE;
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    RoomColumns columns = columns(width);
    List<Piece> pieces = new ArrayList<>();
    for (Map.Entry<Room, List<RoomRow>> room : rows.entrySet()) {
      RoomCard card = card(room, columns);
      List<Integer> seams = card.seams(height);
      for (int part = 0; part + 1 < seams.size(); part++) {
        Optional<String> before = part == 0 ? Optional.empty() : Optional.of(piece(room.getKey(), part - 1));
        Optional<String> after = part + 2 == seams.size() ? Optional.empty() : Optional.of(piece(room.getKey(), part + 1));
        pieces.add(new Piece(piece(room.getKey(), part), card.sketch(seams.get(part), seams.get(part + 1), before, after).shapes()));
      }
    }
    return pieces;
  }

  private static String piece(Room room, int part) {
    return room.name() + " " + part;
  }
}
