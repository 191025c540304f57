package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.library.Library;
import wattle.quantity.Quantity;
import wattle.quantity.Unit;
import wattle.quantity.Units;

/**
 * Between which bounds protection trips on a residual current. Class A by UL 943: not below 4 mA, always from 6 mA on, within
 * T = (20 mA / I)^1.43 s. By IEC 61009-1: not below half of its rated residual current, always at all of it, within a time
 * that falls with its multiples. What is stated for a breaker of neither kind has no published time.
 */
final class ResidualTrip {
  private static final Unit MILLIAMPERE = Units.find("mA").orElseThrow();

  private final Library library;
  private final boolean iec;
  private final Optional<Quantity> stated;

  /**
   * @param iec whether its product standard is one of IEC
   * @param stated its rated residual current, where the plan says it
   */
  ResidualTrip(Library library, boolean iec, Optional<Quantity> stated) {
    this.library = library;
    this.iec = iec;
    this.stated = stated;
  }

  private Derivation limit(String name, String symbol, double usual, Unit unit) {
    return library.limit(name).map(l -> l.derivation(symbol))
        .orElseGet(() -> Derivation.assumed(name, symbol, new Quantity(usual * unit.factor(), unit)));
  }

  /** From here on it trips. */
  Derivation must() {
    if (stated.isPresent()) {
      return Derivation.stated("rated residual current", "I_Δn", stated.get());
    }
    return iec ? limit("residual-rated", "I_Δn", 30, MILLIAMPERE) : limit("ground-fault-trips", "I_t", 6, MILLIAMPERE);
  }

  /** Below this it holds. */
  double holdsBelow() {
    if (!iec && stated.isEmpty()) {
      return limit("ground-fault-holds", "I_h", 4, MILLIAMPERE).si();
    }
    return limit("residual-holds", "k", 50, Units.PERCENT).si() * must().si();
  }

  /** Longest time; absent where it need not trip, or where no published time is known. */
  Optional<Derivation> within(Derivation residual) {
    if (residual.si() < must().si() * (1 - 1e-9)) {
      return Optional.empty();
    }
    return iec ? byMultiples(residual) : stated.isPresent() ? Optional.empty() : byFormula(residual);
  }

  private Optional<Derivation> byFormula(Derivation residual) {
    Derivation constant = limit("ground-fault-constant", "I_1", 20, MILLIAMPERE);
    Derivation exponent = limit("ground-fault-exponent", "n", 1.43, Units.ONE);
    Derivation end = limit("ground-fault-end", "I_e", 264, MILLIAMPERE);
    double seconds = Math.pow(constant.si() / Math.min(residual.si(), end.si()), exponent.si());
    return Optional.of(
        Derivation.computed("longest time to trip", "T", "(I_1 / min(I_Δ, I_e))^n s", seconds, Units.SECOND, constant,
            residual.named(residual.name(), "I_Δ"), end, exponent));
  }

  private Optional<Derivation> byMultiples(Derivation residual) {
    Derivation rated = must();
    Derivation multiple = Derivation.computed("multiple of the rated residual current", "m", "I_Δ / I_Δn",
        residual.si() / rated.si() * (1 + 1e-9), Units.ONE, residual.named(residual.name(), "I_Δ"), rated);
    return library.table("residual-time").flatMap(t -> t.find("longest time to trip", "T", "time", Key.notAbove("multiple", multiple)));
  }

  /** Of protection of persons on supplies of 120 V, as the code in force names it. */
  String standard() {
    return library.adopted("UL 943");
  }

  String words() {
    String must = must().value().text();
    if (stated.isPresent() && !iec) {
      return "stated to trip at " + must + "; its time is its maker's";
    }
    return (iec ? "IEC 61009-1" : standard() + ", class A") + ": holds below " + new Quantity(holdsBelow(), MILLIAMPERE) + ", trips from "
        + must;
  }

}
