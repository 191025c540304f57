package wattle.network;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Solves a network. Loads whose current does not follow the voltage are solved as admittances that are corrected until
 * they agree with the voltage found; after a while only half of each correction is made, which settles what would swing
 * to and fro. Links beside the tree are currents chosen so that the voltages at both ends agree: see {@link LinkCurrents}.
 * What comes out is checked by {@link Laws}.
 */
final class Solver {
  private static final double AGREES = 1e-12;
  private static final int ROUNDS = 400;
  private static final int ROUNDS_AT_FULL = 40;
  private static final double LEAK = 1e-9;

  private final Network net;
  private final Elimination tree;
  private final double[] nominal;
  private final double[] admittances;
  private final double leak;

  Solver(Network net) {
    this.net = net;
    leak = net.links.isEmpty() ? 0 : LEAK;
    tree = new Elimination(net, leak);
    nominal = net.elements.admittances();
    // Nothing is corrected in a linear network, and a copy of a million loads would be kept for nothing.
    admittances = isLinear() ? nominal : nominal.clone();
  }

  private boolean isLinear() {
    for (int e = 0; e < net.elementCount(); e++) {
      if (!net.elements.isLinear(e)) {
        return false;
      }
    }
    return true;
  }

  Solution solve() {
    boolean linear = nominal == admittances;
    List<Integer> unsettled = List.of();
    Complex[] linkAmps = {};
    for (int round = 1; round <= ROUNDS; round++) {
      if (!unsettled.isEmpty()) {
        correct(unsettled, round > ROUNDS_AT_FULL ? 0.5 : 1);
      }
      tree.assemble(admittances, true);
      tree.solve();
      if (!net.links.isEmpty()) {
        linkAmps = new LinkCurrents(net, tree, admittances).join();
      }
      unsettled = linear ? List.of() : unsettled();
      if (unsettled.isEmpty()) {
        break;
      }
    }
    Solution solution = new Solution(
        net, tree.volts, tree.amps, admittances, linkAmps, leak, (BitSet) tree.floating.clone(), unsettled);
    Laws.check(solution);
    return solution;
  }

  private List<Integer> unsettled() {
    List<Integer> moved = new ArrayList<>();
    for (int e = 0; e < net.elementCount(); e++) {
      if (net.elements.isLinear(e)) {
        continue;
      }
      double factor = net.elements.factor(e, volts(e));
      double re = nominal[2 * e] * factor;
      double im = nominal[2 * e + 1] * factor;
      if (Math.hypot(re - admittances[2 * e], im - admittances[2 * e + 1]) > AGREES * Math.hypot(re, im)) {
        moved.add(e);
      }
    }
    return moved;
  }

  private void correct(List<Integer> loads, double share) {
    for (int e : loads) {
      double factor = net.elements.factor(e, volts(e));
      admittances[2 * e] += share * (nominal[2 * e] * factor - admittances[2 * e]);
      admittances[2 * e + 1] += share * (nominal[2 * e + 1] * factor - admittances[2 * e + 1]);
    }
  }

  private double volts(int element) {
    int a = net.elements.from[element];
    int b = net.elements.to[element];
    double re = tree.volts[2 * a] - (b == Network.EARTH ? 0 : tree.volts[2 * b]);
    double im = tree.volts[2 * a + 1] - (b == Network.EARTH ? 0 : tree.volts[2 * b + 1]);
    return Math.hypot(re, im);
  }
}
