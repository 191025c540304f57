package wattle.worksheet;

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
    Derivation current = asWired(
        heavierLeg(amperes(name, total, inputs.system(), "I"), load, inputs.system()), total, load, inputs, figures);
    Derivation neutralTotal = neutral.total("load of the neutral");
    Derivation neutralCurrent = reduced(
        asWired(
            heavierLeg(amperes("current of the neutral", neutralTotal, inputs.system(), "I_n"), neutral, inputs.system()), neutralTotal,
            neutral, inputs, figures),
        inputs.system(), figures);
    Derivation sized = sized(current, inputs);
    Optional<Derivation> next = next(sized, leastRating, figures);
    Optional<Derivation> rating = inputs.rating().map(r -> Derivation.stated("rating of " + inputs.name(), "I_r", r));
    Optional<Derivation> spare = rating.map(
        r -> Derivation.computed(
            "spare capacity", "I_s", "I_r − I", r.si() - sized.si(), Units.AMPERE, r, sized.named(sized.name(), "I")));
    return new Worksheet(
        method, inputs.name(), inputs.scope(),
        load.lines().stream().map(inputs.placement()::remarked).toList(), neutral.lines(), total, current, neutralTotal,
        neutralCurrent, next, rating, sized, spare);
  }

  /** NFPA 70 215.2(A)(1), 215.3 and 230.42(A): continuous loads at 125 %, which those of dwellings in a floor area are not. */
  private static Derivation sized(Derivation current, Inputs inputs) {
    Derivation quarter = CommonOutlets.quarter(inputs);
    if (quarter.si() == 0) {
      return current;
    }
    return Derivation.computed(
        "current with continuous loads at 125 %", "I", "I_c + I_q", current.si() + quarter.si(), Units.AMPERE,
        current.named(current.name(), "I_c"), quarter)
        .remarking("For the rating and the conductors, NFPA 70 215.2(A)(1), 215.3, 230.42(A); the calculated load itself is without it.");
  }

  private static Derivation amperes(String name, Derivation load, SupplySystem system, String symbol) {
    boolean threePhase = system.kind() == SupplySystem.Kind.THREE_PHASE_WYE;
    double volts = (threePhase ? Math.sqrt(3) : 1) * system.legToLegVolts();
    return Derivation.computed(
        name, symbol, threePhase ? "P / (√3 × U)" : "P / U", load.si() / volts, Units.AMPERE, load.named(load.name(), "P"),
        Derivation.stated("voltage between legs", "U", Quantity.of(system.legToLegVolts(), Units.VOLT)));
  }

  /**
   * Single loads to the neutral need not balance. Half of their difference comes on top of the mean, on the heavier leg
   * and on the neutral, as in example D1(b) of Annex D of NFPA 70; where no leg is known they count as balanced.
   */
  private static Derivation heavierLeg(Derivation mean, Tally tally, SupplySystem system) {
    Derivation a = tally.onLeg(Leg.A);
    Derivation b = tally.onLeg(Leg.B);
    if (system.kind() != SupplySystem.Kind.SPLIT_PHASE || a.si() == b.si()) {
      return mean;
    }
    Derivation heavier = a.si() > b.si() ? a : b;
    Derivation lighter = a.si() > b.si() ? b : a;
    return Derivation.computed(
        mean.name() + ", heavier leg", mean.symbol(), "I_m + (P_a − P_b) / U",
        mean.si() + (heavier.si() - lighter.si()) / system.legToLegVolts(), Units.AMPERE, mean.named(mean.name(), "I_m"),
        heavier.named(heavier.name(), "P_a"), lighter.named(lighter.name(), "P_b"),
        Derivation.stated("voltage between legs", "U", Quantity.of(system.legToLegVolts(), Units.VOLT)));
  }

  /** On three phases the leg that carries most as wired; what is counted for it already is not spread once more. */
  private static Derivation asWired(Derivation mean, Derivation total, Tally tally, Inputs inputs, Figures figures) {
    Optional<Derivation> factor = LegSpread.factor(inputs, figures, tally.apart());
    double spread = total.si() - tally.onHeaviest();
    if (factor.isEmpty() || total.si() == 0 || factor.get().si() < 1 + 1e-6) {
      return mean;
    }
    double share = spread / total.si();
    Derivation part = Derivation.computed(
        "part of it that is spread as wired", "a", "", new Value.Amount(Quantity.of(100 * share, Units.PERCENT)), java.util.List.of())
        .remarking("The rest, ranges and dryers by 220.54 and 220.55, is counted for the heaviest leg already.");
    return Derivation.computed(
        mean.name() + ", heaviest leg", mean.symbol(), "I_m × (1 + a × (k − 1))", mean.si() * (1 + share * (factor.get().si() - 1)),
        Units.AMPERE, mean.named(mean.name(), "I_m"), part, factor.get());
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
