package wattle.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Lower bounds for the difference of two legs once the units from some place on have moved or not. Two easier questions
 * are answered exactly, up to small steps: what so many moves can add, whether or not there are slots for them; and what
 * any number of moves can add that leaves no more units on the first of the legs than it has slots for, nor more on all
 * others together. The greater of the two bounds holds.
 */
final class Reach {
  private static final int FINE = 1 << 14;
  private static final int COARSE = 1 << 12;
  /** From so many units on the table by slots would take much memory at fine steps. */
  private static final int MANY = 50;

  private final int units;
  private final Sums sums;
  private final int[][] changes;
  private final int[][] slots;
  /** By first unit, then by number of moves: most that the errors of so many changes come to. */
  private final double[][] errors;
  /** By most moves, then by first unit. */
  private final List<long[][]> byMoves = new ArrayList<>();
  /** By first unit, then by slots taken more on the first leg, {@code units} standing for none. */
  private final long[][][] bySlots;

  /**
   * @param leg place of the first leg
   * @param other place of the other
   * @param free slots that are free on each leg
   */
  Reach(List<Unit> list, int leg, int other, int[] free) {
    units = list.size();
    double range = 0;
    double most = 0;
    for (Unit unit : list) {
      double greatest = unit.options().stream().mapToDouble(o -> Math.abs(o.change()[leg] - o.change()[other])).max().orElse(0);
      range += greatest;
      most = Math.max(most, greatest);
    }
    sums = new Sums(units > MANY ? COARSE : FINE, range, units, most);
    changes = new int[units][];
    slots = new int[units][];
    for (int i = 0; i < units; i++) {
      changes[i] = list.get(i).options().stream().mapToInt(o -> sums.steps(o.change()[leg] - o.change()[other])).toArray();
      slots[i] = list.get(i).options().stream().mapToInt(o -> o.slots()[leg]).toArray();
    }
    errors = errors(list, leg, other);
    int others = -free[leg];
    for (int slot : free) {
      others += slot;
    }
    bySlots = bySlots(free[leg], others);
  }

  private double[][] errors(List<Unit> list, int leg, int other) {
    double[][] sum = new double[units + 1][];
    double[] sorted = new double[0];
    for (int i = units; i >= 0; i--) {
      if (i < units) {
        sorted = Arrays.copyOf(sorted, sorted.length + 1);
        sorted[sorted.length - 1] = list.get(i).options().stream().mapToDouble(o -> sums.error(o.change()[leg] - o.change()[other])).max()
            .orElse(0);
        Arrays.sort(sorted);
      }
      sum[i] = new double[sorted.length + 1];
      for (int moves = 1; moves <= sorted.length; moves++) {
        sum[i][moves] = sum[i][moves - 1] + sorted[sorted.length - moves];
      }
    }
    return sum;
  }

  private long[][][] bySlots(int free, int freeElsewhere) {
    long[][][] table = new long[units + 1][2 * units + 1][];
    for (int taken = -units; taken <= units; taken++) {
      table[units][taken + units] = taken <= free && -taken <= freeElsewhere ? sums.zero() : sums.nothing();
    }
    for (int i = units - 1; i >= 0; i--) {
      for (int taken = -i; taken <= i; taken++) {
        long[] reached = table[i + 1][taken + units].clone();
        for (int option = 0; option < changes[i].length; option++) {
          Sums.addShifted(reached, table[i + 1][taken + slots[i][option] + units], changes[i][option]);
        }
        table[i][taken + units] = reached;
      }
    }
    return table;
  }

  private long[][] byMoves(int moves) {
    while (byMoves.size() <= moves) {
      long[][] row = new long[units + 1][];
      row[units] = sums.zero();
      for (int i = units - 1; i >= 0; i--) {
        row[i] = row[i + 1].clone();
        for (int option = 0; option < changes[i].length && !byMoves.isEmpty(); option++) {
          Sums.addShifted(row[i], byMoves.get(byMoves.size() - 1)[i + 1], changes[i][option]);
        }
      }
      byMoves.add(row);
    }
    return byMoves.get(moves);
  }

  /**
   * Never above the size that the difference can come to.
   *
   * @param difference of the two legs now, in volt-amperes
   * @param first the first unit that may still move
   * @param moves most moves
   * @param taken slots taken more on the first leg so far
   */
  double bound(double difference, int first, int moves, int taken) {
    int most = Math.min(moves, units - first);
    return Math.max(
        sums.nearest(byMoves(most)[first], difference, errors[first][most]),
        sums.nearest(bySlots[first][taken + units], difference, errors[first][most]));
  }
}
