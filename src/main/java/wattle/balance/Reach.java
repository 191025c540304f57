package wattle.balance;

import java.util.ArrayList;
import java.util.List;

/**
 * Which sums the units from some place on can add to the difference of two legs with at most so many moves, whether or
 * not the slots for it are free. Sums are counted in small steps, and what rounding may hide is taken off each answer, so
 * that an answer is never above the truth.
 */
final class Reach {
  private static final int HALF_RANGE = 1 << 14;

  private final int units;
  private final double step;
  private final int[][] changes;
  /** By most moves, then by first unit; each bit of 64 to a word is a sum in steps, {@code HALF_RANGE} standing for none. */
  private final List<long[][]> sums = new ArrayList<>();

  /** @param changes for each unit, what each of its options adds to the difference, in volt-amperes */
  Reach(List<double[]> changes) {
    units = changes.size();
    double range = 1e-9;
    for (double[] options : changes) {
      double most = 0;
      for (double option : options) {
        most = Math.max(most, Math.abs(option));
      }
      range += most;
    }
    step = range / (HALF_RANGE - 2 * units - 2);
    this.changes = new int[units][];
    for (int i = 0; i < units; i++) {
      this.changes[i] = new int[changes.get(i).length];
      for (int o = 0; o < this.changes[i].length; o++) {
        this.changes[i][o] = (int) Math.rint(changes.get(i)[o] / step);
      }
    }
  }

  /** Lower bound of the size of a difference once the units from {@code first} on have made at most {@code moves} moves. */
  double bound(double difference, int first, int moves) {
    int most = Math.min(moves, units - first);
    long[] reachable = table(most)[first];
    int sought = HALF_RANGE - (int) Math.rint(difference / step);
    int above = atOrAbove(reachable, Math.max(0, sought));
    int below = atOrBelow(reachable, Math.min(2 * HALF_RANGE - 1, sought));
    double nearest = Double.POSITIVE_INFINITY;
    if (above >= 0) {
      nearest = Math.abs(difference + (above - HALF_RANGE) * step);
    }
    if (below >= 0) {
      nearest = Math.min(nearest, Math.abs(difference + (below - HALF_RANGE) * step));
    }
    return Math.max(0, nearest - (most / 2.0 + 1) * step);
  }

  private long[][] table(int moves) {
    while (sums.size() <= moves) {
      int most = sums.size();
      long[][] row = new long[units + 1][];
      row[units] = new long[2 * HALF_RANGE / 64];
      row[units][HALF_RANGE / 64] = 1;
      for (int i = units - 1; i >= 0; i--) {
        row[i] = row[i + 1].clone();
        if (most > 0) {
          for (int change : changes[i]) {
            addShifted(row[i], sums.get(most - 1)[i + 1], change);
          }
        }
      }
      sums.add(row);
    }
    return sums.get(moves);
  }

  /** The range has room for every sum, so no bit is ever shifted out of it. */
  private static void addShifted(long[] to, long[] bits, int by) {
    int words = Math.floorDiv(by, 64);
    int rest = Math.floorMod(by, 64);
    for (int w = 0; w < bits.length; w++) {
      long low = bits[w] << rest;
      long high = rest == 0 ? 0 : bits[w] >>> 64 - rest;
      if (low != 0) {
        to[w + words] |= low;
      }
      if (high != 0) {
        to[w + words + 1] |= high;
      }
    }
  }

  private static int atOrAbove(long[] bits, int from) {
    if (from >= 2 * HALF_RANGE) {
      return -1;
    }
    int w = from / 64;
    long word = bits[w] & -1L << from % 64;
    while (word == 0 && ++w < bits.length) {
      word = bits[w];
    }
    return word == 0 ? -1 : w * 64 + Long.numberOfTrailingZeros(word);
  }

  private static int atOrBelow(long[] bits, int from) {
    if (from < 0) {
      return -1;
    }
    int w = from / 64;
    long word = bits[w] & -1L >>> 63 - from % 64;
    while (word == 0 && --w >= 0) {
      word = bits[w];
    }
    return word == 0 ? -1 : w * 64 + 63 - Long.numberOfLeadingZeros(word);
  }
}
