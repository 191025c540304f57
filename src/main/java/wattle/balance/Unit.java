package wattle.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import wattle.model.Breaker;
import wattle.model.Leg;
import wattle.model.Panel;

/**
 * What moves as one: a one-pole breaker, two half-size ones in one slot, or the wires on a breaker of several poles.
 *
 * @param breakers one, or a half-size pair
 * @param options other ways it could stand
 */
record Unit(List<Breaker> breakers, List<Option> options) {
  /**
   * One other way to stand.
   *
   * @param legs leg of each pole, as places in the panel's list
   * @param change what is added to each leg, in volt-amperes
   * @param slots slots more (or, below zero, fewer) that are taken on each leg
   */
  record Option(int[] legs, double[] change, int[] slots) {
    boolean sameEffect(Option other) {
      return Arrays.equals(change, other.change) && Arrays.equals(slots, other.slots);
    }
  }

  /** A breaker or half-size pair in one slot, to each other leg. */
  static Unit ofSlot(List<Breaker> breakers, double voltAmperes, Panel panel) {
    int at = place(panel, breakers.get(0).poles().get(0).leg());
    List<Option> options = new ArrayList<>();
    for (int leg = 0; leg < panel.legs().size(); leg++) {
      if (leg != at) {
        double[] change = new double[panel.legs().size()];
        int[] slots = new int[panel.legs().size()];
        change[at] = -voltAmperes;
        change[leg] = voltAmperes;
        slots[at] = -1;
        slots[leg] = 1;
        options.add(new Option(new int[]{leg}, change, slots));
      }
    }
    return new Unit(breakers, options);
  }

  /**
   * The wires of a breaker, passed on from pole to pole. Three wires are only rotated: exchanging two of them would turn
   * three-phase motors the other way.
   *
   * @param voltAmperes of each pole
   */
  static Unit ofWires(Breaker breaker, double[] voltAmperes, Panel panel) {
    int poles = breaker.poles().size();
    List<Option> options = new ArrayList<>();
    for (int turn = 1; turn < poles; turn++) {
      double[] change = new double[panel.legs().size()];
      int[] legs = new int[poles];
      for (int pole = 0; pole < poles; pole++) {
        legs[pole] = place(panel, breaker.poles().get((pole + turn) % poles).leg());
        change[place(panel, breaker.poles().get(pole).leg())] -= voltAmperes[pole];
        change[legs[pole]] += voltAmperes[pole];
      }
      if (Arrays.stream(change).anyMatch(c -> Math.abs(c) > 1e-9)) {
        options.add(new Option(legs, change, new int[panel.legs().size()]));
      }
    }
    return new Unit(List.of(breaker), options);
  }

  private static int place(Panel panel, Optional<Leg> leg) {
    return panel.legs().indexOf(leg.orElseThrow());
  }

  boolean sameEffect(Unit other) {
    if (options.size() != other.options.size()) {
      return false;
    }
    for (int i = 0; i < options.size(); i++) {
      if (!options.get(i).sameEffect(other.options.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** The greatest change of any leg. */
  double weight() {
    return options.stream().flatMapToDouble(o -> Arrays.stream(o.change())).map(Math::abs).max().orElse(0);
  }
}
