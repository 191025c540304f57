package wattle.conductors;

import java.util.List;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.finding.Citation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** What the library says of the insulation of a type of conductor. */
public final class Insulation {
  private Insulation() {}

  /** The temperature that it is rated for, which no plan states. */
  public static Derivation rating(String symbol, double celsius) {
    return Derivation.lookedUp("rating of the insulation", symbol, new Value.Amount(Quantity.of(celsius, Units.CELSIUS)),
        "type of the conductor", List.of(), List.of(new Citation("common practice", "", false)));
  }
}
