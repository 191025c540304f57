package wattle.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.model.Breaker;
import wattle.model.Dwelling;
import wattle.model.Panel;
import wattle.model.Service;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.worksheet.Inputs;

/**
 * Conductors that carry the whole load of one dwelling on two hots, which may be smaller than others (NFPA 70 310.12): by the table where
 * no factor applies, else at 83 % of the rating with the ampacity after the factors. The table is that of the 75 °C column; what is
 * held to 60 °C has to reach the 83 % too.
 */
final class WholeDwelling {
  /** NFPA 70 310.12(A) and (B): share of the rating that the conductors carry at least. */
  private static final double SHARE = 0.83;
  /** NFPA 70 310.12(A) and (B): ratings, in amperes, between which that holds. */
  static final double LEAST = 100;
  private static final double MOST = 400;
  private static final double TABLE_CELSIUS = 75;

  private WholeDwelling() {}

  /** A service for one dwelling, on a supply and of a rating that the article is for. */
  static boolean isFor(Facts facts, Service service) {
    double dwellings = facts.house().dwellings().values().stream().mapToDouble(Dwelling::count).sum();
    return dwellings <= 1 && fits(facts, service.system(), service.rating());
  }

  /** A feeder that carries all of one dwelling. Where the plan describes none, the whole house counts as one. */
  static boolean isFor(Facts facts, Panel panel, Optional<Quantity> rating) {
    if (!fits(facts, panel.system(), rating)) {
      return false;
    }
    if (facts.house().dwellings().isEmpty()) {
      Set<String> behind = new HashSet<>();
      collect(facts, panel, behind);
      return facts.house().branches().values().stream().allMatch(b -> b.panel().filter(behind::contains).isPresent());
    }
    return facts.worksheets().feeder(panel.name()).map(r -> r.inputs())
        .filter(i -> i.scope() == Inputs.Scope.FEEDER && i.dwellingCount() == 1 && i.common().isEmpty()).isPresent();
  }

  private static void collect(Facts facts, Panel panel, Set<String> found) {
    if (panel == null || !found.add(panel.name())) {
      return;
    }
    for (Breaker breaker : panel.breakers()) {
      if (breaker.target() instanceof Breaker.Target.ToPanel to) {
        collect(facts, facts.house().panels().get(to.panel()), found);
      }
    }
  }

  private static boolean fits(Facts facts, SupplySystem system, Optional<Quantity> rating) {
    boolean twoHots = system.kind() == SupplySystem.Kind.SPLIT_PHASE || system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE;
    return twoHots && facts.library().table("service-conductor").isPresent()
        && rating.filter(r -> r.si() >= LEAST && r.si() <= MOST).isPresent();
  }

  /**
   * The least hot by the table, where that may be applied.
   *
   * @param marked what the terminals at the ends are marked for; absent where nothing is said
   */
  static Optional<WireSize> least(Facts facts, Quantity rating, Conditions conditions, Optional<Derivation> marked) {
    boolean hot = marked.flatMap(Derivation::quantity).map(q -> q.in(Units.CELSIUS) >= TABLE_CELSIUS).orElse(true);
    boolean factors = facts.conductors().ampacities().of(conditions)
        .filter(a -> a.ambientFactor().si() >= 1 && a.bundlingFactor().si() >= 1).isEmpty();
    if (factors || !hot || conditions.useCelsius() < TABLE_CELSIUS || conditions.sets() > 1) {
      return Optional.empty();
    }
    return SupplyProperties.size(facts.conductors().grounds().forService(Derivation.stated("rating", "I", rating), conditions.metal()));
  }

  /** The largest standard rating for a dwelling that the hots will do for; absent where the code has no figure. */
  static Optional<Quantity> largest(Facts facts, Quantity rating, Wire hot, Conditions conditions, Optional<Derivation> marked) {
    Optional<WireSize> least = least(facts, rating, conditions, marked);
    if (least.isPresent() && hot.size().compareTo(least.get()) >= 0) {
      return Optional.of(rating);
    }
    Conductors conductors = facts.conductors();
    Derivation ends = marked.orElseGet(WholeDwelling::terminals);
    return conductors.ampacities().between(conditions, Derivation.stated("rating", "I", rating), Optional.of(ends))
        .flatMap(a -> conductors.breakers().notAbove(atShare(a)))
        .flatMap(Derivation::quantity);
  }

  /** What terminals are taken for where nothing marks them. */
  static Derivation terminals() {
    return Derivation.assumed("terminals", "T_t", Quantity.of(TABLE_CELSIUS, Units.CELSIUS));
  }

  private static Derivation atShare(Derivation ampacity) {
    Derivation share = Derivation.stated("share for one dwelling", "k", new Quantity(SHARE, Units.PERCENT));
    return Derivation.computed(
        "rating for one dwelling", "I_r", "I_z / k", ampacity.si() / share.si(), Units.AMPERE, ampacity.named(ampacity.name(), "I_z"),
        share);
  }

  /** In words, what 310.12 comes to for these hots. */
  static String words(Facts facts, Quantity rating, Conditions conditions, Optional<Derivation> marked) {
    String amperes = facts.conductors().ampacities().of(conditions).map(Ampacity::amperes)
        .map(CircuitLoad::amperes).orElse("no ampacity");
    return "310.12 asks for 83 % of " + CircuitLoad.amperes(rating.si()) + ", " + CircuitLoad.amperes(SHARE * rating.si())
        + ", of conductors that carry"
        + " a whole dwelling" + (least(facts, rating, conditions, marked).isPresent() ? "" : "; after its factors this one has " + amperes);
  }
}
