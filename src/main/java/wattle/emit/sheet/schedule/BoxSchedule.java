package wattle.emit.sheet.schedule;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import wattle.boxes.BoxFill;
import wattle.derivation.Derivation;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Column;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Room;
import wattle.model.Section;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Room by room, every box with its devices, the cables that end in it and the branches and breakers behind them. */
public final class BoxSchedule {
  private static final List<Column> COLUMNS = List.of(
      Column.words("room", "room"),
      Column.words("box", "box"),
      Column.words("make", "make"),
      Column.figures("volume-in3", "volume", "in³", 1).naming("volume of *"),
      Column.figures("needed-in3", "needed", "in³", 2).naming("box fill of *"),
      Column.figures("left-in3", "left", "in³", 2).naming("volume left in *"),
      Column.words("devices", "devices"),
      Column.words("cables", "cables"),
      Column.figures("insulated", "insulated conductors", "", 0).naming("insulated conductors in *"),
      Column.words("branches", "branches"),
      Column.words("breakers", "breakers"),
      Column.words("status", "status"));

  private BoxSchedule() {}

  public static Sheet of(House house, BoxFill fill) {
    List<Row> rows = new ArrayList<>();
    for (Room room : house.rooms().values()) {
      for (String name : room.boxes()) {
        rows.add(row(house, fill, room, house.boxes().get(name)));
      }
    }
    return new Sheet(
        "boxes", "Boxes, room by room", COLUMNS, rows,
        List.of(
            "A blank volume is not stated in the plan. Needed: the box fill by the plan's code. If a box has more than one branch, "
                + "open the breakers of all of them."));
  }

  private static Row row(House house, BoxFill fill, Room room, Box box) {
    List<String> cables = new ArrayList<>();
    Set<String> branches = new LinkedHashSet<>();
    Set<String> breakers = new LinkedHashSet<>();
    int insulated = 0;
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        for (int end : new int[]{section.from(), section.to()}) {
          if (branch.points().get(end).box().filter(box.name()::equals).isPresent()) {
            int other = end == section.from() ? section.to() : section.from();
            cables.add(section.wiring().text() + (end == section.to() ? " from " : " to ")
                + branch.points().get(other).box().orElse("panel " + branch.panel().orElse("?")));
            insulated += section.wiring().insulated().size();
            branches.add(branch.name());
            branch.hots().forEach(h -> breakers.add(h.breaker().toString()));
          }
        }
      }
    }
    List<String> make = new ArrayList<>(new TreeSet<>(box.traits()));
    box.gangs().ifPresent(g -> make.add(0, g + "-gang"));
    return Row.of(
        Cell.of(room.title()),
        Cell.of(box.name()),
        Cell.of(String.join(", ", make)),
        box.volume().map(v -> figure(Derivation.stated("volume of " + box.name(), "V", v))).orElse(Cell.BLANK),
        fill.needed(box).map(BoxSchedule::figure).orElse(Cell.BLANK),
        fill.needed(box).flatMap(n -> box.volume().map(v -> figure(left(box, n, v)))).orElse(Cell.BLANK),
        Cell.of(String.join(", ",
            box.devices().stream().map(d -> house.devices().get(d))
                .map(d -> d.kind().name() + (d.label().map(l -> " \"" + l + "\"").orElse(""))).toList())),
        Cell.of(String.join("; ", cables)),
        Cell.of(insulated, Derivation.counted("insulated conductors in " + box.name(), "n", insulated)),
        Cell.of(String.join(", ", branches)),
        Cell.of(String.join(", ", breakers)),
        Cell.of(box.status().word()))
        .about(box.name());
  }

  private static Derivation left(Box box, Derivation needed, Quantity volume) {
    double cubicInches = volume.in(Units.CUBIC_INCH) - needed.quantity().orElseThrow().in(Units.CUBIC_INCH);
    return Derivation.computed(
        "volume left in " + box.name(), "", "V_b − V", cubicInches, Units.CUBIC_INCH,
        Derivation.stated("volume of " + box.name(), "V_b", volume), needed.named(needed.name(), "V"));
  }

  private static Cell figure(Derivation volume) {
    return Cell.of(volume.quantity().orElseThrow().in(Units.CUBIC_INCH), volume);
  }
}
