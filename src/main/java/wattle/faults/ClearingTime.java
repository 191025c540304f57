package wattle.faults;

import java.util.Optional;

/**
 * How long a breaker may take over a current: between two bounds, each with what it rests on.
 *
 * @param leastSeconds 0 where nothing bounds it from below; infinite where it must not trip
 * @param leastBound what that rests on
 * @param mostSeconds infinite where it need not trip
 * @param mostBound what that rests on
 */
public record ClearingTime(double leastSeconds, String leastBound, double mostSeconds, String mostBound) {
  /** The longest time; absent where the breaker need not trip. */
  public Optional<Double> most() {
    return Double.isInfinite(mostSeconds) ? Optional.empty() : Optional.of(mostSeconds);
  }

  /** As in {@code 0 to 0.1 s}, {@code 1 s to never}. */
  public String text() {
    String least = Double.isInfinite(leastSeconds) ? "" : seconds(leastSeconds) + " to ";
    return most().map(m -> least + seconds(m) + " s").orElse(least.isEmpty() ? "never" : least.replace(" to ", " s to never"));
  }

  private static String seconds(double seconds) {
    return wattle.quantity.Quantity.plain(seconds, 2);
  }
}
