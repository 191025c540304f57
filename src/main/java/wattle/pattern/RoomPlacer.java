package wattle.pattern;

import java.util.HashSet;
import java.util.Set;
import wattle.syntax.Tree;

/** Rooms, boxes and devices as they are in one placement. */
final class RoomPlacer {
  private final Frame frame;
  private final PiecePlacer pieces;

  RoomPlacer(Frame frame) {
    this.frame = frame;
    this.pieces = new PiecePlacer(frame);
  }

  Tree.Room room(Tree.Room tree) {
    Set<String> inRoom = new HashSet<>();
    tree.devices().forEach(d -> inRoom.add(d.name().text()));
    tree.boxes().forEach(b -> b.devices().forEach(d -> inRoom.add(d.name().text())));
    return new Tree.Room(
        frame.declared(tree.name()), pieces.text(tree.label()), frame.plain(tree.kind()),
        PiecePlacer.each(tree.facts(), pieces::fact), pieces.status(tree.status()),
        PiecePlacer.each(tree.boxes(), b -> box(b, inRoom)), PiecePlacer.each(tree.devices(), d -> device(d, inRoom)),
        frame.span(tree.span()));
  }

  private Tree.Box box(Tree.Box box, Set<String> inRoom) {
    return new Tree.Box(
        frame.plain(box.name()), box.gangs(), pieces.expressions(box.amounts()), frame.plain(box.words()),
        pieces.status(box.status()), PiecePlacer.each(box.devices(), d -> device(d, inRoom)), frame.span(box.span()));
  }

  private Tree.Device device(Tree.Device device, Set<String> inRoom) {
    return new Tree.Device(
        frame.plain(device.name()), frame.plain(device.words()), PiecePlacer.each(device.amounts(), this::amount),
        PiecePlacer.each(device.controls(), p -> frame.within(inRoom, p)), frame.plain(device.at()), frame.plain(device.hot()),
        pieces.terminals(device.terminals()), pieces.status(device.status()), pieces.text(device.label()), frame.span(device.span()));
  }

  private Tree.DeviceAmount amount(Tree.DeviceAmount amount) {
    return new Tree.DeviceAmount(frame.plain(amount.before()), pieces.expression(amount.value()));
  }
}
