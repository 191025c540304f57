package wattle.trials;

import wattle.network.Complex;

/** A breaker's whole rating drawn at one place, at a power factor of 1, with nothing else on. */
final class FullLoad {
  private FullLoad() {}

  /**
   * Volts that are left there; 0 where the fall would be greater than the voltage, for then not even a short circuit at
   * that place draws the rating.
   *
   * @param loop ohms there and back
   */
  static double voltsLeft(double nominalVolts, Complex loop, double amperes) {
    Complex left = new Complex(nominalVolts, 0).minus(loop.times(amperes));
    return left.re() <= 0 ? 0 : left.magnitude();
  }
}
