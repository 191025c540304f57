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
import java.util.stream.Collectors;
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
import wattle.quantity.Unit;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/**
 * The room that the contents of a box take, by the allowances of the plan's code: one for each conductor that comes in,
 * one of the largest in the box for all clamps inside and for each kind of stud, hickey or terminal block, two for each yoke of
 * the largest conductor on that yoke, and for the grounds together what the code says. A conductor that passes through without a
 * splice counts once, where the plan says of the box that its wires are uncut, and twice where they are left in a loop of 12 in or more;
 * otherwise two ends count as two, which is never too few. Pigtails and the fixture wires of a canopy, four at most and thinner than 14
 * AWG, count for nothing; more of them count as 18 AWG (314.16(B)(1)).
 */
public final class BoxFill {
  private final House house;
  private final Optional<Table> allowances;
  private final Optional<Table> counts;
  /** That in which the code prints volumes. */
  private final Unit unit;
  private final Map<String, List<Entering>> runsAt = new HashMap<>();
  private final Map<String, WireSize> largestOn = new HashMap<>();
  private final Map<String, Double> countOf = new ConcurrentHashMap<>();
  private final Map<WireSize, Optional<Derivation>> volumeOf = new ConcurrentHashMap<>();
  private final Map<Contents, Optional<Derivation>> neededBy = new ConcurrentHashMap<>();

  /** What a box may have inside, by its trait, and what that counts as. */
  private static final Map<String, String> INSIDE = new TreeMap<>(
      Map.of("clamps", "clamps", "stud", "fitting", "hickey", "fitting", "terminal-block", "terminal-block"));

  /** A run that comes to a box. */
  private record Entering(String branch, Section section) {}

  /** Fixture wires that a canopy may bring without taking room. */
  private static final int FREE_FIXTURE_WIRES = 4;

  private static final WireSize FIXTURE_WIRE = WireSize.awg(18);

  /**
   * What takes room; boxes with the same contents need the same.
   *
   * @param yokes by the largest conductor on each
   * @param inside traits out of {@link #INSIDE}
   * @param fixtureWires those that count
   */
  private record Contents(
      TreeMap<WireSize, Integer> conductors, TreeMap<WireSize, Integer> grounds, TreeMap<WireSize, Integer> yokes, Set<String> inside,
      int fixtureWires) {}

  public BoxFill(House house, Library library) {
    this.house = house;
    allowances = library.table("box-allowance");
    counts = library.table("box-count");
    unit = allowances.stream().flatMap(t -> t.columns().stream()).filter(c -> c.name().equals("volume")).flatMap(c -> c.unit().stream())
        .findFirst().orElse(Units.CUBIC_INCH);
    for (Branch branch : house.branches().values()) {
      for (Section section : branch.sections()) {
        if (section.status() != Status.TO_REMOVE) {
          add(branch.points().get(section.from()), branch, section);
          add(branch.points().get(section.to()), branch, section);
        }
      }
    }
  }

  private void add(Point point, Branch branch, Section section) {
    point.box().ifPresent(b -> runsAt.computeIfAbsent(b, n -> new ArrayList<>()).add(new Entering(branch.name(), section)));
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
    List<Entering> runs = runsAt.getOrDefault(box.name(), List.of());
    TreeMap<WireSize, Integer> conductors = new TreeMap<>();
    TreeMap<WireSize, Integer> grounds = new TreeMap<>();
    for (Entering run : runs) {
      for (Wire wire : run.section.wiring().wires()) {
        (wire.purpose() == Wire.Purpose.GROUND ? grounds : conductors).merge(wire.size(), 1, Integer::sum);
      }
    }
    if (conductors.isEmpty()) {
      return Optional.empty();
    }
    if (box.traits().contains("uncut") && !box.traits().contains("looped")) {
      passing(runs).forEach((size, through) -> conductors.merge(size, -through, Integer::sum));
    }
    TreeMap<WireSize, Integer> yokes = new TreeMap<>();
    int fixtureWires = 0;
    for (String name : box.devices()) {
      Device device = house.devices().get(name);
      if (device != null && yokes(device) > 0) {
        // What no run is known to come to may hang on any conductor here.
        yokes.merge(largestOn.getOrDefault(name, conductors.lastKey()), yokes(device), Integer::sum);
      }
      Quantity wires = device == null ? null : device.facts().get("fixture-wires");
      fixtureWires += wires == null || wires.si() <= FREE_FIXTURE_WIRES ? 0 : (int) wires.si();
    }
    Set<String> inside = new TreeSet<>(INSIDE.keySet());
    inside.retainAll(box.traits());
    return neededBy.computeIfAbsent(new Contents(conductors, grounds, yokes, inside, fixtureWires), this::needed);
  }

  /** How many conductors of each size pass through: those that both runs of a branch have, where just two of it come here. */
  private static Map<WireSize, Integer> passing(List<Entering> runs) {
    Map<WireSize, Integer> passing = new TreeMap<>();
    Map<String, List<Entering>> ofBranch = runs.stream().collect(Collectors.groupingBy(Entering::branch));
    ofBranch.values().stream().filter(two -> two.size() == 2).forEach(two -> {
      Map<WireSize, Integer> one = insulated(two.get(0).section);
      Map<WireSize, Integer> other = insulated(two.get(1).section);
      one.forEach((size, count) -> passing.merge(size, Math.min(count, other.getOrDefault(size, 0)), Integer::sum));
    });
    return passing;
  }

  private static Map<WireSize, Integer> insulated(Section section) {
    Map<WireSize, Integer> count = new TreeMap<>();
    section.wiring().wires().stream().filter(w -> w.purpose() != Wire.Purpose.GROUND).forEach(w -> count.merge(w.size(), 1, Integer::sum));
    return count;
  }

  private Optional<Derivation> needed(Contents contents) {
    TreeMap<WireSize, Integer> conductors = contents.conductors;
    TreeMap<WireSize, Integer> grounds = contents.grounds;
    WireSize largest = largest(conductors, grounds);
    List<Optional<Derivation>> parts = new ArrayList<>();
    conductors.forEach((size, count) -> parts.add(part("conductors " + size, count * count("conductor"), size)));
    contents.yokes.forEach((size, yokes) -> add(parts, "yokes, " + size, yokes * count("device"), size));
    contents.inside.forEach(thing -> add(parts, thing.replace('-', ' ') + ", " + largest, count(INSIDE.get(thing)), largest));
    add(parts, "fixture wires", contents.fixtureWires * count("conductor"), FIXTURE_WIRE);
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
    Quantity total = new Quantity(sum, unit);
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
                name, "V", "n × v", new wattle.derivation.Value.Amount(new Quantity(times * volume.si(), unit)),
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
