package wattle.conductors;

import wattle.derivation.Derivation;

/**
 * Resistance and reactance of one conductor for each length of it.
 *
 * @param reactance at 60 Hz, in Ω/m inside
 */
public record Impedance(Resistance resistance, Derivation reactance) {
  private static final double TABLE_HERTZ = 60;

  public double ohmsPerMeter(double celsius) {
    return resistance.ohmsPerMeter(celsius);
  }

  /** Reactance in Ω/m; it grows with frequency. */
  public double reactanceOhmsPerMeter(double hertz) {
    return reactance.si() * hertz / TABLE_HERTZ;
  }
}
