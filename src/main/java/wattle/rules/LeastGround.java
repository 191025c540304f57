package wattle.rules;

import java.util.List;
import java.util.Optional;
import wattle.conductors.GroundSizes;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Metal;
import wattle.model.Wire;
import wattle.model.Wiring;
import wattle.quantity.WireSize;

/** The least equipment ground of a run or a feeder (NFPA 70 250.122, CSA C22.1 10-616). */
final class LeastGround {
  private LeastGround() {}

  /** By the breaker; never larger than the hots (NFPA 70 250.122(A)). */
  static Optional<WireSize> forBreaker(Facts facts, Wiring wiring, Derivation rating) {
    return table(facts, wiring, rating).map(least -> atMostHots(least, wiring));
  }

  /**
   * By the breaker, and in proportion where the hots are thicker than need be (NFPA 70 250.122(B)).
   *
   * @param needed the least size of hot that would have done, derating counted
   */
  static Optional<WireSize> enlarged(Facts facts, Wiring wiring, Derivation rating, WireSize needed) {
    Metal metal = ground(wiring);
    List<WireSize> sizes = facts.conductors().ampacities().sizes(Metal.COPPER);
    return table(facts, wiring, rating)
        .flatMap(least -> GroundSizes.enlarged(Derivation.computed("ground", "S_g", "", new Value.Size(least), List.of()), needed,
            wiring.hot().size(), metal == Metal.COPPER ? sizes : facts.conductors().ampacities().sizes(metal)))
        .flatMap(d -> SupplyProperties.size(Optional.of(d)))
        .map(least -> atMostHots(least, wiring));
  }

  private static Optional<WireSize> table(Facts facts, Wiring wiring, Derivation rating) {
    return SupplyProperties.size(facts.conductors().grounds().forBreaker(rating, ground(wiring)));
  }

  private static WireSize atMostHots(WireSize least, Wiring wiring) {
    Wire hot = wiring.hot();
    return hot.metal() == ground(wiring) && least.compareTo(hot.size()) > 0 ? hot.size() : least;
  }

  private static Metal ground(Wiring wiring) {
    return wiring.ground().orElse(wiring.hot()).metal();
  }
}
