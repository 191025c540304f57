package wattle.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import wattle.finding.Finding;
import wattle.finding.SameFact;
import wattle.quantity.UnitSystem;

/**
 * Two revisions of a house compared. Things are matched by name; of those left over on both sides, by what they are: a
 * room, device, branch or panel that has the properties of one that went is that one, renamed. What refers to a renamed
 * thing has not changed by that.
 *
 * @param changes in the order of kind, then name
 * @param appeared findings that only the later revision has, each fact once
 * @param gone findings that only the earlier one had, likewise
 * @param consequences the figures that differ
 * @param placements names of the placements of patterns in either, each with its pattern
 */
public record Comparison(List<Change> changes, List<Finding> appeared, List<Finding> gone, Consequences consequences,
    Map<String, String> placements) {
  /** Of what goes and what comes under one name, such as the breakers of a branch that are not the same one, the first goes first. */
  private static final Comparator<Change> ORDER = Comparator.comparing(Change::thing).thenComparing(Change::property)
      .thenComparing(Change.Added.class::isInstance).thenComparing(Change::toString);

  public Comparison {
    changes = List.copyOf(changes);
    appeared = List.copyOf(appeared);
    gone = List.copyOf(gone);
    placements = Map.copyOf(placements);
  }

  /** The changes, each that is the same in several placements of a pattern once. */
  public List<Alike> alike() {
    return Alike.of(changes, placements);
  }

  /** Whether anything differs. */
  public boolean isEmpty() {
    return changes.isEmpty() && appeared.isEmpty() && gone.isEmpty() && consequences.isEmpty();
  }

  /** Compares an earlier revision with a later one. */
  public static Comparison of(Plan before, Plan after) {
    Renames renames = Renames.between(before.house(), after.house());
    Map<Thing, Described> old = new TreeMap<>();
    Described.of(before.house(), renames).forEach(d -> old.put(d.matched(), d));
    Map<Thing, Described> now = new TreeMap<>();
    Described.of(after.house(), Renames.none()).forEach(d -> now.put(d.own(), d));
    List<Change> changes = new ArrayList<>();
    renames.all().forEach((thing, name) -> changes.add(new Change.Renamed(new Thing(thing.kind(), name), thing.name())));
    TreeSet<Thing> all = new TreeSet<>(old.keySet());
    all.addAll(now.keySet());
    for (Thing thing : all) {
      Described was = old.get(thing);
      Described is = now.get(thing);
      if (is == null) {
        changes.add(new Change.Removed(was.own(), facts(was)));
      } else if (was == null) {
        changes.add(new Change.Added(is.own(), facts(is)));
      } else {
        addChanged(changes, was, is);
      }
    }
    changes.sort(ORDER);
    Map<String, String> placements = new HashMap<>(before.house().placements());
    placements.putAll(after.house().placements());
    FindingDifference findings = FindingDifference.between(before.findings(), after.findings(), renames);
    FindingDifference told = findings.asked(before, after).and(ofExisting(before, after, renames));
    Consequences consequences = Consequences.between(before, after, renames).with(findings.unasked(findings.asked(before, after)));
    Predicate<String> names = name -> before.house().hasNamed(name) || after.house().hasNamed(name);
    return new Comparison(changes, SameFact.once(told.appeared(), names), SameFact.once(told.gone(), names), consequences, placements);
  }

  /** What the work cures of the work that was there, as if that had been new: neither found so later nor as of new work. */
  private static FindingDifference ofExisting(Plan before, Plan after, Renames renames) {
    List<Finding> gone = FindingDifference.between(before.ifNew(), both(after), renames).gone();
    List<Finding> appeared = FindingDifference.between(both(before), after.ifNew(), renames).appeared();
    return new FindingDifference(appeared, gone).asked(before, after);
  }

  private static List<Finding> both(Plan plan) {
    return Stream.concat(plan.ifNew().stream(), plan.findings().stream()).toList();
  }

  private static List<String> facts(Described thing) {
    return thing.properties().entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).toList();
  }

  private static void addChanged(List<Change> changes, Described was, Described is) {
    TreeSet<String> names = new TreeSet<>(was.comparable().keySet());
    names.addAll(is.comparable().keySet());
    for (String name : names) {
      if (!was.comparable().getOrDefault(name, "").equals(is.comparable().getOrDefault(name, ""))) {
        changes.add(
            new Change.Changed(
                is.own(), was.own(), name, was.properties().getOrDefault(name, ""), is.properties().getOrDefault(name, "")));
      }
    }
  }

  /**
   * The same with its figures in other units, for people. What the plans state stays as each of them states it.
   *
   * @param units of the later revision, which is the one that is worked with
   */
  public Comparison shownIn(UnitSystem units) {
    return new Comparison(changes, appeared, gone, consequences.shownIn(units), placements);
  }

  /** The comparison of the later revision with the earlier. */
  public Comparison mirrored() {
    List<Change> mirrored = new ArrayList<>(changes.stream().map(Change::mirrored).toList());
    mirrored.sort(ORDER);
    return new Comparison(mirrored, gone, appeared, consequences.mirrored(), placements);
  }
}
