package wattle.conductors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.quantity.WireSize;

/** The thinnest conductor that will do. */
public final class ConductorSizes {
  private final Ampacities ampacities;
  private final BreakerSizes breakers;

  public ConductorSizes(Ampacities ampacities, BreakerSizes breakers) {
    this.ampacities = ampacities;
    this.breakers = breakers;
  }

  /**
   * The thinnest listed size whose ampacity is not below a current, under the conditions of another size.
   *
   * @param like the conditions; its size alone is replaced
   * @param marked temperature that the terminals are marked for; absent where not known
   */
  public Optional<Derivation> forCurrent(Derivation current, Conditions like, Optional<Derivation> marked) {
    for (WireSize size : ampacities.sizes(like.metal())) {
      Optional<Derivation> ampacity = ampacities.between(like.with(size), current, marked);
      if (ampacity.isPresent() && ampacity.get().si() >= current.si() * (1 - 1e-9)) {
        return Optional.of(chosen(size, current, ampacity.get()));
      }
    }
    return Optional.empty();
  }

  /**
   * The thinnest listed size that a breaker guards.
   *
   * @param rating of the breaker
   * @param mayRoundUp as in {@link BreakerSizes#largestFor}
   */
  public Optional<Derivation> forBreaker(
      Derivation rating, Conditions like, Optional<Derivation> marked, boolean mayRoundUp) {
    for (WireSize size : ampacities.sizes(like.metal())) {
      Optional<Derivation> largest = ampacities
          .between(like.with(size), rating, marked)
          .flatMap(a -> breakers.largestFor(a, size, like.metal(), mayRoundUp));
      if (largest.isPresent() && largest.get().si() >= rating.si() * (1 - 1e-9)) {
        return Optional.of(chosen(size, rating, largest.get()));
      }
    }
    return Optional.empty();
  }

  private static Derivation chosen(WireSize size, Derivation needed, Derivation found) {
    return Derivation.computed(
        "least size", "", "the smallest with " + found.symbol() + " ≥ I", new Value.Size(size),
        List.of(needed.named(needed.name(), "I"), found));
  }
}
