package wattle.worksheet;

import wattle.derivation.Derivation;

/**
 * What a service or feeder carries before and after a load is added, by one method.
 *
 * @param before as the plan has it
 * @param after with the load
 */
public record Addition(Worksheet before, Worksheet after) {
  /** Amperes that the load adds. */
  public double adds() {
    return after.current().si() - before.current().si();
  }

  /** Whether the rating carries the calculated load; where no rating is known, nothing can be said and it does not. */
  public boolean fits() {
    return after.spare().map(Derivation::si).map(s -> s >= -ServiceLoad.TOLERANCE).orElse(false);
  }
}
