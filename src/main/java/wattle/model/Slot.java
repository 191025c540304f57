package wattle.model;

import java.util.Optional;

/**
 * A slot of a panel, or one half of it for a half-size breaker.
 *
 * @param number from 1, as marked in the enclosure
 * @param half {@code a} for the upper, {@code b} for the lower half
 * @param misfit as it is written, where no panel could have it and it has no number, as 1.5
 */
public record Slot(int number, Optional<Character> half, Optional<String> misfit) {
  public Slot(int number, Optional<Character> half) {
    this(number, half, Optional.empty());
  }

  /** Whether a breaker in this slot and one in the other get in each other's way. */
  public boolean overlaps(Slot other) {
    return number == other.number && misfit.equals(other.misfit) && (half.isEmpty() || other.half.isEmpty() || half.equals(other.half));
  }

  @Override
  public String toString() {
    return misfit.orElseGet(() -> number + half.map(String::valueOf).orElse(""));
  }
}
