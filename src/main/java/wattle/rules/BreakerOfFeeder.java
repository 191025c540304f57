package wattle.rules;

import java.util.Optional;
import wattle.quantity.Quantity;

/** What can be done where the breaker of a feeder is above what its hots may carry. */
final class BreakerOfFeeder {
  /** Amperes that are rounding. */
  private static final double ROUNDING = 0.05;

  private BreakerOfFeeder() {}

  /** The largest breaker that guards its hots; absent where the load calculated for it, or what is connected, would trip it. */
  static Optional<Quantity> forLoad(Facts facts, FeederOf feeder) {
    return SupplyProperties.largest(facts, feeder)
        .filter(l -> Drop.amperes(facts, feeder.panel()).filter(load -> load > l.si() + ROUNDING).isEmpty());
  }

  /** A smaller breaker only where the load stands it; the size that the breaker as it is would need. */
  static Optional<String> remedy(Facts facts, FeederOf feeder) {
    String thicker = SupplyProperties.needed(facts, feeder)
        .map(s -> s + " " + feeder.stretch().wiring().hot().metal().word() + " or larger for the feeder").orElse("a larger feeder");
    return SupplyProperties.largest(facts, feeder).map(largest -> {
      String smaller = CircuitLoad.anAmperes(largest.si()) + " breaker";
      Optional<Double> load = Drop.amperes(facts, feeder.panel());
      return forLoad(facts, feeder).isPresent()
          ? "use " + smaller + (load.isPresent() ? "" : " if its load allows") + ", or " + thicker
          : "use " + thicker + "; " + smaller + " is too small for its load of " + CircuitLoad.amperes(load.orElseThrow());
    });
  }
}
