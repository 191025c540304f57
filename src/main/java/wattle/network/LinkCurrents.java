package wattle.network;

/**
 * The currents of links beside the tree. A current through one link alone, with no source driving, gives volts
 * everywhere; with all links together, each link's volts must be its impedance times its current. That is a system of as
 * many equations as there are links, and exact.
 */
final class LinkCurrents {
  private final Network net;
  private final Elimination tree;
  private final double[] admittances;

  LinkCurrents(Network net, Elimination tree, double[] admittances) {
    this.net = net;
    this.tree = tree;
    this.admittances = admittances;
  }

  /** Adds the effect of all links to the solution in the tree; gives the current of each, from its one end to its other. */
  Complex[] join() {
    int m = net.links.size();
    double[] volts = tree.volts.clone();
    double[] amps = tree.amps.clone();
    double[][] voltsOf = new double[m][];
    double[][] ampsOf = new double[m][];
    for (int k = 0; k < m; k++) {
      tree.assemble(admittances, false);
      tree.inject(net.links.get(k).from(), -1, 0);
      tree.inject(net.links.get(k).to(), 1, 0);
      tree.solve();
      voltsOf[k] = tree.volts.clone();
      ampsOf[k] = tree.amps.clone();
    }
    double[] currents = currents(volts, voltsOf);
    for (int k = 0; k < m; k++) {
      addScaled(volts, voltsOf[k], currents[2 * k], currents[2 * k + 1]);
      addScaled(amps, ampsOf[k], currents[2 * k], currents[2 * k + 1]);
    }
    System.arraycopy(volts, 0, tree.volts, 0, volts.length);
    System.arraycopy(amps, 0, tree.amps, 0, amps.length);
    Complex[] found = new Complex[m];
    for (int k = 0; k < m; k++) {
      found[k] = new Complex(currents[2 * k], currents[2 * k + 1]);
    }
    return found;
  }

  private double[] currents(double[] volts, double[][] voltsOf) {
    int m = net.links.size();
    double[] system = new double[2 * m * m];
    double[] right = new double[2 * m];
    for (int i = 0; i < m; i++) {
      Network.Link link = net.links.get(i);
      for (int k = 0; k < m; k++) {
        system[2 * (i * m + k)] = -across(link, voltsOf[k], 0);
        system[2 * (i * m + k) + 1] = -across(link, voltsOf[k], 1);
      }
      system[2 * (i * m + i)] += link.impedance().re();
      system[2 * (i * m + i) + 1] += link.impedance().im();
      right[2 * i] = across(link, volts, 0);
      right[2 * i + 1] = across(link, volts, 1);
    }
    if (!Dense.solve(system, right, m, 1)) {
      throw new NetworkException("links that have no impedance round a loop");
    }
    return right;
  }

  private static double across(Network.Link link, double[] volts, int part) {
    return volts[2 * link.from() + part] - volts[2 * link.to() + part];
  }

  private static void addScaled(double[] to, double[] of, double re, double im) {
    for (int i = 0; i < to.length; i += 2) {
      to[i] += of[i] * re - of[i + 1] * im;
      to[i + 1] += of[i] * im + of[i + 1] * re;
    }
  }
}
