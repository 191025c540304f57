package wattle.rules;

import java.util.Optional;
import wattle.conductors.Impedance;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.Section;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/**
 * The share of its voltage that a branch loses on the way to its farthest box: the usual hand formula (common practice),
 * current through out and back resistance at 75 °C. All of the current is taken to go to the far end, which is the worst
 * that the stated loads can do; the network solution (table --of voltage) has the exact figure for each outlet.
 */
final class Drop {
  private static final double HOT_CELSIUS = 75;
  /** Of the breaker's rating, where the plan states no loads: the load that a branch may carry for long. */
  private static final double USUAL_SHARE = 0.8;

  private Drop() {}

  static Optional<Quantity> of(Facts facts, Branch branch) {
    Optional<SupplySystem> system = facts.systemOf(branch);
    Optional<Double> rating = facts.breakersOf(branch).stream().findFirst().flatMap(Breaker::amperes);
    if (system.isEmpty() || rating.isEmpty()) {
      return Optional.empty();
    }
    boolean toNeutral = branch.hots().size() < 2 || branch.sharesNeutral();
    double volts = toNeutral ? system.get().legToNeutralVolts() : system.get().legToLegVolts();
    double stated = facts.loads().branch(branch.name()).heaviestAmperes(system.get());
    double amperes = stated > 0 ? Math.min(stated, rating.get()) : USUAL_SHARE * rating.get();
    double[] ohms = new double[branch.points().size()];
    double most = 0;
    for (Section section : branch.sections()) {
      Optional<Impedance> impedance = facts.conductors().impedances().of(section.wiring().hot(), section.wiring());
      if (section.length().isEmpty() || impedance.isEmpty()) {
        return Optional.empty();
      }
      double own = 2 * section.length().get().si() * impedance.get().ohmsPerMetre(HOT_CELSIUS);
      ohms[section.to()] = ohms[section.from()] + own;
      most = Math.max(most, ohms[section.to()]);
    }
    return Optional.of(Quantity.of(100 * amperes * most / volts, Units.PERCENT));
  }
}
