package wattle.worksheet;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** From lines to a worksheet: amperes, the neutral, the next standard rating, what is left. */
final class Capacity {
  private Capacity() {}

  /**
   * @param leastRating of the service or feeder, by the code; absent where none is set
   */
  static Worksheet of(
      Method method, Inputs inputs, Figures figures, Tally load, Tally neutral, Optional<Derivation> leastRating) {
    boolean service = inputs.scope() == Inputs.Scope.SERVICE;
    Derivation total = load.total("calculated load");
    String name = service ? "service current" : "feeder current";
    LegAmperes amperes = new LegAmperes(inputs, figures);
    Map<Leg, Derivation> legs = amperes.legs(name, total, load);
    Derivation current = amperes.governing(name, total, legs);
    Derivation neutralTotal = neutral.total("load of the neutral");
    Derivation neutralCurrent = reduced(amperes.neutral("current of the neutral", neutralTotal, neutral), inputs.system(), figures);
    // CSA C22.1 8-200 3) and 8-202 2) let off what is calculated for whole dwellings; a feeder to a part of one is not.
    boolean canadianPart = method.mechanism().countsWatts() && inputs.scope() == Inputs.Scope.PART;
    boolean ofDwellings = method.mechanism() == Mechanism.DWELLING_STANDARD || method.mechanism() == Mechanism.MULTI_STANDARD
        || canadianPart;
    ContinuousLoads lasting = new ContinuousLoads(inputs, ofDwellings);
    double leastCharger = figures.maybe("vehicle-least").map(Derivation::si).orElse(0.0);
    Derivation sized = method.mechanism() == Mechanism.CANADIAN_MEASURED
        ? eighty(current, figures)
        : sized(current, legs, lasting, leastCharger, method.mechanism().countsWatts());
    Derivation continuous = inputs.system().legs().stream().map(lasting::onLeg).max(Comparator.comparingDouble(Derivation::si))
        .orElseThrow();
    Optional<Derivation> next = next(sized, leastRating, figures);
    Optional<Derivation> rating = inputs.rating().map(r -> Derivation.stated("rating of " + inputs.name(), "I_r", r));
    Optional<Derivation> spare = rating.map(
        r -> Derivation.computed(
            "spare capacity", "I_s", "I_r − I", r.si() - sized.si(), Units.AMPERE, r, sized.named(sized.name(), "I")));
    Worksheet sheet = new Worksheet(
        method, inputs.name(), inputs.scope(),
        load.lines().stream().map(inputs.placement()::remarked).toList(), neutral.lines(), total, legs, current, neutralTotal,
        neutralCurrent, next, rating, continuous, sized, spare);
    return method.mechanism().countsWatts() ? sheet.inWatts() : sheet;
  }

  /** What rating carries a load that counts as continuous as a whole. */
  private static Derivation eighty(Derivation current, Figures figures) {
    Derivation share = figures.limit("continuous-share").named("part of a rating", "f");
    return Derivation.computed(
        "rating that carries it, not marked for 100 %", "I_r", "I / f", current.si() / share.si(), Units.AMPERE,
        current.named(current.name(), "I"), share);
  }

  /** The leg that needs most when continuous loads count at 125 %. */
  private static Derivation sized(Derivation current, Map<Leg, Derivation> legs, ContinuousLoads lasting, double leastCharger,
      boolean canadian) {
    Derivation most = current;
    for (Map.Entry<Leg, Derivation> leg : legs.entrySet()) {
      // On two legs of a wye the whole by the voltage between them governs, and what lasts comes on top of that.
      boolean whole = legs.values().stream().allMatch(l -> l.si() < current.si() - 1e-9);
      Derivation base = whole ? current : leg.getValue();
      Derivation quarter = lasting.quarterOnLeg(leg.getKey(), leastCharger);
      double amperes = base.si() + quarter.si();
      if (quarter.si() > 0 && amperes > most.si()) {
        most = Derivation.computed(
            "current with continuous loads at 125 %", "I", "I_l + I_q", amperes, Units.AMPERE, base.named(base.name(), "I_l"), quarter)
            .remarking(
                canadian
                    ? "A continuous load is 80 % of a rating at most, 8-104. The calculated load itself is without it."
                    : "For the rating and the conductors: NFPA 70 215.2(A)(1), 215.3, 230.42(A), 625.41. The calculated load itself"
                        + " is without it.");
      }
    }
    return most;
  }

  /** A large neutral carries less than its hots, but not where two legs of a wye are fed: NFPA 70 220.61(C). */
  private static Derivation reduced(Derivation current, SupplySystem system, Figures figures) {
    if (system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE) {
      return current;
    }
    Derivation over = figures.limit("neutral-over").named("from", "I_o");
    Derivation factor = figures.limit("neutral-factor").named("factor on what is above", "f");
    if (current.si() <= over.si()) {
      return current;
    }
    return Derivation.computed(
        "current of the neutral after its factor", "I_n", "I_o + (I_u − I_o) × f",
        over.si() + (current.si() - over.si()) * factor.si(), Units.AMPERE, current.named(current.name(), "I_u"), over,
        factor);
  }

  private static Optional<Derivation> next(Derivation current, Optional<Derivation> least, Figures figures) {
    Derivation needed = current;
    Optional<Derivation> dropped = figures.maybe("fraction-dropped");
    double fraction = current.si() - Math.floor(current.si());
    if (dropped.isPresent() && fraction > 0 && fraction < dropped.get().si()) {
      needed = Derivation.computed(
          "current, its fraction dropped", "I", "whole amperes of I", Math.floor(current.si()), Units.AMPERE, current,
          dropped.get());
    }
    if (least.isPresent() && least.get().si() > needed.si()) {
      needed = Derivation.computed(
          "the least that is allowed", "I", "max(I, I_l)", new Value.Amount(Quantity.of(least.get().si(), Units.AMPERE)),
          java.util.List.of(needed, least.get().named(least.get().name(), "I_l")));
    }
    return figures.notBelow("service-ratings", "next standard rating", "rating", needed);
  }
}
