package wattle.loads;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Leg;
import wattle.model.Load;
import wattle.network.Complex;

/** Loads while they are added up. A long plan has tens of thousands, so that none makes a {@link LegLoads} of its own. */
final class LegSums {
  private static final Ends[] ENDS = Ends.values();

  private final double[] voltAmperes = new double[ENDS.length];
  private final double[] watts = new double[ENDS.length];
  private final double[] reactive = new double[ENDS.length];
  private final boolean[] loaded = new boolean[ENDS.length];
  private double unplaced;

  /** Adds a load of a branch, between the legs of the hots that it is connected to. */
  void add(Load load, Branch branch) {
    Optional<Ends> ends = ends(load.connection(), branch);
    if (ends.isEmpty()) {
      unplaced += load.voltAmperes();
      return;
    }
    int at = ends.get().ordinal();
    double factor = load.powerFactor();
    voltAmperes[at] += load.voltAmperes();
    watts[at] += load.voltAmperes() * factor;
    reactive[at] += load.voltAmperes() * Math.sqrt(Math.max(0, 1 - factor * factor));
    loaded[at] = true;
  }

  /**
   * The conductors of the supply between which something of a branch is connected; absent where a leg is not known. What is between
   * two hots of one leg, which is a finding, counts as from that leg to the neutral.
   */
  static Optional<Ends> ends(Load.Connection connection, Branch branch) {
    if (connection instanceof Load.Connection.HotToNeutral to) {
      return legOf(branch, to.hot()).map(Ends::toNeutral);
    }
    if (connection instanceof Load.Connection.HotToHot between) {
      Optional<Leg> one = legOf(branch, between.hot());
      Optional<Leg> other = legOf(branch, between.otherHot());
      return one.isEmpty() || other.isEmpty()
          ? Optional.empty()
          : Optional.of(one.equals(other) ? Ends.toNeutral(one.get()) : Ends.between(one.get(), other.get()));
    }
    return Optional.empty();
  }

  private static Optional<Leg> legOf(Branch branch, int hot) {
    return hot < branch.hots().size() ? branch.hots().get(hot).leg() : Optional.empty();
  }

  LegLoads loads() {
    Map<Ends, Flow> flows = new EnumMap<>(Ends.class);
    for (Ends ends : ENDS) {
      int at = ends.ordinal();
      if (loaded[at]) {
        flows.put(ends, new Flow(voltAmperes[at], new Complex(watts[at], reactive[at])));
      }
    }
    return flows.isEmpty() && unplaced == 0 ? LegLoads.NONE : new LegLoads(flows, unplaced);
  }
}
