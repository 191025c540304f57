package wattle.emit.changes;

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
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.UnitSystem;
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

  static FigureWords of(Consequence consequence, UnitSystem units) {
    Measure measure = consequence.measure();
    Unit unit = units.shown(measure.unit());
    String what = measure.thing().kind() == Thing.Kind.PLAN ? measure.words() : measure.thing() + ": " + measure.words();
    OptionalDouble before = in(unit, measure, consequence.shownBefore());
    OptionalDouble after = in(unit, measure, consequence.shownAfter());
    // What stands in a row must add up, so that in another unit it is the rounded figures whose difference is shown.
    OptionalDouble difference =
        unit.equals(measure.unit()) || consequence.difference().isEmpty()
            ? consequence.difference()
            : OptionalDouble.of(after.getAsDouble() - before.getAsDouble());
    return new FigureWords(
        what, figure(measure, unit, consequence.before(), before), figure(measure, unit, consequence.after(), after),
        difference.isPresent() ? difference(measure, unit, difference.getAsDouble()) : "",
        note(consequence.before(), consequence.after()));
  }

  private static OptionalDouble in(Unit unit, Measure measure, OptionalDouble figure) {
    if (figure.isEmpty() || unit.equals(measure.unit()) || !Double.isFinite(figure.getAsDouble())) {
      return figure;
    }
    return OptionalDouble.of(rounded(measure, Quantity.of(figure.getAsDouble(), measure.unit()).in(unit)).doubleValue());
  }

  private static BigDecimal rounded(Measure measure, double value) {
    return BigDecimal.valueOf(value).setScale(measure.decimals(), RoundingMode.HALF_UP);
  }

  private static String figure(Measure measure, Unit unit, Figure figure, OptionalDouble shown) {
    return shown.isPresent() ? number(measure, unit, shown.getAsDouble()) : figure instanceof Figure.Unknown ? "not known" : "none";
  }

  private static String number(Measure measure, Unit unit, double value) {
    String number = Double.isFinite(value) ? rounded(measure, value).toPlainString() : "no bound";
    return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
  }

  /** Per cent of one whole less per cent of another are points, or they would read as a part of the former. */
  private static String difference(Measure measure, Unit unit, double value) {
    String number = (value > 0 ? "+" : "") + number(measure, unit, value);
    return unit.equals(Units.PERCENT) ? number.replace(" %", " points") : number;
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
