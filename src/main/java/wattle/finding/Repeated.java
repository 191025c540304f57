package wattle.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Tells once what is found in many placements of a pattern: the same rule, at the same place of the text, said in the same
 * words but for the names of the placements. Where the words differ, in a figure for one, each stands for itself; but a mistake of
 * writing in a line that stands for several is one, whatever number it comes to in each.
 */
final class Repeated {
  private static final int NAMED = 3;
  /** So that 41 comes before 101. */
  private static final Comparator<String> LEAST_NUMBER = Comparator.comparingInt(String::length).thenComparing(Comparator.naturalOrder());

  /** What makes two findings the same mistake of the text. */
  private record Key(String rule, Severity severity, Span place, String headline, Optional<String> silenced) {}

  /** The first of the same findings, with the placements in which it was found and the fixes that all of them offer. */
  private static final class Group {
    Finding first;
    Placed placed;
    final Set<String> names = new LinkedHashSet<>();
    final List<Finding> others = new ArrayList<>();
    final List<Fix> fixes;
    int more = -1;

    Group(Finding first, Placed placed) {
      this.first = first;
      this.placed = placed;
      this.fixes = new ArrayList<>(first.fixes());
    }
  }

  private Repeated() {}

  /** The findings, put in place, each mistake of the text once. */
  static List<Finding> once(List<Finding> findings, Placement placement) {
    List<Finding> told = new ArrayList<>();
    Map<Key, Group> groups = new LinkedHashMap<>();
    for (Finding finding : findings) {
      Finding whole = placement.inPlace(finding);
      Optional<Placed> placed = placedIn(finding);
      if (placed.isEmpty() || whole.place().isEmpty()) {
        told.add(whole);
        continue;
      }
      boolean ofLine = placed.get().name().isEmpty() && whole.subject().isEmpty();
      String said = ofLine ? "" : placed.get().common(whole.headline());
      Key key = new Key(whole.rule(), whole.severity(), whole.place().get().span(), said, whole.silenced());
      Group group = groups.computeIfAbsent(key, k -> new Group(whole, placed.get()));
      group.more++;
      if (ofLine && LEAST_NUMBER.compare(whole.headline(), group.first.headline()) < 0) {
        group.first = whole;
        group.placed = placed.get();
      }
      // A mistake of writing names no thing; it may be met more than once in a placement, and is one all the same.
      if (group.names.add(placed.get().name()) && group.first != whole && whole.subject().isPresent()) {
        group.others.add(unmendable(whole));
      }
      group.fixes.replaceAll(fix -> agreed(fix, whole.fixes()));
    }
    groups.values().forEach(group -> told.add(finding(group, placement)));
    return told;
  }

  /** A fix as it stands where another placement offers the very same; else as an order without edits. */
  private static Fix agreed(Fix fix, List<Fix> others) {
    return fix.edits().isEmpty() || others.stream().anyMatch(o -> o.edits().equals(fix.edits())) ? fix : Fix.of(fix.order());
  }

  /** By what placement a finding came about: that of its own place, else of what it speaks of besides. */
  private static Optional<Placed> placedIn(Finding finding) {
    Optional<Placed> own = finding.place().flatMap(m -> m.span().source().placed());
    return own.isPresent() ? own : finding.related().stream().flatMap(m -> m.span().source().placed().stream()).findFirst();
  }

  private static Finding finding(Group group, Placement placement) {
    Finding first = group.first;
    List<Mark> related = new ArrayList<>(first.related());
    List<Placed> chain = group.placed.chain();
    for (int i = 0; i < chain.size(); i++) {
      Mark mark = new Mark(
          placement.whole(chain.get(i).place()), chain.get(i).words() + (i == 0 && first.subject().isEmpty() ? alike(group) : ""));
      if (related.stream().noneMatch(r -> r.span().equals(mark.span())) && !mark.span().equals(first.place().orElseThrow().span())) {
        related.add(mark);
      }
    }
    return new Finding(
        first.rule(), first.severity(), first.headline(), first.place(), related, first.reason(), first.figures(), group.fixes,
        first.source(), first.subject(), first.silenced(), first.ofNewWork(), group.others);
  }

  /** Another placement, whose fix is that of the first where all of them agree on one. */
  private static Finding unmendable(Finding finding) {
    return new Finding(
        finding.rule(), finding.severity(), finding.headline(), finding.place(), finding.related(), finding.reason(), finding.figures(),
        List.of(), finding.source(), finding.subject(), finding.silenced(), finding.ofNewWork(), List.of());
  }

  private static String alike(Group group) {
    Set<String> names = group.names;
    if (group.placed.name().isEmpty()) {
      return group.more > 0 ? "; the same for " + group.more + " more" : "";
    }
    List<String> others = names.stream().skip(1).sorted(LEAST_NUMBER).toList();
    if (others.isEmpty()) {
      return "";
    }
    int left = others.size() - NAMED;
    String named = String.join(", ", others.subList(0, Math.min(NAMED, others.size())));
    return "; the same in " + named + (left > 0 ? " and " + left + " more" : "");
  }
}
