package wattle.trials;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.conductors.Insulation;
import wattle.conductors.NeutralHeat;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * A shared neutral that can carry more than its hots, since two of them are on one leg: no breaker watches it.
 *
 * @param legs of the hots, in order
 * @param most the greatest current that loads up to the breakers can put in it
 * @param rating of the breakers of its hots
 * @param temperature how warm it gets with that; absent where there is no steady one, or the code has no figures for it
 * @param insulation rating of its insulation; absent where the code has no figures for it
 * @param sentence both in words, with its stop; empty where the code has no figures
 */
public record NeutralReading(
    String branch, List<String> legs, Derivation most, Derivation rating, Optional<Derivation> temperature, Optional<Derivation> insulation,
    String sentence) {
  static List<NeutralReading> of(House house, Library library, Scenario scenario) {
    return house.branches().values().stream()
        .filter(Branch::sharesNeutral)
        .flatMap(b -> of(house, library, scenario, b).stream())
        .sorted(Comparator.comparingDouble((NeutralReading r) -> -r.most.si() / r.rating.si()))
        .toList();
  }

  private static Optional<NeutralReading> of(House house, Library library, Scenario scenario, Branch branch) {
    Optional<SupplySystem> system = branch.panel().map(house.panels()::get).map(p -> p.system());
    List<Optional<Leg>> legs = scenario.legs().getOrDefault(branch.name(), branch.hots().stream().map(BranchHot::leg).toList());
    Optional<Quantity> rating = Ratings.of(branch, house);
    return system.flatMap(s -> GreatestNeutral.of(house, branch, legs, s))
        .filter(w -> rating.filter(r -> w.si() > r.si() * (1 + Overcurrents.ROUNDING)).isPresent())
        .map(w -> of(branch, legs, w, Derivation.stated("rating of the breaker", "I_n", rating.get()),
            NeutralHeat.of(house, library, branch, w)));
  }

  private static NeutralReading of(
      Branch branch, List<Optional<Leg>> legs, Derivation most, Derivation rating, Optional<NeutralHeat> heat) {
    return new NeutralReading(
        branch.name(), legs.stream().map(l -> l.map(Leg::name).orElse("?")).toList(), most, rating, heat.flatMap(NeutralHeat::temperature),
        heat.map(h -> Insulation.rating("T_r", h.ratedCelsius())),
        heat.map(NeutralHeat::sentence).orElse(""));
  }
}
