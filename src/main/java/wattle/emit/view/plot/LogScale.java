package wattle.emit.view.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * A scale of logarithms.
 *
 * @param least value at its beginning
 * @param most value at its end
 * @param begin place of its beginning, in pixels
 * @param end place of its end; before the beginning for a scale that goes up
 */
record LogScale(double least, double most, double begin, double end) {
  /** Place of a value; what lies beyond an end is put on it. */
  double at(double value) {
    double held = Math.max(least, Math.min(most, value));
    return begin + (end - begin) * Math.log(held / least) / Math.log(most / least);
  }

  boolean holds(double value) {
    return value >= least && value <= most;
  }

  /** The 1, 2 and 5 of each decade within the scale. */
  List<Double> ticks() {
    return steps(new double[]{1, 2, 5});
  }

  /** The powers of ten within the scale. */
  List<Double> decades() {
    return steps(new double[]{1});
  }

  private List<Double> steps(double[] firsts) {
    List<Double> ticks = new ArrayList<>();
    for (int power = (int) Math.floor(Math.log10(least)); power <= Math.ceil(Math.log10(most)); power++) {
      for (double first : firsts) {
        double tick = first * Math.pow(10, power);
        if (holds(tick * (1 + 1e-9)) && holds(tick * (1 - 1e-9)) || close(tick, least) || close(tick, most)) {
          ticks.add(tick);
        }
      }
    }
    return ticks;
  }

  private static boolean close(double one, double other) {
    return Math.abs(one / other - 1) < 1e-9;
  }

  /** The greatest 1, 2 or 5 of a decade that is not above a value. */
  static double roundDown(double value) {
    double decade = Math.pow(10, Math.floor(Math.log10(value)));
    double first = value / decade;
    return decade * (first >= 5 ? 5 : first >= 2 ? 2 : 1);
  }

  /** The least 1, 2 or 5 of a decade that is not below a value. */
  static double roundUp(double value) {
    double down = roundDown(value);
    if (close(down, value)) {
      return down;
    }
    double decade = Math.pow(10, Math.floor(Math.log10(down * (1 + 1e-9))));
    double first = Math.round(down / decade);
    return decade * (first == 1 ? 2 : first == 2 ? 5 : 10);
  }
}
