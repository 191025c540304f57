package wattle.model;

import java.util.Optional;
import wattle.finding.Span;
import wattle.quantity.Quantity;

/** What stands behind a service. */
public sealed interface Source {
  Span span();

  /**
   * A pole or pad transformer.
   *
   * @param rating apparent power
   * @param impedance per cent of rated voltage that drives rated current through a short circuit
   * @param reactanceToResistance X/R; absent where not said
   */
  record Transformer(Quantity rating, Quantity impedance, Optional<Quantity> reactanceToResistance, Span span)
      implements
        Source {}

  /** A stated fault current at the service point. */
  record Available(Quantity faultCurrent, Optional<Quantity> reactanceToResistance, Span span) implements Source {}

  /** A generator of the given apparent power. */
  record Generator(Quantity rating, Optional<Quantity> impedance, Span span) implements Source {}
}
