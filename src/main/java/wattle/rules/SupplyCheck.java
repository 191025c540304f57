package wattle.rules;

import java.util.Optional;
import java.util.function.Function;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.derivation.Derivation;
import wattle.model.Service;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;
import wattle.worksheet.Worksheet;

/**
 * The hots of a feeder or of a service run held against the load calculated for what is behind them (NFPA 70 215.2(A)(1), 230.42(A), CSA
 * C22.1 8-104): the ampacity after correction against that load, the ampacity of the table, in the column of the terminals and of the
 * use, against the load with its continuous part at 125 %; by CSA C22.1 that of after correction there too. A load above the rating is
 * left to what finds that.
 *
 * @param needs amperes that the hots need, by that of the two that fails or comes nearer
 * @param has amperes that they have
 * @param sum what the load is, in words
 */
record SupplyCheck(double needs, double has, String sum) {
  /** Fractions of an ampere below a half are dropped (NFPA 70 220.5(B)). */
  private static final double ROUNDING = 0.5;

  /**
   * What is checked: the run, what guards it, and the load.
   *
   * @param raised what a table of dwellings lets conductors carry above their ampacity
   */
  private record Asked(
      Conditions conditions, Quantity rating, Optional<Derivation> marked, Worksheet load, Function<Conditions, Optional<Double>> raised) {
    Asked with(WireSize size) {
      return new Asked(conditions.with(size), rating, marked, load, raised);
    }
  }

  boolean carries() {
    return needs - has < ROUNDING;
  }

  static Optional<SupplyCheck> of(Facts facts, FeederOf feeder) {
    return asked(facts, feeder).flatMap(a -> of(facts, a));
  }

  /** The thinnest size of the same metal that would carry the load, laid the same way. */
  static Optional<WireSize> least(Facts facts, FeederOf feeder) {
    return asked(facts, feeder).flatMap(a -> least(facts, a));
  }

  static Optional<SupplyCheck> of(Facts facts, Service service) {
    return asked(facts, service).flatMap(a -> of(facts, a));
  }

  static Optional<WireSize> least(Facts facts, Service service) {
    return asked(facts, service).flatMap(a -> least(facts, a));
  }

  private static Optional<Asked> asked(Facts facts, FeederOf feeder) {
    Optional<Quantity> rating = SupplyProperties.supplyRating(facts, feeder.panel());
    if (WholeDwelling.isFor(facts, feeder.panel(), rating)) {
      return Optional.empty();
    }
    return rating.flatMap(r -> facts.calculated(feeder.panel())
        .map(w -> new Asked(SupplyProperties.conditions(facts, feeder), r,
            facts.conductors().terminations().of(feeder.panel(), feeder.stretch(), Derivation.stated("rating", "I", r)), w,
            c -> Optional.empty())));
  }

  private static Optional<Asked> asked(Facts facts, Service service) {
    if (service.run().isEmpty() || WholeDwelling.isFor(facts, service)) {
      return Optional.empty();
    }
    return service.rating().flatMap(r -> ServiceConductor.worksheet(facts, service)
        .map(w -> new Asked(ServiceConductor.conditions(facts, service), r, ServiceConductor.marked(facts, service), w,
            c -> WholeDwelling.raised(facts, service, c))));
  }

  private static Optional<SupplyCheck> of(Facts facts, Asked asked) {
    Conditions conditions = asked.conditions;
    Optional<Ampacity> ampacity = facts.conductors().ampacities().of(conditions);
    Optional<Derivation> use = facts.conductors().ampacities().listed(conditions.size(), conditions.metal(), conditions.useCelsius(), "");
    Optional<Derivation> ends = facts.conductors().ampacities()
        .atTerminals(conditions.size(), conditions.metal(), Derivation.stated("rating", "I", asked.rating), asked.marked);
    if (ampacity.isEmpty() || use.isEmpty() || ends.isEmpty() || asked.load.sized().si() >= asked.rating.si() + ROUNDING) {
      return Optional.empty();
    }
    double listed = conditions.sets() * Math.min(use.get().si(), ends.get().si());
    double corrected = Math.min(ampacity.get().amperes(), listed);
    double after = Math.max(corrected, asked.raised.apply(conditions).orElse(corrected));
    double before = CircuitCheck.ofRating(facts) ? after : listed;
    double load = asked.load.current().si();
    double sized = asked.load.sized().si();
    String sum = sum(asked.load);
    return Optional.of(
        load - after > sized - before ? new SupplyCheck(load, after, sum) : new SupplyCheck(sized, before, sum));
  }

  private static String sum(Worksheet load) {
    double current = load.current().si();
    double sized = load.sized().si();
    String amperes = CircuitLoad.amperes(current) + " by the worksheet";
    return sized - current < ROUNDING
        ? amperes
        : amperes + " + " + CircuitLoad.amperes(sized - current) + ", a quarter of its continuous part, = " + CircuitLoad.amperes(sized);
  }

  private static Optional<WireSize> least(Facts facts, Asked asked) {
    return facts.conductors().ampacities().sizes(asked.conditions.metal()).stream()
        .filter(s -> of(facts, asked.with(s)).filter(SupplyCheck::carries).isPresent())
        .findFirst();
  }
}
