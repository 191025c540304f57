package wattle.faults;

import wattle.derivation.Derivation;

/**
 * What a source alone puts into the way of a fault of one kind.
 *
 * @param volts that drive it
 * @param coldResistance the parts in the state in which the current is greatest, in Ω
 * @param hotResistance the parts in the state in which it is least
 */
record SourceLoop(
    FaultKind kind,
    Derivation volts,
    Derivation coldResistance,
    Derivation coldReactance,
    Derivation hotResistance,
    Derivation hotReactance) {
  Derivation resistance(State state) {
    return state == State.COLD ? coldResistance : hotResistance;
  }

  Derivation reactance(State state) {
    return state == State.COLD ? coldReactance : hotReactance;
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
