package wattle.rules;

import java.util.Optional;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.model.Service;
import wattle.model.Stretch;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;
import wattle.worksheet.Worksheet;

/**
 * The neutral of a feeder or of a service run held against the unbalanced load calculated for it (NFPA 70 220.61, 215.2(B), 230.42(C)).
 *
 * @param needs amperes of the neutral by the worksheet, at most the rating
 * @param has ampacity of the neutral after factors, and in the column of the terminals
 */
record FeederNeutral(double needs, double has) {
  /** Fractions of an ampere below a half are dropped (NFPA 70 220.5(B)). */
  private static final double ROUNDING = 0.5;

  /**
   * What is checked.
   *
   * @param marked temperature of the terminals; absent where that of the code for unmarked ones holds
   */
  private record Asked(Stretch run, SupplySystem system, Worksheet load, Quantity rating, Optional<Derivation> marked) {}

  boolean carries() {
    return needs - has < ROUNDING;
  }

  static Optional<FeederNeutral> of(Facts facts, FeederOf feeder) {
    return asked(facts, feeder).flatMap(a -> ofNeutral(facts, a));
  }

  static Optional<FeederNeutral> of(Facts facts, Service service) {
    return asked(facts, service).flatMap(a -> ofNeutral(facts, a));
  }

  /** The thinnest neutral of the same metal that would carry it. */
  static Optional<WireSize> least(Facts facts, FeederOf feeder) {
    return asked(facts, feeder).flatMap(a -> least(facts, a));
  }

  static Optional<WireSize> least(Facts facts, Service service) {
    return asked(facts, service).flatMap(a -> least(facts, a));
  }

  private static Optional<Asked> asked(Facts facts, FeederOf feeder) {
    Optional<Quantity> rating = SupplyProperties.supplyRating(facts, feeder.panel());
    return rating.flatMap(r -> facts.calculated(feeder.panel()).map(w -> new Asked(feeder.stretch(), feeder.panel().system(), w, r,
        ends(facts.conductors().terminations().marked(feeder.panel()), WholeDwelling.isFor(facts, feeder.panel(), rating)))));
  }

  private static Optional<Asked> asked(Facts facts, Service service) {
    return service.rating().flatMap(r -> service.run().flatMap(run -> ServiceConductor.worksheet(facts, service)
        .map(w -> new Asked(run, service.system(), w, r, ends(ServiceConductor.marked(facts, service),
            WholeDwelling.isFor(facts, service))))));
  }

  private static Optional<Derivation> ends(Optional<Derivation> marked, boolean whole) {
    return marked.or(() -> whole ? Optional.of(WholeDwelling.terminals()) : Optional.empty());
  }

  private static Optional<FeederNeutral> ofNeutral(Facts facts, Asked asked) {
    return asked.run.wiring().neutral().flatMap(n -> of(facts, asked, facts.conductors().runs().of(asked.run, asked.system, n)));
  }

  private static Optional<FeederNeutral> of(Facts facts, Asked asked, Conditions conditions) {
    Optional<Derivation> ends = facts.conductors().ampacities().atTerminals(conditions.size(), conditions.metal(),
        Derivation.stated("rating", "I", asked.rating), asked.marked);
    Optional<Ampacity> ampacity = facts.conductors().ampacities().of(conditions);
    return ampacity.flatMap(a -> ends.map(e -> new FeederNeutral(
        Math.min(asked.load.neutralCurrent().si(), asked.rating.si()), Math.min(a.amperes(), conditions.sets() * e.si()))));
  }

  private static Optional<WireSize> least(Facts facts, Asked asked) {
    return asked.run.wiring().neutral()
        .flatMap((Wire n) -> facts.conductors().ampacities().sizes(n.metal()).stream()
            .filter(s -> of(facts, asked, facts.conductors().runs().of(asked.run, asked.system, n).with(s))
                .filter(FeederNeutral::carries).isPresent())
            .findFirst());
  }
}
