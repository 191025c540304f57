package wattle.rules;

import java.util.Optional;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.model.Wiring;
import wattle.quantity.Quantity;

/** What holds the ampacity of hots down, in words that name the column, the factors and the terminals; the sum comes out. */
final class AmpacityWords {
  private AmpacityWords() {}

  /**
   * As in {@code 8 AWG copper has 55 A in the 90 °C column; NM-B is held to the 60 °C column, 40 A}.
   *
   * @param ends ampacity in the column of the terminals
   */
  static Optional<String> of(Facts facts, Conditions conditions, Wiring wiring, Optional<Derivation> ends, Optional<Quantity> celsius) {
    return facts.conductors().ampacities().of(conditions).map(a -> words(a, conditions, wiring, ends, celsius, facts));
  }

  private static String words(
      Ampacity a, Conditions conditions, Wiring wiring, Optional<Derivation> ends, Optional<Quantity> celsius, Facts facts) {
    StringBuilder words = new StringBuilder(conditions.conductor() + " has " + amperes(conditions.sets() * a.base().si()) + " in the "
        + Math.round(conditions.insulationCelsius()) + " °C column");
    boolean corrected = a.ambientFactor().si() != 1 || a.bundlingFactor().si() != 1;
    if (corrected) {
      words.append(": ").append(amperes(conditions.sets() * a.base().si()));
      if (a.ambientFactor().si() != 1) {
        words.append(" × ").append(Quantity.plain(a.ambientFactor().si(), 3)).append(" for the ambient of ")
            .append(conditions.ambient().value().text());
      }
      if (a.bundlingFactor().si() != 1) {
        words.append(" × ").append(Quantity.plain(a.bundlingFactor().si(), 3)).append(" for ")
            .append(Math.round(conditions.together().si())).append(" current-carrying conductors together");
      }
      words.append(" = ").append(amperes(a.corrected().si()));
    }
    double allowed = a.amperes();
    if (allowed < a.corrected().si() - 1e-9) {
      words.append("; ").append(wiring.type()).append(" is held to the ").append(Math.round(conditions.useCelsius()))
          .append(" °C column, ").append(amperes(allowed));
    }
    double atEnds = ends.map(e -> conditions.sets() * e.si()).orElse(Double.MAX_VALUE);
    if (atEnds < allowed - 1e-9) {
      words.append("; its ").append(celsius.map(c -> Math.round(c.in(wattle.quantity.Units.CELSIUS)) + " °C ").orElse(""))
          .append("terminals limit it to ").append(amperes(atEnds));
      allowed = atEnds;
    }
    double held = allowed;
    facts.conductors().breakers().ceiling(conditions.size(), conditions.metal()).filter(c -> c.si() < held - 1e-9)
        .ifPresent(
            c -> words.append("; no breaker above ").append(c.value().text()).append(" may protect a conductor this small")
                .append(c.sources().stream().findFirst().map(s -> " (" + s.place() + ")").orElse("")));
    return words.toString();
  }

  private static String amperes(double value) {
    return CircuitLoad.amperes(value);
  }
}
