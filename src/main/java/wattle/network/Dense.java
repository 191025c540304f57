package wattle.network;

/** Small dense systems of complex equations, by elimination with row exchange. */
final class Dense {
  private Dense() {}

  /**
   * Solves in place: {@code a} becomes rubbish, {@code b} the solution. Parts in turn, row by row.
   *
   * @param a size × size
   * @param b size × columns
   * @return whether there is one solution
   */
  static boolean solve(double[] a, double[] b, int size, int columns) {
    for (int k = 0; k < size; k++) {
      int best = k;
      double largest = -1;
      for (int i = k; i < size; i++) {
        int at = 2 * (i * size + k);
        double square = a[at] * a[at] + a[at + 1] * a[at + 1];
        if (square > largest) {
          largest = square;
          best = i;
        }
      }
      if (!(largest > 0)) {
        return false;
      }
      swap(a, size, k, best);
      swap(b, columns, k, best);
      eliminate(a, b, size, columns, k, largest);
    }
    substitute(a, b, size, columns);
    return true;
  }

  private static void swap(double[] m, int columns, int one, int other) {
    for (int i = 0; one != other && i < 2 * columns; i++) {
      double held = m[2 * one * columns + i];
      m[2 * one * columns + i] = m[2 * other * columns + i];
      m[2 * other * columns + i] = held;
    }
  }

  private static void eliminate(double[] a, double[] b, int size, int columns, int k, double square) {
    double pr = a[2 * (k * size + k)] / square;
    double pi = -a[2 * (k * size + k) + 1] / square;
    for (int i = k + 1; i < size; i++) {
      int at = 2 * (i * size + k);
      double fr = a[at] * pr - a[at + 1] * pi;
      double fi = a[at] * pi + a[at + 1] * pr;
      if (fr != 0 || fi != 0) {
        subtract(a, size, i, k, k, fr, fi);
        subtract(b, columns, i, k, 0, fr, fi);
      }
    }
  }

  private static void subtract(double[] m, int columns, int row, int pivot, int start, double fr, double fi) {
    for (int j = start; j < columns; j++) {
      int to = 2 * (row * columns + j);
      int of = 2 * (pivot * columns + j);
      double re = m[of];
      double im = m[of + 1];
      m[to] -= fr * re - fi * im;
      m[to + 1] -= fr * im + fi * re;
    }
  }

  private static void substitute(double[] a, double[] b, int size, int columns) {
    for (int k = size - 1; k >= 0; k--) {
      for (int j = k + 1; j < size; j++) {
        subtract(b, columns, k, j, 0, a[2 * (k * size + j)], a[2 * (k * size + j) + 1]);
      }
      double re = a[2 * (k * size + k)];
      double im = a[2 * (k * size + k) + 1];
      double square = re * re + im * im;
      for (int c = 0; c < columns; c++) {
        int at = 2 * (k * columns + c);
        double br = b[at];
        double bi = b[at + 1];
        b[at] = (br * re + bi * im) / square;
        b[at + 1] = (bi * re - br * im) / square;
      }
    }
  }

  /** @throws IllegalArgumentException where there is none */
  static Complex[][] inverse(Complex[][] matrix) {
    int size = matrix.length;
    double[] a = new double[2 * size * size];
    double[] b = new double[2 * size * size];
    for (int i = 0; i < size; i++) {
      b[2 * (i * size + i)] = 1;
      for (int j = 0; j < size; j++) {
        a[2 * (i * size + j)] = matrix[i][j].re();
        a[2 * (i * size + j) + 1] = matrix[i][j].im();
      }
    }
    if (!solve(a, b, size, size)) {
      throw new IllegalArgumentException("bad impedance of a source");
    }
    Complex[][] inverse = new Complex[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        inverse[i][j] = new Complex(b[2 * (i * size + j)], b[2 * (i * size + j) + 1]);
      }
    }
    return inverse;
  }
}
