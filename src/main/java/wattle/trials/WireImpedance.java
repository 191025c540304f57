package wattle.trials;

import java.util.Optional;
import wattle.conductors.Impedance;
import wattle.conductors.Impedances;
import wattle.conductors.Resistance;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/**
 * One wire of a run: for each meter, and for all of it.
 *
 * @param hertz that the reactance is for
 * @param meters 0 where the plan leaves the length open
 */
record WireImpedance(Wire wire, double meters, double hertz, Optional<Impedance> each, Complex ohms) {
  /** Conductors are taken as warm as the tables have them. */
  static final double CELSIUS = Resistance.TABLE_CELSIUS;

  /** The same in words. */
  static String temperature(UnitSystem units) {
    return units.known(Quantity.of(CELSIUS, Units.CELSIUS));
  }

  static WireImpedance of(Impedances impedances, Wire wire, Wiring wiring, double meters, double hertz) {
    Optional<Impedance> each = impedances.of(wire, wiring);
    Complex ohms = each.map(i -> new Complex(i.ohmsPerMeter(CELSIUS) * meters, i.reactanceOhmsPerMeter(hertz) * meters))
        .orElse(Complex.ZERO);
    return new WireImpedance(wire, meters, hertz, each, ohms);
  }
}
