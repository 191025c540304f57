package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Impedance;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/**
 * A length of cable that a fault current goes out and back through.
 *
 * @param name such as {@code feeder of G} or {@code hall.sw to hall.lamp}
 * @param out the conductor that it goes out on
 * @param back the one that it comes back on; absent of a three-phase fault
 * @param cold temperature that the current is greatest at
 * @param hot temperature that it is least at
 */
record Run(
    String name, Quantity length, Impedance out, Optional<Impedance> back, Derivation cold, Derivation hot, double hertz) {
  private static final Unit MILLIOHM = Units.find("mΩ").orElseThrow();

  private Derivation temperature(State state) {
    return state == State.COLD ? cold : hot;
  }

  private static double celsius(Derivation temperature) {
    return temperature.quantity().orElseThrow().in(Units.CELSIUS);
  }

  Ohms ohms(State state) {
    double celsius = celsius(temperature(state));
    double meters = length.si();
    return new Ohms(
        meters * (out.ohmsPerMeter(celsius) + back.map(b -> b.ohmsPerMeter(celsius)).orElse(0.0)),
        meters * (out.reactanceOhmsPerMeter(hertz) + back.map(b -> b.reactanceOhmsPerMeter(hertz)).orElse(0.0)));
  }

  /** The resistance up to the far end, from that up to the near end. */
  Derivation resistance(State state, Derivation before) {
    Derivation at = temperature(state);
    Derivation there = out.resistance().at(at).named("resistance of the conductor out", "r_o");
    List<Derivation> inputs = new ArrayList<>(List.of(before.named(before.name(), "R_0"), ofCable(), there));
    back.ifPresent(b -> inputs.add(b.resistance().at(at).named("resistance of the conductor back", "r_b")));
    return Derivation.computed(
        "resistance up to the end of " + name, "R", back.isPresent() ? "R_0 + ℓ × (r_o + r_b)" : "R_0 + ℓ × r_o",
        milliohms(before.si() + ohms(state).resistance()), inputs);
  }

  /** The reactance up to the far end, from that up to the near end. */
  Derivation reactance(State state, Derivation before) {
    List<Derivation> inputs = new ArrayList<>(List.of(before.named(before.name(), "X_0"), ofCable(), perLength("out", "x_o", out)));
    back.ifPresent(b -> inputs.add(perLength("back", "x_b", b)));
    return Derivation.computed(
        "reactance up to the end of " + name, "X", back.isPresent() ? "X_0 + ℓ × (x_o + x_b)" : "X_0 + ℓ × x_o",
        milliohms(before.si() + ohms(state).reactance()), inputs);
  }

  private Derivation perLength(String way, String symbol, Impedance impedance) {
    String name = "reactance of the conductor " + way;
    Derivation listed = impedance.reactance();
    double ohmsPerMeter = impedance.reactanceOhmsPerMeter(hertz);
    return ohmsPerMeter == listed.si()
        ? listed.named(name, symbol)
        : Derivation.computed(
            name, symbol, "X_60 × f / 60 Hz", new Value.Amount(new Quantity(ohmsPerMeter, Units.OHM_PER_KILOMETER)),
            List.of(listed.named(listed.name(), "X_60"),
                Derivation.assumed("frequency", "f", Quantity.of(hertz, Units.find("Hz").orElseThrow()))));
  }

  private Derivation ofCable() {
    return Derivation.stated("length of " + name, "ℓ", length);
  }

  static Value milliohms(double ohms) {
    return new Value.Amount(new Quantity(ohms, MILLIOHM));
  }
}
