package wattle.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The search for the least difference between legs: branch and bound over the units of one panel, heaviest first, for
 * one move, then two, and so on, so that of equal differences the one with the fewest moves is found.
 *
 * <p>Moves need not be followed slot by slot. A one-pole unit that changes its leg takes a whole slot there and frees one
 * here, and any slot of a leg is as good as another; the wires of a breaker of several poles change places where they
 * are, which gives every arrangement of legs that moving the breaker could give. So an arrangement is possible exactly
 * where no leg has more one-pole units than slots for them.
 *
 * <p>A branch is cut where {@link Reach} shows, for some pair of legs, that no choice of the remaining moves brings their
 * difference as far below the best found as would be worth it, or where more units would have to leave an overfull leg
 * than moves are left.
 */
final class Search {
  private final List<Unit> units;
  private final double[] start;
  private final int[] free;
  private final double resolution;
  private final long mostSteps;
  private final boolean[] sameAsBefore;
  private final List<Reach> reaches = new ArrayList<>();
  private final double[] loads;
  private final int[] taken;
  private final int[] chosen;
  private int[] best;
  private double bestDifference;
  private long steps;

  /**
   * @param start volt-amperes of each leg
   * @param free slots that are free on each leg
   * @param resolution differences closer than this count as equal
   * @param mostSteps after so many steps the search stops where it is
   */
  Search(List<Unit> units, double[] start, int[] free, double resolution, long mostSteps) {
    this.units = units.stream().sorted(Comparator.comparingDouble(Unit::weight).reversed()).toList();
    this.start = start.clone();
    this.free = free.clone();
    this.resolution = resolution;
    this.mostSteps = mostSteps;
    sameAsBefore = new boolean[this.units.size()];
    for (int i = 1; i < sameAsBefore.length; i++) {
      sameAsBefore[i] = this.units.get(i).sameEffect(this.units.get(i - 1));
    }
    for (int a = 0; a < start.length; a++) {
      for (int b = a + 1; b < start.length; b++) {
        reaches.add(new Reach(this.units, a, b, this.free));
      }
    }
    loads = start.clone();
    taken = new int[start.length];
    chosen = new int[this.units.size()];
    Arrays.fill(chosen, -1);
  }

  /** A unit with the option chosen for it. */
  record Choice(Unit unit, Unit.Option option) {}

  /**
   * What was found.
   *
   * @param choices the moves
   * @param steps least difference for each number of moves
   */
  record Found(List<Choice> choices, List<Step> steps, Proof proof) {}

  Found run(int mostMoves) {
    int limit = Math.min(mostMoves, units.size());
    best = chosen.clone();
    bestDifference = difference();
    double least = bound(0, limit);
    List<Step> reached = new ArrayList<>(List.of(new Step(0, bestDifference, bestDifference)));
    boolean complete = true;
    for (int moves = 1; moves <= limit && complete && wanted() >= least; moves++) {
      double before = bestDifference;
      complete = descend(0, moves);
      if (bestDifference < before || !complete) {
        reached.add(new Step(moves, bestDifference, complete ? Math.max(least, bestDifference - resolution) : least));
      }
    }
    double known = complete ? Math.max(least, bestDifference - resolution) : least;
    List<Choice> choices = new ArrayList<>();
    for (int i = 0; i < best.length; i++) {
      if (best[i] >= 0) {
        choices.add(new Choice(units.get(i), units.get(i).options().get(best[i])));
      }
    }
    return new Found(choices, reached, new Proof(complete, limit, Math.max(0, known), steps, resolution));
  }

  private double difference() {
    double most = loads[0];
    double least = loads[0];
    for (double load : loads) {
      most = Math.max(most, load);
      least = Math.min(least, load);
    }
    return most - least;
  }

  /**
   * What an arrangement must reach to be worth more than the best found: a difference smaller by the resolution, or one
   * within it, which is as good as none. Below zero when nothing can be worth more.
   */
  private double wanted() {
    return bestDifference <= resolution ? -1 : Math.max(resolution, bestDifference - resolution);
  }

  private double bound(int unit, int moves) {
    double bound = 0;
    int pair = 0;
    for (int a = 0; a < loads.length; a++) {
      for (int b = a + 1; b < loads.length; b++) {
        bound = Math.max(bound, reaches.get(pair++).bound(loads[a] - loads[b], unit, moves, taken[a]));
      }
    }
    return bound;
  }

  private int overfull() {
    int over = 0;
    for (int leg = 0; leg < free.length; leg++) {
      over += Math.max(0, taken[leg] - free[leg]);
    }
    return over;
  }

  /** Whether everything below was examined or excluded. */
  private boolean descend(int unit, int movesLeft) {
    if (++steps > mostSteps) {
      return false;
    }
    int over = overfull();
    if (over == 0 && difference() <= wanted()) {
      bestDifference = difference();
      best = chosen.clone();
    }
    if (unit == units.size() || movesLeft == 0 || over > movesLeft
        || bound(unit, movesLeft) > wanted()) {
      return true;
    }
    boolean complete = true;
    // Of two units of equal effect the first moves first; the other way round is the same arrangement.
    boolean mayMove = !(sameAsBefore[unit] && chosen[unit - 1] < 0);
    for (int option = 0; mayMove && option < units.get(unit).options().size(); option++) {
      make(unit, option, 1);
      complete &= descend(unit + 1, movesLeft - 1);
      make(unit, option, -1);
    }
    return complete && descend(unit + 1, movesLeft);
  }

  private void make(int unit, int option, int sign) {
    Unit.Option made = units.get(unit).options().get(option);
    for (int leg = 0; leg < loads.length; leg++) {
      loads[leg] += sign * made.change()[leg];
      taken[leg] += sign * made.slots()[leg];
    }
    chosen[unit] = sign > 0 ? option : -1;
  }
}
