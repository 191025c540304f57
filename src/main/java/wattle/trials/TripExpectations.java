package wattle.trials;

import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.model.Expectation;
import wattle.model.House;

/**
 * Whether a breaker, a main or a protected receptacle opens in a trial, by its current and by its ground-fault protection;
 * what it needs a hand for counts as opening. Arc-fault protection is not counted, for it cannot be computed.
 */
final class TripExpectations {
  /** What is found of it. */
  enum Outcome {
    TRIPS, MAY, HOLDS
  }

  /**
   * @param figure the current that it goes by
   * @param words what was found, for a headline
   */
  record Found(Outcome outcome, Derivation figure, String words, String because) {
    boolean isAs(Expectation.Bound bound) {
      return outcome == (bound == Expectation.Bound.TRIPS ? Outcome.TRIPS : Outcome.HOLDS);
    }
  }

  private TripExpectations() {}

  /** Absent where the subject is nothing that opens by itself. */
  static Optional<Found> of(TrialResult result, String subject) {
    House house = result.house();
    boolean breaker = house.panels().values().stream().flatMap(p -> p.breakers().stream()).anyMatch(b -> b.id().toString().equals(subject));
    boolean main = house.panels().containsKey(subject) && house.panels().get(subject).main().isPresent();
    List<ProtectionReading> protections = result.allProtections().stream()
        .filter(p -> p.residual().isPresent() && (p.name().equals(subject) || p.name().equals("breaker " + subject))).toList();
    if (!breaker && !main && protections.isEmpty()) {
      return Optional.empty();
    }
    Optional<TrialResult.OvercurrentReading> over = result.overcurrents().stream()
        .filter(o -> o.name().equals((main ? "main of " : "breaker ") + subject) || o.name().equals("fuse " + subject)).findFirst();
    Optional<Found> residual = protections.stream().map(TripExpectations::found).min(java.util.Comparator.comparing(Found::outcome));
    Optional<Found> current = over.map(TripExpectations::found);
    if (residual.isPresent() && current.isPresent()) {
      return residual.get().outcome().compareTo(current.get().outcome()) <= 0 ? residual : current;
    }
    return residual.or(() -> current)
        .or(() -> Optional.of(new Found(Outcome.HOLDS, Figures.solved("current above the rating of " + subject, 0,
            wattle.quantity.Units.AMPERE, "It carries no more than its rating."), "holds", "")));
  }

  private static Found found(ProtectionReading reading) {
    Derivation figure = reading.touched().filter(
        t -> reading.verdict() == ProtectionReading.Verdict.TRIPS_ON_TOUCH || reading.verdict() == ProtectionReading.Verdict.MAY_ON_TOUCH)
        .orElse(reading.residual().orElseThrow());
    Outcome outcome = switch (reading.verdict()) {
      case TRIPS, TRIPS_ON_TOUCH -> Outcome.TRIPS;
      case MAY, MAY_ON_TOUCH, UNKNOWN -> Outcome.MAY;
      case HOLDS -> Outcome.HOLDS;
    };
    return new Found(outcome, figure, reading.verdict().words(), reading.because());
  }

  private static Found found(TrialResult.OvercurrentReading reading) {
    boolean must = reading.opens().flatMap(o -> o.most()).isPresent();
    return new Found(must ? Outcome.TRIPS : Outcome.MAY, reading.amps(), must ? "trips" : "may trip",
        reading.opens().map(o -> o.mostBound()).orElse("by its maker's curve"));
  }
}
