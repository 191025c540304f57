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
 * What a fault current goes out and back through between two places.
 *
 * @param name such as {@code feeder of G} or {@code hall.sw to hall.lamp}
 * @param out the conductors that it goes out on, one behind the other
 * @param back the ways that it comes back on, side by side; none of a three-phase fault
 */
record Run(String name, List<Piece> out, List<List<Piece>> back) {
  private static final Unit MILLIOHM = Units.find("mΩ").orElseThrow();

  Run {
    out = List.copyOf(out);
    back = back.stream().map(List::copyOf).toList();
  }

  /**
   * One conductor of a cable.
   *
   * @param cable the name of its run
   * @param cold temperature that the current is greatest at
   * @param hot temperature that it is least at
   */
  record Piece(String cable, Quantity length, Impedance impedance, Derivation cold, Derivation hot, double hertz) {
    private Derivation temperature(State state) {
      return state == State.COLD ? cold : hot;
    }

    Ohms ohms(State state) {
      double celsius = temperature(state).quantity().orElseThrow().in(Units.CELSIUS);
      return new Ohms(length.si() * impedance.ohmsPerMeter(celsius), length.si() * impedance.reactanceOhmsPerMeter(hertz));
    }

    private Derivation ofCable() {
      return Derivation.stated("length of " + cable, "ℓ", length);
    }

    private Derivation resistance(State state, String way, String symbol) {
      return impedance.resistance().at(temperature(state)).named("resistance of the conductor " + way, symbol);
    }

    private Derivation reactance(String way, String symbol) {
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
  }

  /** Through one conductor behind the other. */
  static Ohms through(List<Piece> pieces, State state) {
    Ohms sum = Ohms.NONE;
    for (Piece piece : pieces) {
      sum = sum.plus(piece.ohms(state));
    }
    return sum;
  }

  private Ohms backOhms(State state) {
    return back.stream().map(w -> through(w, state)).reduce(Ohms::beside).orElse(Ohms.NONE);
  }

  Ohms ohms(State state) {
    return through(out, state).plus(backOhms(state));
  }

  /** The part of the current that comes back on one of the ways. */
  double share(int way) {
    double magnitude = through(back.get(way), State.HOT).magnitude();
    return back.size() == 1 || magnitude == 0 ? 1 : backOhms(State.HOT).magnitude() / magnitude;
  }

  private boolean isPlain() {
    return out.size() == 1 && (back.isEmpty() || back.size() == 1 && back.get(0).size() == 1);
  }

  /** The resistance up to the far end, from that up to the near end. */
  Derivation resistance(State state, Derivation before) {
    Derivation near = before.named(before.name(), "R_0");
    double end = before.si() + ohms(state).resistance();
    String name = "resistance up to the end of " + this.name;
    if (!isPlain()) {
      return Derivation.computed(name, "R", "R_0 + R_o + R_b", milliohms(end), List.of(near,
          summed(out, state, true, "out", "R_o"), joined(state, true)));
    }
    List<Derivation> inputs = new ArrayList<>(List.of(near, out.get(0).ofCable(), out.get(0).resistance(state, "out", "r_o")));
    plainBack().ifPresent(b -> inputs.add(b.resistance(state, "back", "r_b")));
    return Derivation.computed(name, "R", plainBack().isPresent() ? "R_0 + ℓ × (r_o + r_b)" : "R_0 + ℓ × r_o", milliohms(end), inputs);
  }

  /** The reactance up to the far end, from that up to the near end. */
  Derivation reactance(State state, Derivation before) {
    Derivation near = before.named(before.name(), "X_0");
    double end = before.si() + ohms(state).reactance();
    String name = "reactance up to the end of " + this.name;
    if (!isPlain()) {
      return Derivation.computed(name, "X", "X_0 + X_o + X_b", milliohms(end), List.of(near,
          summed(out, state, false, "out", "X_o"), joined(state, false)));
    }
    List<Derivation> inputs = new ArrayList<>(List.of(near, out.get(0).ofCable(), out.get(0).reactance("out", "x_o")));
    plainBack().ifPresent(b -> inputs.add(b.reactance("back", "x_b")));
    return Derivation.computed(name, "X", plainBack().isPresent() ? "X_0 + ℓ × (x_o + x_b)" : "X_0 + ℓ × x_o", milliohms(end), inputs);
  }

  private Optional<Piece> plainBack() {
    return back.stream().findFirst().map(w -> w.get(0));
  }

  /** Conductors one behind the other. */
  private static Derivation summed(List<Piece> pieces, State state, boolean resistance, String way, String symbol) {
    Ohms ohms = through(pieces, state);
    List<Derivation> inputs = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      String number = pieces.size() == 1 ? "" : String.valueOf(i + 1);
      inputs.add(pieces.get(i).ofCable().named("length of " + pieces.get(i).cable, "ℓ" + number));
      inputs.add(resistance ? pieces.get(i).resistance(state, way, "r" + number) : pieces.get(i).reactance(way, "x" + number));
    }
    String letter = resistance ? "r" : "x";
    return Derivation.computed((resistance ? "resistance " : "reactance ") + way, symbol,
        pieces.size() == 1 ? "ℓ × " + letter : "Σ ℓ × " + letter, milliohms(resistance ? ohms.resistance() : ohms.reactance()), inputs);
  }

  /** The ways back side by side: a bond at both ends joins them. */
  private Derivation joined(State state, boolean resistance) {
    Ohms ohms = backOhms(state);
    List<Derivation> inputs = new ArrayList<>();
    for (int i = 0; i < back.size(); i++) {
      String words = back.size() == 1 ? "back" : i == 0 ? "back on the neutral" : "back on the ground";
      String number = back.size() == 1 ? "" : String.valueOf(i + 1);
      inputs.add(summed(back.get(i), state, true, words, "R" + number));
      inputs.add(summed(back.get(i), state, false, words, "X" + number));
    }
    String formula = back.size() == 1 ? resistance ? "R" : "X" : (resistance ? "Re" : "Im") + "(1 / (1 / (R1 + jX1) + 1 / (R2 + jX2)))";
    Derivation made = Derivation.computed(resistance ? "resistance back" : "reactance back", resistance ? "R_b" : "X_b", formula,
        milliohms(resistance ? ohms.resistance() : ohms.reactance()), inputs);
    return back.size() == 1 ? made : made.remarking("Neutral and ground are bonded at both ends, and both carry it.");
  }

  static Value milliohms(double ohms) {
    return new Value.Amount(new Quantity(ohms, MILLIOHM));
  }
}
