package wattle.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import wattle.conductors.Ampacity;
import wattle.conductors.Conditions;
import wattle.conductors.Conductors;
import wattle.derivation.Derivation;
import wattle.library.Limit;
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
  private static final String SHARE = "dwelling-conductor-share";
  private static final String LEAST = "dwelling-rating-least";
  private static final String MOST = "dwelling-rating-most";
  private static final String RAISE = "dwelling-conductor-raise";
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

  /**
   * The load that the hots of a service of one dwelling carry by a table of dwellings that has its own figures (CSA C22.1 4-004, Table
   * 39): so much more than their ampacity, where they are thick enough for the rating by that table. Absent where the code has none,
   * where it may not be used, or where they are thinner.
   */
  static Optional<Double> raised(Facts facts, Service service, Conditions conditions) {
    double dwellings = facts.house().dwellings().values().stream().mapToDouble(Dwelling::count).sum();
    Optional<Limit> raise = facts.library().limit(RAISE);
    if (raise.isEmpty() || dwellings != 1 || !onTwoHots(service.system()) || service.rating().isEmpty() || conditions.sets() > 1) {
      return Optional.empty();
    }
    Optional<WireSize> least = SupplyProperties.size(
        facts.conductors().grounds().forService(Derivation.stated("rating", "I", service.rating().get()), conditions.metal()));
    return least.filter(l -> conditions.size().compareTo(l) >= 0)
        .flatMap(l -> facts.conductors().ampacities().of(conditions))
        .filter(a -> a.ambientFactor().si() >= 1 && a.bundlingFactor().si() >= 1)
        .flatMap(a -> facts.conductors().ampacities().listed(conditions.size(), conditions.metal(), TABLE_CELSIUS, ""))
        .map(i -> raise.get().value().si() * i.si());
  }

  private static void collect(Facts facts, Panel panel, Set<String> found) {
    if (panel == null || !found.add(panel.name())) {
      return;
    }
    for (Breaker breaker : panel.breakers()) {
      facts.house().panelOf(breaker).ifPresent(fed -> collect(facts, fed, found));
    }
  }

  private static boolean fits(Facts facts, SupplySystem system, Optional<Quantity> rating) {
    return onTwoHots(system) && facts.library().table("service-conductor").isPresent() && facts.library().limit(SHARE).isPresent()
        && rating.filter(r -> !isBelow(facts, r) && facts.library().limit(MOST).filter(m -> r.si() > m.value().si()).isEmpty())
            .isPresent();
  }

  private static boolean onTwoHots(SupplySystem system) {
    return system.kind() == SupplySystem.Kind.SPLIT_PHASE || system.kind() == SupplySystem.Kind.TWO_LEGS_OF_WYE;
  }

  /** Whether a rating is less than any that the code has a figure for. */
  static boolean isBelow(Facts facts, Quantity rating) {
    return facts.library().limit(LEAST).filter(l -> rating.si() < l.value().si()).isPresent();
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
        .flatMap(a -> facts.library().limit(SHARE).map(share -> atShare(a, share.derivation("k"))))
        .flatMap(conductors.breakers()::notAbove)
        .flatMap(Derivation::quantity);
  }

  /** What terminals are taken for where nothing marks them. */
  static Derivation terminals() {
    return Derivation.assumed("terminals", "T_t", Quantity.of(TABLE_CELSIUS, Units.CELSIUS));
  }

  private static Derivation atShare(Derivation ampacity, Derivation share) {
    return Derivation.computed(
        "rating for one dwelling", "I_r", "I_z / k", ampacity.si() / share.si(), Units.AMPERE, ampacity.named(ampacity.name(), "I_z"),
        share);
  }

  /** In words, what 310.12 comes to for these hots. */
  static String words(Facts facts, Quantity rating, Conditions conditions, Optional<Derivation> marked) {
    String amperes = facts.conductors().ampacities().of(conditions).map(Ampacity::amperes)
        .map(CircuitLoad::amperes).orElse("no ampacity");
    String share = facts.library().limit(SHARE).map(Limit::value)
        .map(s -> s + " of " + CircuitLoad.amperes(rating.si()) + ", " + CircuitLoad.amperes(s.si() * rating.si()))
        .orElse(CircuitLoad.amperes(rating.si()));
    return "Conductors that carry a whole dwelling need " + share + " (310.12)"
        + (least(facts, rating, conditions, marked).isPresent() ? "" : "; after its factors this one has " + amperes);
  }
}
