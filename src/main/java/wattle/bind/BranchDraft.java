package wattle.bind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wattle.finding.Span;
import wattle.model.BranchHot;
import wattle.model.Origin;
import wattle.model.Status;
import wattle.model.Surroundings;
import wattle.model.Wiring;
import wattle.quantity.Quantity;
import wattle.syntax.Tree;

/** A branch while it is put together: points in the order reached, and the runs between them. */
final class BranchDraft {
  /** The panel, or a box, and what is said where the branch comes to it. */
  static final class Stop {
    final Optional<String> box;
    final Span span;
    final List<UnwiredDevice> devices = new ArrayList<>();
    Optional<Tree.Word> hotWord = Optional.empty();

    /** That of devices which do not say their own. */
    Optional<Integer> hot = Optional.empty();

    /** By the names of devices. */
    final Map<String, Integer> hots = new HashMap<>();

    boolean wiredThrough;

    Stop(Optional<String> box, Span span) {
      this.box = box;
      this.span = span;
    }

    /** Which hot a device here sits on; absent where nothing says it. */
    Optional<Integer> hotOf(UnwiredDevice device) {
      return Optional.ofNullable(hots.get(device.name())).or(() -> hot);
    }

    private Stop untouched() {
      Stop same = new Stop(box, span);
      same.hotWord = hotWord;
      same.wiredThrough = wiredThrough;
      return same;
    }

    private Stop unchosen() {
      Stop same = untouched();
      same.devices.addAll(devices);
      return same;
    }
  }

  /** A run from one stop to another. */
  record Leg(
      int from, int to, Optional<Quantity> length, Wiring wiring, Surroundings surroundings, Status status, Origin origin) {}

  final Tree.Branch tree;
  final List<Stop> stops = new ArrayList<>();
  final List<Leg> legs;
  final Map<String, Integer> stopOfBox;
  List<BranchHot> hots = List.of();
  Optional<String> panel = Optional.empty();
  Optional<Wiring> wiring = Optional.empty();
  Surroundings surroundings = Surroundings.UNSTATED;
  /** What it is for; absent where the plan does not say. */
  Optional<String> use = Optional.empty();
  /** Set where part of the branch could not be read, so that what it lacks says nothing. */
  boolean broken;
  /** Set where the plan says itself that the branch goes on, and not where to. */
  boolean unfinished;
  /** Set where a device is stated to be on a leg rather than on a color. */
  boolean legsNamed;

  BranchDraft(Tree.Branch tree) {
    this(tree, new ArrayList<>(), new LinkedHashMap<>());
  }

  private BranchDraft(Tree.Branch tree, List<Leg> legs, Map<String, Integer> stopOfBox) {
    this.tree = tree;
    this.legs = legs;
    this.stopOfBox = stopOfBox;
  }

  /** The branch as it was traced, with nothing connected to it. */
  BranchDraft untouched() {
    return withStops(stops.stream().map(Stop::untouched).toList());
  }

  /** The branch with what hangs on it, but no hot chosen for anything yet. */
  BranchDraft unchosen() {
    return withStops(stops.stream().map(Stop::unchosen).toList());
  }

  /** The branch with what hangs on another that goes to the same boxes, as it stands in the rooms now. */
  BranchDraft with(BranchDraft hanging, Map<String, UnwiredDevice> devices) {
    BranchDraft same = untouched();
    for (int i = 0; i < stops.size(); i++) {
      for (UnwiredDevice device : hanging.stops.get(i).devices) {
        same.stops.get(i).devices.add(devices.get(device.name()));
      }
    }
    return same;
  }

  /** Whether its chains name the same places as another's, and lead to the same boxes, from end to end. */
  boolean goesAs(BranchDraft other) {
    return !broken && !other.broken && name().equals(other.name()) && boxes().equals(other.boxes()) && names().equals(other.names());
  }

  private List<Optional<String>> boxes() {
    return stops.stream().map(s -> s.box).toList();
  }

  private List<String> names() {
    return places().stream().map(p -> p.path().text()).toList();
  }

  private BranchDraft withStops(List<Stop> others) {
    BranchDraft same = new BranchDraft(tree, legs, stopOfBox);
    same.stops.addAll(others);
    same.hots = hots;
    same.panel = panel;
    same.wiring = wiring;
    same.surroundings = surroundings;
    same.broken = broken;
    same.use = use;
    same.unfinished = unfinished;
    return same;
  }

  /** Every place that its chains name, in the order written. */
  List<Tree.Place> places() {
    List<Tree.Place> places = new ArrayList<>();
    for (Tree.Chain chain : tree.chains()) {
      places.add(chain.from());
      chain.runs().forEach(r -> places.add(r.to()));
    }
    return places;
  }

  String name() {
    return tree.name().text();
  }
}
