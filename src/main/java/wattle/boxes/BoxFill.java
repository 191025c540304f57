package wattle.boxes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Table;
import wattle.model.Box;
import wattle.model.Branch;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.Point;
import wattle.model.Section;
import wattle.model.Status;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * The room that the contents of a box take, by the allowances of the plan's code: one for each conductor that comes in,
 * one of the largest for all clamps inside, two of the largest for each yoke, and for the grounds together what the code
 * says. A conductor that passes through without a splice counts once like the others; since plans do not tell whether a
 * wire is cut, two ends count as two, which is never too few.
 */
public final class BoxFill {
  private final House house;
  private final Optional<Table> allowances;
  private final Optional<Table> counts;
  private final Map<String, List<Section>> runsAt = new HashMap<>();
  private final Map<String, Double> countOf = new ConcurrentHashMap<>();
  private final Map<WireSize, Optional<Derivation>> volumeOf = new ConcurrentHashMap<>();
  private final Map<Contents, Optional<Derivation>> neededBy = new ConcurrentHashMap<>();

  /** What takes room; boxes with the same contents need the same. */
  private record Contents(TreeMap<WireSize, Integer> conductors, TreeMap<WireSize, Integer> grounds, int yokes, boolean clamps) {}

  public BoxFill(House house, Library library) {
    this.house = house;
    allowances = library.table("box-allowance");
    counts = library.table("box-count");
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() != Status.TO_REMOVE) {
          add(branch.points().get(section.from()), section);
          add(branch.points().get(section.to()), section);
        }
      }
    }
  }

  private void add(Point point, Section section) {
    point.box().ifPresent(b -> runsAt.computeIfAbsent(b, n -> new ArrayList<>()).add(section));
  }

  /**
   * Volume that a box needs, every allowance as an input.
   *
   * @return absent where the plan names no code, nothing is in the box, or a conductor is too thick for the code's table
   */
  public Optional<Derivation> needed(Box box) {
    return contentsNeed(box).map(d -> d.named("volume needed by " + box.name(), "V"));
  }

  /** The figure alone, which is all that most boxes are asked for. */
  public Optional<Quantity> volumeNeeded(Box box) {
    return contentsNeed(box).flatMap(Derivation::quantity);
  }

  private Optional<Derivation> contentsNeed(Box box) {
    if (box.traits().contains("boxless")) {
      return Optional.empty();
    }
    List<Section> runs = runsAt.getOrDefault(box.name(), List.of());
    TreeMap<WireSize, Integer> conductors = new TreeMap<>();
    TreeMap<WireSize, Integer> grounds = new TreeMap<>();
    for (Section run : runs) {
      for (Wire wire : run.wiring().wires()) {
        (wire.purpose() == Wire.Purpose.GROUND ? grounds : conductors).merge(wire.size(), 1, Integer::sum);
      }
    }
    int yokes = 0;
    for (String name : box.devices()) {
      Device device = house.devices().get(name);
      yokes += device == null ? 0 : yokes(device);
    }
    return neededBy.computeIfAbsent(new Contents(conductors, grounds, yokes, box.traits().contains("clamps")), this::needed);
  }

  private Optional<Derivation> needed(Contents contents) {
    TreeMap<WireSize, Integer> conductors = contents.conductors;
    TreeMap<WireSize, Integer> grounds = contents.grounds;
    if (conductors.isEmpty()) {
      return Optional.empty();
    }
    WireSize largest = largest(conductors, grounds);
    List<Optional<Derivation>> parts = new ArrayList<>();
    conductors.forEach((size, count) -> parts.add(part("conductors " + size, count * count("conductor"), size)));
    add(parts, "yokes, " + conductors.lastKey(), contents.yokes * count("device"), conductors.lastKey());
    add(parts, "clamps, " + largest, contents.clamps ? count("clamps") : 0, largest);
    add(parts, "grounds, " + largest, grounds(grounds), grounds.isEmpty() ? largest : grounds.lastKey());
    if (parts.stream().anyMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    List<Derivation> inputs = new ArrayList<>();
    double sum = 0;
    for (Optional<Derivation> part : parts) {
      inputs.add(part.get().named(part.get().name(), "V_" + (inputs.size() + 1)));
      sum += part.get().si();
    }
    String formula = String.join(" + ", inputs.stream().map(Derivation::symbol).toList());
    Quantity total = new Quantity(sum, Units.CUBIC_INCH);
    return Optional.of(
        Derivation.computed("volume needed", "V", formula, new wattle.derivation.Value.Amount(total), inputs));
  }

  private static WireSize largest(TreeMap<WireSize, Integer> conductors, TreeMap<WireSize, Integer> grounds) {
    return grounds.isEmpty() || conductors.lastKey().compareTo(grounds.lastKey()) >= 0 ? conductors.lastKey() : grounds.lastKey();
  }

  private static int yokes(Device device) {
    return device.status() == Status.TO_REMOVE ? 0 : device.kind().yokes();
  }

  private double grounds(TreeMap<WireSize, Integer> grounds) {
    int number = grounds.values().stream().mapToInt(Integer::intValue).sum();
    double beyond = count("ground-beyond-four");
    // Without a charge for further grounds the code counts them all as one.
    return number == 0 ? 0 : count("grounds") + (number > 4 ? (number - 4) * beyond : 0);
  }

  private void add(List<Optional<Derivation>> parts, String name, double times, WireSize size) {
    if (times > 0) {
      parts.add(part(name, times, size));
    }
  }

  private Optional<Derivation> part(String name, double times, WireSize size) {
    return volumeOf
        .computeIfAbsent(size, this::volume)
        .map(
            volume -> Derivation.computed(
                name, "V", "n × v", new wattle.derivation.Value.Amount(new Quantity(times * volume.si(), Units.CUBIC_INCH)),
                List.of(Derivation.stated("allowances", "n", Quantity.of(times, Units.ONE)), volume)));
  }

  private Optional<Derivation> volume(WireSize size) {
    Derivation sought = Derivation.stated("size", "", size);
    return allowances.flatMap(t -> t.find("allowance for " + size, "v", "volume", Key.is("size", sought)));
  }

  /** How many allowances a thing takes; none where the code does not count it. */
  private double count(String thing) {
    return countOf.computeIfAbsent(thing, this::counted);
  }

  private double counted(String thing) {
    return counts
        .flatMap(t -> t.find(thing, "", "allowances", Key.is("thing", Derivation.stated("thing", "", thing))))
        .map(Derivation::si)
        .orElse(0.0);
  }
}
