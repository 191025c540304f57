package wattle.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import wattle.derivation.Derivation;
import wattle.quantity.Unit;

/** The figures of one revision, as the computations give them; mutable while they are collected, and only here. */
final class Measured {
  private final Map<Measure, Figure> figures = new TreeMap<>();
  private final List<String> open = new ArrayList<>();

  /** All that is compared of a plan that is whole. */
  static Measured of(Plan plan, Plan before, Plan after) {
    Measured measured = new Measured();
    WorksheetMeasures.add(plan, before, after, measured);
    BalanceMeasures.add(plan, measured);
    WorstMeasures.add(plan, measured);
    FaultMeasures.add(plan, measured);
    MaterialMeasures.add(plan, measured);
    return measured;
  }

  void known(Measure measure, Derivation derivation, String note) {
    figures.put(measure, new Figure.Known(derivation, note));
  }

  void unknown(Measure measure, String why) {
    figures.put(measure, new Figure.Unknown(why));
  }

  /** Something that the plan leaves out, so that the materials may not be all. */
  void open(String what) {
    open.add(what);
  }

  Map<Measure, Figure> figures() {
    return figures;
  }

  List<String> open() {
    return open;
  }

  /** A measure of the whole house. */
  static Measure ofHouse(Measure.Topic topic, int order, String words, Unit unit, int decimals) {
    return new Measure(topic, new Thing(Thing.Kind.PLAN, ""), order, words, unit, decimals);
  }
}
