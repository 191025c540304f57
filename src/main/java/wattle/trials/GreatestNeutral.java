package wattle.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.derivation.Value;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.network.Complex;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The greatest current that loads up to the breakers can put in a shared neutral. Currents of hots add as phasors, each from nothing to
 * its breaker's rating. The length of their sum is greatest with each at an end of its range, so all such choices are tried.
 */
public final class GreatestNeutral {
  private GreatestNeutral() {}

  /** Of a branch as it stands in its panel; absent for one whose neutral is not shared, and where a rating or a leg is not known. */
  public static Optional<Derivation> of(House house, Branch branch) {
    return branch.sharesNeutral()
        ? branch.panel().map(house.panels()::get)
            .flatMap(p -> of(house, branch, branch.hots().stream().map(BranchHot::leg).toList(), p.system()))
        : Optional.empty();
  }

  /**
   * Absent where a rating or a leg is not known.
   *
   * @param legs of the hots of the branch, in order
   */
  static Optional<Derivation> of(House house, Branch branch, List<Optional<Leg>> legs, SupplySystem system) {
    int hots = branch.hots().size();
    List<Derivation> ratings = new ArrayList<>();
    List<Complex> currents = new ArrayList<>();
    for (int h = 0; h < hots; h++) {
      Optional<Double> amperes = Ratings.ofHot(branch, h, house);
      Optional<Leg> leg = h < legs.size() ? legs.get(h) : Optional.empty();
      if (amperes.isEmpty() || leg.isEmpty()) {
        return Optional.empty();
      }
      ratings.add(
          Derivation.stated("rating of the breaker of hot " + leg.get(), "I_" + (h + 1), Quantity.of(amperes.get(), Units.AMPERE)));
      currents.add(Complex.polar(amperes.get(), system.degreesOf(leg.get())));
    }
    double most = 0;
    int best = 0;
    for (int choice = 1; choice < 1 << hots; choice++) {
      Complex sum = Complex.ZERO;
      for (int h = 0; h < hots; h++) {
        sum = (choice >> h & 1) == 1 ? sum.plus(currents.get(h)) : sum;
      }
      if (sum.magnitude() > most * (1 + 1e-12)) {
        most = sum.magnitude();
        best = choice;
      }
    }
    List<Derivation> on = new ArrayList<>();
    List<String> symbols = new ArrayList<>();
    for (int h = 0; h < hots; h++) {
      if ((best >> h & 1) == 1) {
        on.add(ratings.get(h));
        symbols.add("I_" + (h + 1));
      }
    }
    return Optional.of(
        Derivation.computed(
            "largest current of the neutral of " + branch.name(), "I_N",
            on.size() == 1 ? symbols.get(0) : "|" + String.join(" + ", symbols) + "|",
            new Value.Amount(Quantity.of(most, Units.AMPERE)), on)
            .remarking(
                "Loads up to the breakers in any combination, at one power factor; hots that are not listed draw nothing."
                    + " Currents add as phasors, with the angles of their legs."));
  }
}
