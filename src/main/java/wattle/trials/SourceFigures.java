package wattle.trials;

import wattle.faults.Contributions;
import wattle.library.Library;
import wattle.model.Device;
import wattle.model.DeviceKind.Grid;
import wattle.model.House;
import wattle.network.Complex;

/**
 * What stands behind the terminals of a source. A generator is an electromotive force behind its subtransient reactance in
 * the first cycles of a fault; else its regulator holds the voltage at its terminals. An inverter lets no more into a fault
 * than a multiple of its rated current.
 */
final class SourceFigures {
  private final Contributions contributions;

  SourceFigures(House house, Library library) {
    contributions = new Contributions(house, library);
  }

  /** Of rated impedance, what lies between the force of a source and its terminals in a fault. */
  double perUnit(Device device) {
    return device.kind().grid().orElseThrow() == Grid.FORMS ? contributions.reactance(device).si() : 1 / contributions.factor(device).si();
  }

  /**
   * Between the legs of a source that holds the voltage.
   *
   * @param legVolts from a leg to the star point
   * @param ratedAmps of one leg
   * @param faulty whether what happens is a fault
   */
  Complex[][] impedance(Device device, int legs, double legVolts, double ratedAmps, boolean faulty) {
    Complex each = faulty
        ? new Complex(HouseNetworkBuilder.CONTACT, perUnit(device) * legVolts / ratedAmps)
        : new Complex(HouseNetworkBuilder.CONTACT, 0);
    Complex[][] matrix = new Complex[legs][legs];
    for (int i = 0; i < legs; i++) {
      for (int k = 0; k < legs; k++) {
        matrix[i][k] = i == k ? each : Complex.ZERO;
      }
    }
    return matrix;
  }

  /** Amperes that an inverter which follows gives at most. */
  double mostAmps(Device device, double ratedAmps, boolean faulty) {
    return faulty ? contributions.factor(device).si() * ratedAmps : ratedAmps;
  }
}
