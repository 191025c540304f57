package wattle.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import wattle.quantity.UnitSystem;

/**
 * What the changes come to: the figures that differ. Both revisions are worked out whole, by the computations that the
 * tables print, and figure is held against figure; nothing is inferred from the changes themselves.
 *
 * @param figures that differ where they are shown, by topic
 * @param gaps what could not be compared, and why; in an order of their own
 */
public record Consequences(List<Consequence> figures, List<Gap> gaps) {
  private static final String IN_PIECES = "the plan has errors that leave a part of the house out; 'wattle check' names them";

  public Consequences {
    figures = List.copyOf(figures);
    gaps = gaps.stream().sorted(Gap.ORDER).toList();
  }

  static Consequences between(Plan before, Plan after, Renames renames) {
    if (!before.whole() || !after.whole()) {
      List<Gap> broken = new ArrayList<>();
      inPieces(before, false, broken);
      inPieces(after, true, broken);
      return new Consequences(List.of(), broken);
    }
    Measured was = Measured.of(before, before, after);
    Measured is = Measured.of(after, before, after);
    Map<Measure, Measure> formerly = new TreeMap<>();
    was.figures().keySet().forEach(m -> formerly.put(m.of(renames.later(m.thing())), m));
    List<Consequence> figures = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    TreeSet<Measure> all = new TreeSet<>(formerly.keySet());
    all.addAll(is.figures().keySet());
    for (Measure measure : all) {
      Measure old = formerly.getOrDefault(measure, measure);
      Figure one = was.figures().getOrDefault(old, absent(measure));
      Figure other = is.figures().getOrDefault(measure, absent(measure));
      if (one instanceof Figure.Unknown unknown && other instanceof Figure.Unknown still) {
        gaps.add(new Gap(old.toString(), false, unknown.why()));
        gaps.add(new Gap(measure.toString(), true, still.why()));
      } else if (Consequence.differ(measure, one, other)) {
        figures.add(new Consequence(measure, old.thing(), one, other));
      }
    }
    open(was.open(), is.open(), false, gaps);
    open(is.open(), was.open(), true, gaps);
    return new Consequences(figures, gaps);
  }

  Consequences with(List<Gap> more) {
    List<Gap> all = new ArrayList<>(gaps);
    all.addAll(more);
    return new Consequences(figures, all);
  }

  private static void inPieces(Plan plan, boolean later, List<Gap> gaps) {
    if (!plan.whole()) {
      gaps.add(new Gap("loads, currents, voltages, faults and materials", later, IN_PIECES));
    }
  }

  private static Figure absent(Measure measure) {
    return measure.topic() == Measure.Topic.MATERIALS ? MaterialMeasures.none(measure) : new Figure.Absent();
  }

  private static void open(List<String> open, List<String> other, boolean later, List<Gap> gaps) {
    open.stream().filter(o -> !other.contains(o)).forEach(o -> gaps.add(new Gap("materials", later, o)));
  }

  /** Whether no figure differs; what could not be compared in either revision is no difference. */
  public boolean isEmpty() {
    return figures.isEmpty();
  }

  /** What is a difference in one unit can round to none in another, and would be shown as one of nothing. */
  Consequences shownIn(UnitSystem units) {
    return new Consequences(figures.stream().map(c -> c.shownIn(units)).filter(Consequence::differs).toList(), gaps);
  }

  Consequences mirrored() {
    List<Consequence> mirrored = new ArrayList<>(figures.stream().map(Consequence::mirrored).toList());
    mirrored.sort(java.util.Comparator.comparing(Consequence::measure));
    return new Consequences(mirrored, gaps.stream().map(Gap::mirrored).toList());
  }
}
