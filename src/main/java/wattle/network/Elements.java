package wattle.network;

import java.util.Map;
import wattle.model.Load.Behavior;

/**
 * Elements of a network in flat arrays. A passive element has an admittance; a load has the power it takes at its nominal
 * voltage and a way in which its current follows the voltage.
 */
final class Elements {
  /** Share of the nominal voltage below which a load of any kind is taken as a resistance. */
  static final double HOLDS_DOWN_TO = 0.5;

  private static final Behavior[] BEHAVIORS = Behavior.values();

  final int[] box;
  final int[] from;
  final int[] to;
  /** Real and imaginary parts in turn: admittance of a passive element, volt-amperes of a load. */
  final double[] figures;
  /** Nominal volts of a load; 0 for a passive element. */
  final double[] nominal;
  final byte[] behavior;
  /** Amperes that the few which give instead of taking give at most. */
  private final Map<Integer, Double> most;

  Elements(int[] box, int[] from, int[] to, double[] figures, double[] nominal, byte[] behavior, Map<Integer, Double> most) {
    this.box = box;
    this.from = from;
    this.to = to;
    this.figures = figures;
    this.nominal = nominal;
    this.behavior = behavior;
    this.most = Map.copyOf(most);
  }

  int count() {
    return from.length;
  }

  boolean isLoad(int element) {
    return nominal[element] > 0;
  }

  boolean isLinear(int element) {
    return !isLoad(element) || BEHAVIORS[behavior[element]] == Behavior.IMPEDANCE;
  }

  /** Admittances at nominal voltage, real and imaginary parts in turn. */
  double[] admittances() {
    double[] admittances = figures.clone();
    for (int e = 0; e < count(); e++) {
      if (isLoad(e)) {
        double square = nominal[e] * nominal[e];
        admittances[2 * e] = figures[2 * e] / square;
        admittances[2 * e + 1] = -figures[2 * e + 1] / square;
      }
    }
    return admittances;
  }

  /** By what the admittance at nominal voltage is to be multiplied where this many volts stand at the load. */
  double factor(int element, double volts) {
    double share = Math.max(volts / nominal[element], HOLDS_DOWN_TO);
    return switch (BEHAVIORS[behavior[element]]) {
      case IMPEDANCE -> 1;
      case CURRENT -> 1 / share;
      case POWER -> Math.min(1 / (share * share), withinMost(element, share));
    };
  }

  /** The same for the current that a source gives at most; none for what takes. */
  private double withinMost(int element, double share) {
    Double amps = most.isEmpty() ? null : most.get(element);
    double rated = Math.hypot(figures[2 * element], figures[2 * element + 1]) / nominal[element];
    return amps == null || rated == 0 ? Double.POSITIVE_INFINITY : amps / (rated * share);
  }
}
