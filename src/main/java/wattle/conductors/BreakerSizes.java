package wattle.conductors;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.library.Key;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.library.Table;
import wattle.model.Metal;
import wattle.quantity.WireSize;

/** Ratings of breakers and fuses, and the largest that guards a conductor, by the tables of the plan's code. */
public final class BreakerSizes {
  private final Optional<Table> ratings;
  private final Optional<Table> small;
  private final Optional<Limit> roundUp;

  public BreakerSizes(Library library) {
    ratings = library.table("breaker-ratings");
    small = library.table("small-conductor");
    roundUp = library.limit("round-up");
  }

  /** The least standard rating that is not below a current; absent where the table ends before it. */
  public Optional<Derivation> notBelow(Derivation current) {
    return ratings.flatMap(t -> t.find("next standard rating", "I_n", "rating", Key.notBelow("rating", current)));
  }

  /** The greatest standard rating that is not above a current; absent where all are. */
  public Optional<Derivation> notAbove(Derivation current) {
    return ratings.flatMap(t -> t.find("standard rating below", "I_n", "rating", Key.notAbove("rating", current)));
  }

  /** The most that the code allows for a small conductor, whatever its ampacity; absent for others. */
  public Optional<Derivation> ceiling(WireSize size, Metal metal) {
    Key key = Key.is("size", Derivation.stated("size", "", size));
    return small.flatMap(t -> t.find("limit for " + size + " " + metal.word(), "I_s", metal.word(), key));
  }

  /**
   * The largest breaker that guards a conductor.
   *
   * @param ampacity of the conductor with all its limits
   * @param mayRoundUp whether the next standard rating above the ampacity will do: where no receptacles for portable
   *     loads are fed
   * @return the ampacity itself where no breaker is as small; absent where the code has no ratings
   */
  public Optional<Derivation> largestFor(Derivation ampacity, WireSize size, Metal metal, boolean mayRoundUp) {
    Derivation carried = ampacity.named(ampacity.name(), "I_z");
    Optional<Derivation> above = mayRoundUp ? notBelow(carried).filter(this::withinRoundUp) : Optional.empty();
    return above
        .map(r -> r.named("next standard rating not below the ampacity", "I_n"))
        .or(() -> notAbove(carried).map(r -> r.named("greatest standard rating not above the ampacity", "I_n")))
        .or(() -> ratings.map(t -> carried.remarking("No breaker is made this small.")))
        .map(rating -> capped(rating, size, metal));
  }

  private boolean withinRoundUp(Derivation rating) {
    return roundUp.map(limit -> rating.si() <= limit.value().si()).orElse(false);
  }

  private Derivation capped(Derivation rating, WireSize size, Metal metal) {
    String name = "largest breaker for " + size + " " + metal.word();
    return ceiling(size, metal)
        .filter(c -> c.si() < rating.si())
        .map(
            c -> Derivation.computed(
                name, "I_n", "min(I_n, I_s)", new Value.Amount(c.quantity().orElseThrow()), List.of(rating, c)))
        .orElse(rating.named(name, "I_n"));
  }
}
