package wattle.conductors;

import wattle.derivation.Derivation;

/**
 * What a conductor may carry, with the figures that led there.
 *
 * @param base by table, for the rating of its insulation, at 30 °C and with no more than three together; in A
 * @param ambientFactor for the air around it
 * @param bundlingFactor for the conductors beside it
 * @param corrected base times both factors
 * @param allowed the corrected ampacity, or what its use is held to where that is less
 */
public record Ampacity(
    Derivation base, Derivation ambientFactor, Derivation bundlingFactor, Derivation corrected, Derivation allowed) {
  /** Amperes allowed. */
  public double amperes() {
    return allowed.si();
  }
}
