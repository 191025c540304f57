package wattle.emit.document.changes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import wattle.compare.Consequence;
import wattle.compare.Figure;
import wattle.compare.Measure;
import wattle.compare.Thing;
import wattle.quantity.Units;

/**
 * A consequence in words, as one row of a table.
 *
 * @param what of which thing what is measured
 * @param difference with its sign; empty where one of the two is not known
 * @param note where, by which method, or why not; may be empty
 */
record FigureWords(String what, String before, String after, String difference, String note) {
  /** Rows that a reader is shown of a topic that has a row for each branch. */
  private static final int MOST_ROWS = 12;

  /** So many branches that came are told in one row. */
  private static final int FOLDED = 2;

  static FigureWords of(Consequence consequence) {
    Measure measure = consequence.measure();
    String what = measure.thing().kind() == Thing.Kind.PLAN ? measure.words() : measure.thing() + ": " + measure.words();
    OptionalDouble difference = consequence.difference();
    return new FigureWords(
        what, figure(measure, consequence.before(), consequence.shownBefore()),
        figure(measure, consequence.after(), consequence.shownAfter()),
        difference.isPresent() ? difference(measure, difference.getAsDouble()) : "",
        note(consequence.before(), consequence.after()));
  }

  private static String figure(Measure measure, Figure figure, OptionalDouble shown) {
    return shown.isPresent() ? number(measure, shown.getAsDouble()) : figure instanceof Figure.Unknown ? "not known" : "none";
  }

  private static String number(Measure measure, double value) {
    String number = Double.isFinite(value)
        ? BigDecimal.valueOf(value).setScale(measure.decimals(), RoundingMode.HALF_UP).toPlainString()
        : "no bound";
    return measure.unit().symbol().isEmpty() ? number : number + " " + measure.unit().symbol();
  }

  /** Per cent of one whole less per cent of another are points, or they would read as a part of the former. */
  private static String difference(Measure measure, double value) {
    String number = (value > 0 ? "+" : "") + number(measure, value);
    return measure.unit().equals(Units.PERCENT) ? number.replace(" %", " points") : number;
  }

  private static String note(Figure before, Figure after) {
    String was = note(before, "before: ");
    String is = note(after, "after: ");
    return was.equals(is) || was.isEmpty() ? is : is.isEmpty() ? was : was + " -> " + is;
  }

  private static String note(Figure figure, String side) {
    if (figure instanceof Figure.Known known) {
      return known.note();
    }
    if (figure instanceof Figure.Unknown unknown) {
      return side + unknown.why();
    }
    if (figure instanceof Figure.Absent) {
      return "";
    }
    throw new AssertionError(figure);
  }

  /**
   * Rows of one topic.
   *
   * @param more that are left out
   */
  record Rows(List<FigureWords> shown, long more) {
    Rows {
      shown = List.copyOf(shown);
    }
  }

  /**
   * Those of one topic that a reader is shown: of branches that came or went one row for each measure, of all others every one, or where
   * every branch has one, those that differ most.
   */
  static Rows rows(Measure.Topic topic, List<Consequence> all) {
    List<Consequence> its = all.stream().filter(c -> c.measure().topic() == topic).toList();
    Map<String, List<Consequence>> folded = new TreeMap<>();
    its.forEach(c -> side(c).ifPresent(s -> folded.computeIfAbsent(s + c.measure().words(), w -> new ArrayList<>()).add(c)));
    folded.values().removeIf(f -> f.size() < FOLDED);
    List<Consequence> rest = its.stream().filter(c -> folded.values().stream().noneMatch(f -> f.contains(c))).toList();
    List<Consequence> kept = most(topic, rest);
    List<FigureWords> rows = new ArrayList<>(kept.stream().map(FigureWords::of).toList());
    folded.values().forEach(f -> rows.add(folded(f)));
    return new Rows(rows, rest.size() - kept.size());
  }

  private static List<Consequence> most(Measure.Topic topic, List<Consequence> its) {
    if (topic == Measure.Topic.MATERIALS || its.size() <= MOST_ROWS) {
      return its;
    }
    List<Consequence> most = new ArrayList<>(its);
    most.sort(Comparator.comparing((Consequence c) -> c.measure().thing().kind() != Thing.Kind.PLAN)
        .thenComparingDouble(c -> -Math.abs(c.difference().orElse(Double.MAX_VALUE))));
    List<Consequence> kept = most.subList(0, MOST_ROWS);
    return its.stream().filter(kept::contains).toList();
  }

  /** Of a branch that only one revision has, which. */
  private static Optional<String> side(Consequence c) {
    if (c.measure().thing().kind() != Thing.Kind.BRANCH) {
      return Optional.empty();
    }
    return c.before() instanceof Figure.Absent && c.shownAfter().isPresent()
        ? Optional.of("new ")
        : c.after() instanceof Figure.Absent && c.shownBefore().isPresent() ? Optional.of("removed ") : Optional.empty();
  }

  /** Such as {@code 3 new branches: largest drop at full load | none | 0.90 % to 2.31 % | | most on counter}. */
  private static FigureWords folded(List<Consequence> alike) {
    boolean come = alike.get(0).before() instanceof Figure.Absent;
    ToDoubleFunction<Consequence> value = c -> (come ? c.shownAfter() : c.shownBefore()).getAsDouble();
    Measure measure = alike.get(0).measure();
    Consequence least = alike.stream().min(Comparator.comparingDouble(value)).orElseThrow();
    Consequence most = alike.stream().max(Comparator.comparingDouble(value)).orElseThrow();
    String range = number(measure, value.applyAsDouble(least))
        + (least == most ? "" : " to " + number(measure, value.applyAsDouble(most)));
    return new FigureWords(
        alike.size() + (come ? " new" : " removed") + " branches: " + measure.words(), come ? "none" : range, come ? range : "none", "",
        "most on " + (come ? most.measure().thing() : most.formerly()).name() + ", least on "
            + (come ? least.measure().thing() : least.formerly()).name());
  }
}
