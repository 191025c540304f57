package wattle.trials;

import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.quantity.Quantity;

/** Ratings of the breakers that feed branches. */
final class Ratings {
  private Ratings() {}

  /** The largest rating of a breaker that feeds a branch; absent where none is stated. */
  static Optional<Quantity> of(Branch branch, House house) {
    return branch.hots().stream()
        .flatMap(h -> house.breaker(h.breaker()).flatMap(Breaker::rating).stream())
        .max((a, b) -> Double.compare(a.si(), b.si()));
  }

  /** Amperes of the breaker behind one hot. */
  static Optional<Double> ofHot(Branch branch, int hot, House house) {
    return hot < branch.hots().size()
        ? house.breaker(branch.hots().get(hot).breaker()).flatMap(Breaker::amperes)
        : Optional.empty();
  }
}
