package wattle.network;

import java.util.Arrays;

/**
 * Checks a solution: at every node the currents add to nothing, and what the sources give is what is used and lost. The
 * currents of runs come from the elimination and those of elements from the voltages, so that the check is no circle.
 */
final class Laws {
  private static final double RELATIVE = 1e-8;
  private static final double ROUNDING = 1e-13;

  /** Of the voltage that drives it all, which a small one is found from by subtraction. */
  private static final double ROUNDING_OF_DRIVEN = 1e-14;

  private final Network net;
  private final Solution solution;
  private final double[] sum;
  private final double[] size;
  /** Amperes at each terminal that rounding alone may leave, with what comes up from the boxes beyond. */
  private final double[] slack;
  private final double drivenVolts;
  private double takenWatts;
  private double takenVars;
  private double roundingWatts;
  /** Watts of elements that give instead of taking. */
  private double givenByElements;
  private double largest;

  private Laws(Solution solution) {
    this.net = solution.net;
    this.solution = solution;
    sum = new double[2 * net.terminals()];
    size = new double[net.terminals()];
    slack = new double[net.terminals()];
    drivenVolts = net.sources.stream().flatMap(v -> Arrays.stream(v.emf())).mapToDouble(Complex::magnitude).sum();
  }

  /** @throws NetworkException where a law is broken */
  static void check(Solution solution) {
    Laws laws = new Laws(solution);
    laws.currents();
    laws.power();
  }

  private void currents() {
    elements();
    conductors();
    for (int k = 0; k < net.links.size(); k++) {
      Complex amps = solution.linkAmps[k];
      flow(net.links.get(k).from(), -amps.re(), -amps.im(), 0);
      flow(net.links.get(k).to(), amps.re(), amps.im(), 0);
      double square = amps.magnitude() * amps.magnitude();
      takenWatts += net.links.get(k).impedance().re() * square;
      takenVars += net.links.get(k).impedance().im() * square;
    }
    leaks();
    sources();
    verify();
  }

  private void conductors() {
    double watts = 0;
    double vars = 0;
    for (int t = net.terminals() - 1; t >= 0; t--) {
      // All that flows here from beyond is in: children stand after their parents.
      largest = Math.max(largest, size[t] + slack[t]);
      int up = net.up[t];
      if (up != Network.OPEN) {
        slack[up] += slack[t];
        double re = solution.amps[2 * t];
        double im = solution.amps[2 * t + 1];
        flow(t, re, im, 0);
        flow(up, -re, -im, 0);
        watts += net.ohms[t] * (re * re + im * im);
        vars += net.reactance[t] * (re * re + im * im);
      }
    }
    takenWatts += watts;
    takenVars += vars;
  }

  private void elements() {
    Elements e = net.elements;
    double watts = 0;
    double vars = 0;
    for (int i = 0; i < e.count(); i++) {
      int a = e.from[i];
      int b = e.to[i];
      double vr = solution.volts[2 * a] - (b == Network.EARTH ? 0 : solution.volts[2 * b]);
      double vi = solution.volts[2 * a + 1] - (b == Network.EARTH ? 0 : solution.volts[2 * b + 1]);
      double yr = solution.admittances[2 * i];
      double yi = solution.admittances[2 * i + 1];
      double re = yr * vr - yi * vi;
      double im = yr * vi + yi * vr;
      // The voltage across a closed contact is the small difference of two large ones; what is wrong with its current
      // flows at their height.
      double large = Math.abs(solution.volts[2 * a]) + Math.abs(solution.volts[2 * a + 1]);
      double rounding = (Math.abs(yr) + Math.abs(yi)) * (large * ROUNDING + drivenVolts * ROUNDING_OF_DRIVEN);
      roundingWatts += rounding * large;
      flow(a, -re, -im, rounding);
      if (b != Network.EARTH) {
        flow(b, re, im, rounding);
      }
      watts += vr * re + vi * im;
      givenByElements += Math.max(0, -(vr * re + vi * im));
      vars += vi * re - vr * im;
    }
    takenWatts += watts;
    takenVars += vars;
  }

  /** What holds a part that floats to earth, where links are. */
  private void leaks() {
    for (int t = 0; solution.leak > 0 && t < net.terminals(); t++) {
      if (solution.isFloating(t)) {
        flow(t, -solution.leak * solution.volts[2 * t], -solution.leak * solution.volts[2 * t + 1], 0);
      }
    }
  }

  private void sources() {
    for (Network.VoltageSource source : net.sources) {
      for (int leg = 0; leg < source.legs().length; leg++) {
        Complex amps = SourceStamp.current(source, leg, solution.volts);
        double rounding = source.admittance()[leg][leg].magnitude() * source.emf()[leg].magnitude() * ROUNDING;
        flow(source.legs()[leg], amps.re(), amps.im(), rounding);
        flow(source.star(), -amps.re(), -amps.im(), rounding);
      }
    }
  }

  private void flow(int terminal, double re, double im, double rounding) {
    sum[2 * terminal] += re;
    sum[2 * terminal + 1] += im;
    size[terminal] += (Math.abs(re) + Math.abs(im)) * RELATIVE;
    slack[terminal] += rounding;
  }

  private void verify() {
    for (int t = 0; t < net.terminals(); t++) {
      double left = Math.abs(sum[2 * t]) + Math.abs(sum[2 * t + 1]);
      // Written so that a value that is no number fails as well.
      if (!(left <= size[t] + slack[t] + largest * 1e-4 + 1e-9)) {
        throw new NetworkException("the currents at a node leave " + left + " A over");
      }
    }
  }

  private void power() {
    Complex given = Complex.ZERO;
    double size = givenByElements;
    for (Network.VoltageSource source : net.sources) {
      for (int leg = 0; leg < source.legs().length; leg++) {
        Complex amps = SourceStamp.current(source, leg, solution.volts);
        int t = source.legs()[leg];
        int star = source.star();
        Complex volts = new Complex(solution.volts[2 * t] - solution.volts[2 * star],
            solution.volts[2 * t + 1] - solution.volts[2 * star + 1]);
        given = given.plus(volts.times(amps.conjugate()));
        double rounding = source.admittance()[leg][leg].magnitude() * source.emf()[leg].magnitude() * ROUNDING;
        size += volts.magnitude() * (amps.magnitude() + rounding / RELATIVE);
      }
    }
    Complex taken = new Complex(takenWatts, takenVars);
    if (!(given.minus(taken).magnitude() <= RELATIVE * size + roundingWatts + 1e-9)) {
      throw new NetworkException("the sources give " + given + " VA and " + taken + " VA are taken");
    }
  }
}
