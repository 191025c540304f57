package wattle.loads;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import wattle.model.Leg;

/** Loads while they are added up. A long plan has tens of thousands, so that none makes a {@link LegLoads} of its own. */
final class LegSums {
  private static final Leg[] LEGS = Leg.values();

  private final double[] sums = new double[LEGS.length];
  private final boolean[] loaded = new boolean[LEGS.length];
  private double unplaced;

  /** @param leg absent where nothing says on which it is */
  void add(Optional<Leg> leg, double voltAmperes) {
    if (leg.isEmpty()) {
      unplaced += voltAmperes;
    } else {
      sums[leg.get().ordinal()] += voltAmperes;
      loaded[leg.get().ordinal()] = true;
    }
  }

  LegLoads loads() {
    Map<Leg, Double> loads = new EnumMap<>(Leg.class);
    for (Leg leg : LEGS) {
      if (loaded[leg.ordinal()]) {
        loads.put(leg, sums[leg.ordinal()]);
      }
    }
    return loads.isEmpty() && unplaced == 0 ? LegLoads.NONE : new LegLoads(loads, unplaced);
  }
}
