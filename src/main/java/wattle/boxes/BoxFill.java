package wattle.boxes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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
 * one of the largest in the box for all clamps inside and for each kind of stud, hickey or terminal block, two for each yoke of
 * the largest conductor on that yoke, and for the grounds together what the code says. A conductor that passes through without a
 * splice counts once, and twice where it is left in a loop of 12 in or more; since plans do not tell whether a wire is cut, two ends
 * count as two, which is never too few. Pigtails and the fixture wires of a canopy, four at most and thinner than 14 AWG, count for
 * nothing (314.16(B)(1)).
 */
public final class BoxFill {
  private final House house;
  private final Optional<Table> allowances;
  private final Optional<Table> counts;
  private final Map<String, List<Section>> runsAt = new HashMap<>();
  private final Map<String, WireSize> largestOn = new HashMap<>();
  private final Map<String, Double> countOf = new ConcurrentHashMap<>();
  private final Map<WireSize, Optional<Derivation>> volumeOf = new ConcurrentHashMap<>();
  private final Map<Contents, Optional<Derivation>> neededBy = new ConcurrentHashMap<>();

  /** What a box may have inside, by its trait, and what that counts as. */
  private static final Map<String, String> INSIDE = new TreeMap<>(
      Map.of("clamps", "clamps", "stud", "fitting", "hickey", "fitting", "terminal-block", "terminal-block"));

  /**
   * What takes room; boxes with the same contents need the same.
   *
   * @param yokes by the largest conductor on each
   * @param inside traits out of {@link #INSIDE}
   */
  private record Contents(
      TreeMap<WireSize, Integer> conductors, TreeMap<WireSize, Integer> grounds, TreeMap<WireSize, Integer> yokes, Set<String> inside) {}

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
    section.wiring().wires().stream().filter(w -> w.purpose() != Wire.Purpose.GROUND).map(Wire::size).max(Comparator.naturalOrder())
        .ifPresent(size -> point.devices().forEach(d -> largestOn.merge(d, size, (a, b) -> a.compareTo(b) >= 0 ? a : b)));
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
    if (conductors.isEmpty()) {
      return Optional.empty();
    }
    TreeMap<WireSize, Integer> yokes = new TreeMap<>();
    for (String name : box.devices()) {
      Device device = house.devices().get(name);
      if (device != null && yokes(device) > 0) {
        // What no run is known to come to may hang on any conductor here.
        yokes.merge(largestOn.getOrDefault(name, conductors.lastKey()), yokes(device), Integer::sum);
      }
    }
    Set<String> inside = new TreeSet<>(INSIDE.keySet());
    inside.retainAll(box.traits());
    return neededBy.computeIfAbsent(new Contents(conductors, grounds, yokes, inside), this::needed);
  }

  private Optional<Derivation> needed(Contents contents) {
    TreeMap<WireSize, Integer> conductors = contents.conductors;
    TreeMap<WireSize, Integer> grounds = contents.grounds;
    WireSize largest = largest(conductors, grounds);
    List<Optional<Derivation>> parts = new ArrayList<>();
    conductors.forEach((size, count) -> parts.add(part("conductors " + size, count * count("conductor"), size)));
    contents.yokes.forEach((size, yokes) -> add(parts, "yokes, " + size, yokes * count("device"), size));
    contents.inside.forEach(thing -> add(parts, thing.replace('-', ' ') + ", " + largest, count(INSIDE.get(thing)), largest));
    if (!grounds.isEmpty()) {
      add(parts, "grounds, " + grounds.lastKey(), grounds(grounds), grounds.lastKey());
    }
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
                List.of(Derivation.counted("allowances", "n", times), volume)));
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
