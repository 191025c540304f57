package wattle.emit.document.changes;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import wattle.compare.Change;
import wattle.compare.Comparison;
import wattle.compare.Thing;

/** What two revisions differ in, in one sentence: how many circuits and other things came, went and changed, and how many findings. */
final class Headline {
  /** So many lines are taken in at a look. */
  private static final int FEW = 3;

  private Headline() {}

  /**
   * Such as {@code 4 branch circuits new, 1 shortened; 2 findings cured.}; empty where nothing of that differs, and where the changes are
   * so few that they say it themselves.
   */
  static String of(Comparison comparison) {
    if (comparison.alike().size() + comparison.gone().size() + comparison.appeared().size() <= FEW) {
      return "";
    }
    List<String> clauses = new ArrayList<>();
    clause(clauses, comparison, Thing.Kind.SERVICE, "service", "services");
    clause(clauses, comparison, Thing.Kind.PANEL, "panel", "panels");
    clause(clauses, comparison, Thing.Kind.BRANCH, "branch circuit", "branch circuits");
    clause(clauses, comparison, Thing.Kind.ROOM, "room", "rooms");
    clause(clauses, comparison, Thing.Kind.DEVICE, "device", "devices");
    List<String> findings = new ArrayList<>();
    count(findings, comparison.gone().size(), "cured", "finding", "findings");
    count(findings, comparison.appeared().size(), "new", "finding", "findings");
    if (!findings.isEmpty()) {
      clauses.add(String.join(", ", findings));
    }
    return clauses.isEmpty() ? "" : String.join("; ", clauses) + ".";
  }

  private static void clause(List<String> clauses, Comparison comparison, Thing.Kind kind, String one, String many) {
    List<String> parts = new ArrayList<>();
    Set<Thing> added = things(comparison, kind, Change.Added.class::isInstance);
    Set<Thing> removed = things(comparison, kind, Change.Removed.class::isInstance);
    Set<Thing> renamed = things(comparison, kind, Change.Renamed.class::isInstance);
    Set<Thing> replaced = things(comparison, kind, ChangeWords::isReplaced);
    Set<Thing> changed = new HashSet<>(things(comparison, kind, Change.Changed.class::isInstance));
    changed.removeAll(replaced);
    count(parts, added.size(), "new", one, many);
    count(parts, removed.size(), "gone", one, many);
    count(parts, renamed.size(), "renamed", one, many);
    count(parts, replaced.size(), "replaced", one, many);
    if (kind == Thing.Kind.BRANCH) {
      runs(parts, comparison, added, removed, changed, one, many);
    }
    count(parts, changed.size(), "changed", one, many);
    if (!parts.isEmpty()) {
      clauses.add(String.join(", ", parts));
    }
  }

  /** Branches of both revisions that gained runs, or lost some, or both; they are not counted as changed once more. */
  private static void runs(
      List<String> parts, Comparison comparison, Set<Thing> added, Set<Thing> removed, Set<Thing> changed, String one, String many) {
    Set<Thing> longer = branches(things(comparison, Thing.Kind.RUN, Change.Added.class::isInstance));
    Set<Thing> shorter = branches(things(comparison, Thing.Kind.RUN, Change.Removed.class::isInstance));
    longer.removeAll(added);
    shorter.removeAll(removed);
    Set<Thing> both = new HashSet<>(longer);
    both.retainAll(shorter);
    longer.removeAll(both);
    shorter.removeAll(both);
    List.of(both, longer, shorter).forEach(changed::removeAll);
    count(parts, longer.size(), "extended", one, many);
    count(parts, shorter.size(), "shortened", one, many);
    count(parts, both.size(), "rerouted", one, many);
  }

  /** The branches that runs belong to, by whose name theirs begin. */
  private static Set<Thing> branches(Set<Thing> runs) {
    return runs.stream().map(r -> new Thing(Thing.Kind.BRANCH, r.name().split(" to ")[0])).collect(Collectors.toCollection(HashSet::new));
  }

  private static Set<Thing> things(Comparison comparison, Thing.Kind kind, Predicate<Change> some) {
    return comparison.changes().stream().filter(c -> c.thing().kind() == kind).filter(some).map(Change::thing).collect(Collectors.toSet());
  }

  /** The noun stands with the first count of its clause. */
  private static void count(List<String> parts, int number, String what, String one, String many) {
    if (number > 0) {
      parts.add(number + " " + (parts.isEmpty() ? (number == 1 ? one : many) + " " : "") + what);
    }
  }
}
