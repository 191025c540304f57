package wattle.acceptance;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Limit;
import wattle.quantity.Quantity;

/** What a reading must be: the last five components of a {@link Measurement}. */
record Expected(
    String words, String unit, Optional<Double> least, Optional<Double> most, Optional<Derivation> derivation) {
  /** A meter for fractions of an ohm shows two decimals, so more digits of what to expect would say nothing; common practice. */
  private static final int METER_DIGITS = 2;

  /** A yes or no, in the word that is good. */
  static Expected answer(String word) {
    return new Expected(word, "", Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** @param tolerance how far it may lie off, as a part of it */
  static Expected volts(double volts, double tolerance, Optional<Derivation> derivation) {
    return new Expected(
        Measurement.plain(volts) + " V", "V", Optional.of(volts * (1 - tolerance)), Optional.of(volts * (1 + tolerance)), derivation);
  }

  /** A loop through joints and leads, which add up to so much. */
  static Expected loop(Derivation ohms, double margin) {
    return new Expected(
        "about " + Quantity.plain(ohms.si(), METER_DIGITS) + " Ω", "Ω", Optional.of(0.0), Optional.of(ohms.si() + margin),
        Optional.of(ohms));
  }

  /** What is joined by a bond. */
  static Expected bond(Limit most) {
    double ohms = most.value().si();
    return new Expected(
        "at most " + Measurement.plain(ohms) + " Ω", "Ω", Optional.of(0.0), Optional.of(ohms), Optional.of(most.derivation("R")));
  }

  /** What is kept apart. */
  static Expected insulation(Limit least, Optional<Limit> investigate) {
    double megohms = least.value().si() / 1e6;
    String below = investigate.map(i -> "; find out why below " + Measurement.plain(i.value().si() / 1e6) + " MΩ").orElse("");
    return new Expected(
        "at least " + Measurement.plain(megohms) + " MΩ" + below, "MΩ", Optional.of(megohms), Optional.empty(),
        Optional.of(least.derivation("R")));
  }
}
