package wattle.emit.view.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * A scale of equal steps.
 *
 * @param least value at its beginning
 * @param most value at its end
 * @param begin place of its beginning, in pixels
 * @param end place of its end
 */
record LinearScale(double least, double most, double begin, double end) {
  double at(double value) {
    return begin + (end - begin) * (value - least) / (most - least);
  }

  /** Steps of 1, 2 or 5 of a decade, so that there are at most so many. */
  double step(int count) {
    return LogScale.roundUp((most - least) / count);
  }

  /** The multiples of a step within the scale. */
  List<Double> ticks(double step) {
    List<Double> ticks = new ArrayList<>();
    for (long i = (long) Math.ceil(least / step - 1e-9); i * step <= most + 1e-9 * step; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }
}
