package wattle.trials;

import wattle.model.Expectation;

/** What to change in a house where a figure is not as it must be. None of them lowers what is expected. */
final class Remedies {
  private static final String DIFFERS = "find what differs: a load, a length, a wire size, a leg or an event of the trial";

  private Remedies() {}

  /** @param below whether what was found is below what is expected */
  static String of(Expectation expected, boolean below) {
    if (expected.bound() == Expectation.Bound.EQUAL) {
      return DIFFERS;
    }
    return switch (expected.measure()) {
      case "voltage" -> below
          ? "use thicker wire or a shorter run from the service on, or take load off it"
          : "find the neutral that is open or loose, or the source that is too high";
      case "voltage-fall" -> "use thicker wire or a shorter run from the service on, or take load off it";
      case "neutral", "hot", "current", "bus" -> below ? DIFFERS : "take load off it, or share the load between the legs";
      case "ground", "touch-voltage", "touch-current", "residual-current" -> below
          ? DIFFERS
          : "find what leaks or joins neutral and ground, and give the metal a ground that opens the breaker";
      case "fault-current" -> below ? "use thicker wire or a shorter run, its ground too, so that a fault opens the breaker" : DIFFERS;
      default -> DIFFERS;
    };
  }
}
