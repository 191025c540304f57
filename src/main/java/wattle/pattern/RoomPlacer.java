package wattle.pattern;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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
        PiecePlacer.each(tree.boxes(), b -> box(b, inRoom)), devices(tree.devices(), inRoom),
        frame.span(tree.span()));
  }

  private Tree.Box box(Tree.Box box, Set<String> inRoom) {
    return new Tree.Box(
        frame.plain(box.name()), box.gangs(), pieces.expressions(box.amounts()), frame.plain(box.words()),
        pieces.status(box.status()), devices(box.devices(), inRoom), frame.span(box.span()));
  }

  private List<Tree.Device> devices(List<Tree.Device> devices, Set<String> inRoom) {
    return devices.isEmpty() ? devices : devices.stream().flatMap(d -> device(d, inRoom).stream()).toList();
  }

  /** Absent where no kind is given for it, which has been told: nobody need complain of its absence. */
  private Optional<Tree.Device> device(Tree.Device device, Set<String> inRoom) {
    Optional<List<Tree.Word>> words = new DeviceWords(frame).of(device);
    if (words.isEmpty()) {
      frame.ledger().spoil(frame.filled(device.name()));
    }
    return words.map(w -> device(device, w, inRoom));
  }

  private Tree.Device device(Tree.Device device, List<Tree.Word> words, Set<String> inRoom) {
    return new Tree.Device(
        frame.plain(device.name()), words, PiecePlacer.each(device.amounts(), this::amount),
        PiecePlacer.each(device.controls(), p -> frame.within(inRoom, p)), frame.plain(device.at()), frame.plain(device.hot()),
        pieces.terminals(device.terminals()), pieces.status(device.status()), pieces.text(device.label()), frame.span(device.span()));
  }

  private Tree.DeviceAmount amount(Tree.DeviceAmount amount) {
    return new Tree.DeviceAmount(frame.plain(amount.before()), pieces.expression(amount.value()));
  }
}
