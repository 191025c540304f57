package wattle.faults;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * What a source alone puts into the way of a fault of one kind.
 *
 * @param volts that drive it
 * @param coldResistance the parts in the state in which the current is greatest, in Ω
 * @param hotResistance the parts in the state in which it is least
 * @param ratioStated whether the plan says how resistance and reactance share the impedance; where not, the cold parts are those of a
 *     pure reactance and the hot ones those of a pure resistance, and {@link #against} takes what bounds the current
 */
record SourceLoop(
    FaultKind kind,
    Derivation volts,
    Derivation coldResistance,
    Derivation coldReactance,
    Derivation hotResistance,
    Derivation hotReactance,
    boolean ratioStated) {
  Derivation resistance(State state) {
    return state == State.COLD ? coldResistance : hotResistance;
  }

  Derivation reactance(State state) {
    return state == State.COLD ? coldReactance : hotReactance;
  }

  /** A resistance and a reactance. */
  record Parts(Derivation resistance, Derivation reactance) {
    Ohms ohms() {
      return new Ohms(resistance.si(), reactance.si());
    }
  }

  /**
   * The parts that, with the runs behind the source, let through the most or the least. Of an impedance whose parts are not stated the
   * current is greatest where they are as far as can be from those of the runs, and least where both have one angle.
   */
  Parts against(Ohms runs, State state) {
    if (ratioStated) {
      return new Parts(resistance(state), reactance(state));
    }
    Parts reactive = new Parts(coldResistance, coldReactance);
    Parts resistive = new Parts(hotResistance, hotReactance);
    double ofReactive = reactive.ohms().plus(runs).magnitude();
    double ofResistive = resistive.ohms().plus(runs).magnitude();
    if (state == State.COLD) {
      return ofReactive <= ofResistive ? reactive : resistive;
    }
    if (runs.magnitude() == 0) {
      return ofReactive > ofResistive ? reactive : resistive;
    }
    Parts aligned = new Parts(
        part("resistance of the source", "R_s", "Z × cos φ", hotResistance, runs.resistance() / runs.magnitude()),
        part("reactance of the source", "X_s", "Z × sin φ", coldReactance, runs.reactance() / runs.magnitude()));
    double ofAligned = aligned.ohms().plus(runs).magnitude();
    return ofAligned >= Math.max(ofReactive, ofResistive) ? aligned : ofReactive > ofResistive ? reactive : resistive;
  }

  private static Derivation part(String name, String symbol, String formula, Derivation whole, double share) {
    Derivation angle = Derivation.computed("share by the angle of the runs", formula.substring(4), "",
        new Value.Amount(Quantity.of(share, Units.ONE)),
        List.of()).remarking("Of the impedance of the runs.");
    return Derivation.computed(name, symbol, formula, whole.si() * share, Units.OHM, whole.named("impedance of the source", "Z"), angle)
        .remarking("The plan states no X/R; figured at the angle of the runs, which adds the most.");
  }

  /** Amperes that no transformer of a dwelling drives: a slip of the pen, not a source. */
  private static final double BEYOND_ANY_SOURCE = 1e6;

  /** Whether it leaves a current that can be. */
  boolean isBounded() {
    for (State state : State.values()) {
      double amperes = volts.si() / ohms(state).magnitude();
      if (!(amperes > 0) || amperes > BEYOND_ANY_SOURCE) {
        return false;
      }
    }
    return true;
  }

  Ohms ohms(State state) {
    return new Ohms(resistance(state).si(), reactance(state).si());
  }
}
