package wattle.model;

import java.util.Optional;

/**
 * A slot of a panel, or one half of it for a half-size breaker.
 *
 * @param number from 1, as marked in the enclosure
 * @param half {@code a} for the upper, {@code b} for the lower half
 */
public record Slot(int number, Optional<Character> half) {
  /** Whether a breaker in this slot and one in the other get in each other's way. */
  public boolean overlaps(Slot other) {
    return number == other.number && (half.isEmpty() || other.half.isEmpty() || half.equals(other.half));
  }

  @Override
  public String toString() {
    return half.map(h -> number + h.toString()).orElse(Integer.toString(number));
  }
}
