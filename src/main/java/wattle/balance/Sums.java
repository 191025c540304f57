package wattle.balance;

/**
 * Sets of sums, counted in small steps: a bit for each sum, 64 to a word. What the steps may hide is taken off each answer,
 * so that an answer is never above the truth.
 */
final class Sums {
  private final int half;
  private final double step;

  /**
   * @param half the bit that stands for none; bits go to twice that
   * @param range no sum is farther from none than this, in volt-amperes
   * @param most most numbers that are ever added
   * @param whole a number that shall be a whole number of steps, so that sums of like numbers are exact
   */
  Sums(int half, double range, int most, double whole) {
    this.half = half;
    double least = Math.max(range, 1e-9) / (half - 2 * most - 2);
    step = whole < least ? least : whole / Math.floor(whole / least);
  }

  /** What is lost when a number is told in steps, in volt-amperes. */
  double error(double voltAmperes) {
    return Math.abs(voltAmperes - steps(voltAmperes) * step);
  }

  /** A number in steps. */
  int steps(double voltAmperes) {
    return (int) Math.rint(voltAmperes / step);
  }

  long[] nothing() {
    return new long[2 * half / 64];
  }

  /** The set of the sum of no numbers. */
  long[] zero() {
    long[] zero = nothing();
    zero[half / 64] = 1;
    return zero;
  }

  /** Adds to one set every sum of another with a number more; the range has room for all of them. */
  static void addShifted(long[] to, long[] sums, int by) {
    int words = Math.floorDiv(by, 64);
    int rest = Math.floorMod(by, 64);
    for (int w = 0; w < sums.length; w++) {
      long low = sums[w] << rest;
      long high = rest == 0 ? 0 : sums[w] >>> 64 - rest;
      if (low != 0) {
        to[w + words] |= low;
      }
      if (high != 0) {
        to[w + words + 1] |= high;
      }
    }
  }

  /**
   * Lower bound of the size of a difference with any of the sums added to it; infinite where there are none.
   *
   * @param errors most that the errors of the numbers in a sum come to
   */
  double nearest(long[] sums, double difference, double errors) {
    // One bit to each side of the place sought is enough: farther ones are farther away, errors or not.
    double sought = half - difference / step;
    double nearest = Double.POSITIVE_INFINITY;
    int above = sought >= 2 * half ? -1 : atOrAbove(sums, (int) Math.max(0, Math.ceil(sought)));
    int below = sought < 0 ? -1 : atOrBelow(sums, (int) Math.min(2 * half - 1, Math.floor(sought)));
    if (above >= 0) {
      nearest = Math.abs(difference + (above - half) * step);
    }
    if (below >= 0) {
      nearest = Math.min(nearest, Math.abs(difference + (below - half) * step));
    }
    return Math.max(0, nearest - errors - 1e-9);
  }

  private static int atOrAbove(long[] bits, int from) {
    int w = from / 64;
    if (w >= bits.length) {
      return -1;
    }
    long word = bits[w] & -1L << from % 64;
    while (word == 0 && ++w < bits.length) {
      word = bits[w];
    }
    return word == 0 ? -1 : w * 64 + Long.numberOfTrailingZeros(word);
  }

  private static int atOrBelow(long[] bits, int from) {
    int w = from / 64;
    long word = bits[w] & -1L >>> 63 - from % 64;
    while (word == 0 && --w >= 0) {
      word = bits[w];
    }
    return word == 0 ? -1 : w * 64 + 63 - Long.numberOfLeadingZeros(word);
  }
}
