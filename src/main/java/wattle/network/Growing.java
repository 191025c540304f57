package wattle.network;

import java.util.Arrays;

/** Arrays that grow while a network is written down. */
final class Growing {
  private Growing() {}

  /** Numbers. */
  static final class Doubles {
    private double[] values = new double[64];
    private int size;

    void add(double value) {
      if (size == values.length) {
        values = Arrays.copyOf(values, Math.addExact(size, size / 2));
      }
      values[size++] = value;
    }

    double[] toArray() {
      return Arrays.copyOf(values, size);
    }
  }

  /** Indices. */
  static final class Ints {
    private int[] values = new int[64];
    private int size;

    void add(int value) {
      if (size == values.length) {
        values = Arrays.copyOf(values, Math.addExact(size, size / 2));
      }
      values[size++] = value;
    }

    int get(int index) {
      return values[index];
    }

    int size() {
      return size;
    }

    int[] toArray() {
      return Arrays.copyOf(values, size);
    }
  }
}
