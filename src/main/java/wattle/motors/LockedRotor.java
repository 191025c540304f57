package wattle.motors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.library.Table;
import wattle.model.Device;
import wattle.model.Load;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * What a motor takes that does not turn yet. It is then an impedance: its current falls with its voltage.
 *
 * @param amperes in each line at the rated voltage
 * @param ratedVolts between its lines
 */
public record LockedRotor(Derivation amperes, double ratedVolts) {
  /** Name of the figure by which a plan states the current of the nameplate (LRA). */
  public static final String FIGURE = "locked-rotor";

  /** What the trait of a code letter begins with: {@code code-G}. */
  public static final String CODE_LETTER = "code-";

  private static final double VOLT_AMPERES_PER_KVA = 1000;

  /**
   * By the current on its nameplate, or else by its code letter and horsepower, counted with the upper end of the letter's range.
   *
   * @param nominalVolts of what it is connected to, which it is rated for where it states no voltage
   * @return absent where the plan states neither, or a letter without horsepower
   */
  public static Optional<LockedRotor> stated(Library library, Device motor, double nominalVolts) {
    double volts = motor.ratedVoltage().map(Quantity::si).orElse(nominalVolts);
    Quantity nameplate = motor.facts().get(FIGURE);
    if (nameplate != null) {
      return Optional.of(new LockedRotor(Derivation.stated("locked-rotor current on the nameplate", "I_L", nameplate), volts));
    }
    Optional<String> letter = letter(motor);
    Optional<Quantity> power = horsepower(motor);
    return letter.isEmpty() || power.isEmpty()
        ? Optional.empty()
        : byLetter(library, letter.get(), power.get(), volts, motor.kind().isThreePhase()).map(i -> new LockedRotor(i, volts));
  }

  /**
   * What is usual where the plan states nothing: so many times the full-load current.
   *
   * @param fullLoad amperes
   */
  public static Optional<LockedRotor> usual(Library library, Device motor, double fullLoad, double nominalVolts) {
    return library.limit("usual-locked-rotor").map((Limit limit) -> {
      Derivation times = limit.derivation("k");
      Derivation running = Derivation.computed("full-load current", "I_m", "",
          new Value.Amount(Quantity.of(fullLoad, Units.AMPERE)), List.of()).remarking("Its supply voltage.");
      Derivation amperes = Derivation.computed("usual locked-rotor current", "I_L", "k × I_m",
          new Value.Amount(Quantity.of(times.si() * fullLoad, Units.AMPERE)), List.of(times, running));
      return new LockedRotor(amperes, motor.ratedVoltage().map(Quantity::si).orElse(nominalVolts));
    });
  }

  /** Amperes in each line at the start of a motor by its code letter. */
  static Optional<Derivation> byLetter(Library library, String letter, Quantity power, double volts, boolean threePhase) {
    Key key = Key.is("letter", Derivation.stated("code letter", "", letter));
    Optional<Table> table = library.table("code-letters");
    // The last letter has no upper end.
    return table
        .flatMap(t -> t.find("kVA for each horsepower", "s", "most", key).or(() -> t.find("kVA for each horsepower", "s", "least", key)))
        .map(each -> {
          double horsepower = power.in(Units.HORSEPOWER);
          double amperes = each.si() * VOLT_AMPERES_PER_KVA * horsepower / (volts * (threePhase ? Math.sqrt(3) : 1));
          return Derivation.computed("locked-rotor current by code letter " + letter, "I_L",
              threePhase ? "1000 × s × P / (√3 × U)" : "1000 × s × P / U", new Value.Amount(Quantity.of(amperes, Units.AMPERE)),
              List.of(each, Derivation.counted("horsepower", "P", horsepower),
                  Derivation.stated("rated voltage", "U", Quantity.of(volts, Units.VOLT))));
        });
  }

  /** The code letter on its nameplate; absent where the plan states none. */
  public static Optional<String> letter(Device motor) {
    return motor.traits().stream().filter(t -> t.startsWith(CODE_LETTER)).map(t -> t.substring(CODE_LETTER.length())).sorted().findFirst();
  }

  /** Its horsepower; absent where the plan states a current or watts. */
  public static Optional<Quantity> horsepower(Device motor) {
    return motor.loads().stream().map(Load::rated).flatMap(Optional::stream).filter(q -> q.unit().equals(Units.HORSEPOWER)).findFirst();
  }
}
