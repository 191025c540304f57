package wattle.emit.document.changes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
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

  /** Those of one topic that a reader is shown: all, or where every branch has one, those that differ most. */
  static List<Consequence> shown(Measure.Topic topic, List<Consequence> all) {
    List<Consequence> its = all.stream().filter(c -> c.measure().topic() == topic).toList();
    if (topic == Measure.Topic.MATERIALS || its.size() <= MOST_ROWS) {
      return its;
    }
    List<Consequence> most = new ArrayList<>(its);
    most.sort(Comparator.comparing((Consequence c) -> c.measure().thing().kind() != Thing.Kind.PLAN)
        .thenComparingDouble(c -> -Math.abs(c.difference().orElse(Double.MAX_VALUE))));
    List<Consequence> kept = most.subList(0, MOST_ROWS);
    return its.stream().filter(kept::contains).toList();
  }
}
