package wattle.rules;

import java.util.Optional;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.model.Breaker;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/**
 * The hots of a run held against what they carry: the ampacity after correction against the load, and the ampacity of the
 * table, in the column of the terminals and of the use, against the load with its continuous part at 125 %. Where a code has continuous
 * loads take a part of the rating of the circuit, which is no more than the ampacity of its conductors (CSA C22.1 8-104 1), 5) and 6)),
 * that is the ampacity after correction too. A load above the breaker's rating counts as the rating, since the breaker opens: that is
 * another fault.
 *
 * @param needs amperes that the hots need, by that of the two that fails or comes nearer
 * @param has amperes that they have
 */
record CircuitCheck(double needs, double has) {
  /** Fractions of an ampere below a half are dropped (NFPA 70 220.5(B)). */
  private static final double ROUNDING = 0.5;

  boolean carries() {
    return needs - has < ROUNDING;
  }

  static Optional<CircuitCheck> of(Facts facts, RunOf run) {
    return of(facts, run, facts.circuitLoad(run));
  }

  /** Held against another load than what is drawn beyond the run, such as what an inverter gives. */
  static Optional<CircuitCheck> of(Facts facts, RunOf run, CircuitLoad load) {
    Optional<Conditions> conditions = conditions(facts, run);
    Optional<Quantity> rating = rating(facts, run);
    return conditions.flatMap(c -> rating.flatMap(r -> of(facts, load, c, r, marked(facts, run, r))));
  }

  private static Optional<CircuitCheck> of(
      Facts facts, CircuitLoad load, Conditions conditions, Quantity rating, Optional<Derivation> marked) {
    Optional<Ampacity> ampacity = facts.conductors().ampacities().of(conditions);
    Optional<Derivation> use = facts.conductors().ampacities().listed(conditions.size(), conditions.metal(), conditions.useCelsius(), "");
    Optional<Derivation> ends = facts.conductors().ampacities()
        .atTerminals(conditions.size(), conditions.metal(), Derivation.stated("rating", "I", rating), marked);
    if (ampacity.isEmpty() || use.isEmpty() || ends.isEmpty()) {
      return Optional.empty();
    }
    double after = Math.min(ampacity.get().amperes(), Math.min(use.get().si(), ends.get().si()));
    double before = ofRating(facts) ? after : Math.min(use.get().si(), ends.get().si());
    double draws = Math.min(load.draws(), rating.si());
    double sized = Math.min(load.sized(), rating.si());
    return Optional.of(draws - after > sized - before ? new CircuitCheck(draws, after) : new CircuitCheck(sized, before));
  }

  /** Whether continuous loads are held to a part of the rating of a circuit, conductors after correction included. */
  static boolean ofRating(Facts facts) {
    return facts.library().limit("continuous-share").isPresent();
  }

  /** The thinnest size of the same metal that would carry the load, laid the same way. */
  static Optional<WireSize> least(Facts facts, RunOf run) {
    return least(facts, run, facts.circuitLoad(run));
  }

  static Optional<WireSize> least(Facts facts, RunOf run, CircuitLoad load) {
    Optional<Conditions> conditions = conditions(facts, run);
    Optional<Quantity> rating = rating(facts, run);
    if (conditions.isEmpty() || rating.isEmpty()) {
      return Optional.empty();
    }
    Optional<Derivation> marked = marked(facts, run, rating.get());
    for (WireSize size : facts.conductors().ampacities().sizes(conditions.get().metal())) {
      if (of(facts, load, conditions.get().with(size), rating.get(), marked).filter(CircuitCheck::carries).isPresent()) {
        return Optional.of(size);
      }
    }
    return Optional.empty();
  }

  /**
   * The least size that the code would have taken: for the breaker, or for the load alone where the article of the load lets
   * the breaker be above the ampacity.
   */
  static Optional<WireSize> needed(Facts facts, RunOf run) {
    return needed(facts, run, facts.receptaclesOn(run.branch()) <= 1);
  }

  /**
   * The size that a ground is held against (NFPA 70 250.122(B)): the next standard rating above an ampacity is not counted on, as exam
   * books do, so that no ground is asked to be thicker than they would have it.
   */
  static Optional<WireSize> sufficient(Facts facts, RunOf run) {
    return needed(facts, run, false);
  }

  private static Optional<WireSize> needed(Facts facts, RunOf run, boolean mayRoundUp) {
    Optional<Conditions> conditions = conditions(facts, run);
    Optional<Quantity> rating = rating(facts, run);
    if (conditions.isEmpty() || rating.isEmpty()) {
      return Optional.empty();
    }
    if (LargerBreaker.of(facts, run).filter(l -> l.si() >= rating.get().si()).isPresent()) {
      return least(facts, run);
    }
    return SupplyProperties.size(
        facts.conductors().sizes().forBreaker(Derivation.stated("rating", "I", rating.get()), conditions.get(),
            marked(facts, run, rating.get()), mayRoundUp));
  }

  static Optional<Conditions> conditions(Facts facts, RunOf run) {
    return facts.conductors().runs().of(run.branch(), run.section(), run.section().wiring().hot());
  }

  static Optional<Quantity> rating(Facts facts, RunOf run) {
    return facts.breakersOf(run.branch()).stream().findFirst().flatMap(Breaker::rating);
  }

  static Optional<Derivation> marked(Facts facts, RunOf run, Quantity rating) {
    return facts.conductors().terminations().of(run.branch(), run.section(), Derivation.stated("rating", "I", rating));
  }
}
