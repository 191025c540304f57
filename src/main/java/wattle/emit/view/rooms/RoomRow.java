package wattle.emit.view.rooms;

import java.util.List;

/**
 * A device of a room, or a box without any; a cell of several lines for each column.
 *
 * @param thing name of the device or box
 * @param cells as {@link RoomColumns} names them
 */
record RoomRow(String thing, List<List<String>> cells) {
  RoomRow {
    cells = cells.stream().map(List::copyOf).toList();
  }
}
