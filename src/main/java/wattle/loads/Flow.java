package wattle.loads;

import wattle.network.Complex;

/**
 * What is drawn between two conductors, of all loads there together.
 *
 * @param voltAmperes the sum of their volt-amperes, at nominal voltage
 * @param power watts and reactive volt-amperes, at nominal voltage
 */
public record Flow(double voltAmperes, Complex power) {
  public static final Flow NONE = new Flow(0, Complex.ZERO);

  /** Of one load, whose current lags where the power factor is below 1. */
  public static Flow of(double voltAmperes, double powerFactor) {
    return new Flow(voltAmperes,
        new Complex(voltAmperes * powerFactor, voltAmperes * Math.sqrt(Math.max(0, 1 - powerFactor * powerFactor))));
  }

  /** Both together. */
  public Flow plus(Flow other) {
    return new Flow(voltAmperes + other.voltAmperes, power.plus(other.power));
  }

  Flow times(double factor) {
    return new Flow(voltAmperes * factor, power.times(factor));
  }

  /** The current that it takes, in amperes. */
  Complex current(Complex volts) {
    return power.times(volts.inverse()).conjugate();
  }
}
