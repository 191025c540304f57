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
          ? "use larger wire or a shorter run, starting at the service, or take load off it"
          : "find the open or loose neutral, or the source with too high a voltage";
      case "voltage-fall" -> "use larger wire or a shorter run, starting at the service, or take load off it";
      case "neutral", "hot", "current", "bus" -> below ? DIFFERS : "take load off it, or share the load between the legs";
      case "ground", "touch-voltage", "touch-current", "residual-current" -> below
          ? DIFFERS
          : "find the leak or the joint of neutral and ground, and give the metal a ground that trips the breaker";
      case "fault-current" -> below ? "use larger wire, ground included, or a shorter run, so that a fault opens the breaker" : DIFFERS;
      default -> DIFFERS;
    };
  }
}
