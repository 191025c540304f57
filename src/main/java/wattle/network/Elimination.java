package wattle.network;

import java.util.Arrays;
import java.util.BitSet;

/**
 * One linear solution of a tree, from the far ends to the root and back.
 *
 * <p>Seen from its box, all that lies beyond takes {@code I = Y v + J}. The run to the box before, with impedances z, makes
 * of that {@code (1 + Y z) I = Y v' + J}: no division by z, so a run of no length changes nothing and needs no care. A
 * conductor that is open, or that begins in this box, takes no current, and its terminal is eliminated. What is left is
 * added to the box before. On the way back the volts of each box follow from those of the box before. Work and memory are
 * in proportion to the number of boxes; nothing recurs.
 *
 * <p>A part that hangs on nothing has no definite voltage to earth; one terminal of it is held at zero and marked.
 */
final class Elimination {
  /** A pivot this small beside what it was before is rounding alone: nothing holds the terminal. */
  private static final double NOTHING = 1e-13;

  private final Network net;
  private final int[] block;
  private final double[] y;
  private final double[] j;
  private final double leak;
  private final double[] system;
  private final double[] right;
  private final int[] kept;
  private final double[] scale;
  final double[] volts;
  final double[] amps;
  final BitSet floating = new BitSet();

  /** @param leak siemens by which a part that hangs on nothing is held to earth; 0 to hold it fast */
  Elimination(Network net, double leak) {
    this.net = net;
    this.leak = leak;
    block = new int[net.boxes() + 1];
    int largest = 0;
    for (int b = 0; b < net.boxes(); b++) {
      int n = net.terminalsOf(b);
      largest = Math.max(largest, n);
      block[b + 1] = Math.addExact(block[b], Math.multiplyExact(2 * n, n));
    }
    y = new double[block[net.boxes()]];
    j = new double[2 * net.terminals()];
    volts = new double[2 * net.terminals()];
    amps = new double[2 * net.terminals()];
    system = new double[2 * largest * largest];
    right = new double[2 * largest * (largest + 1)];
    kept = new int[largest];
    scale = new double[largest];
  }

  /** Writes down the elements; sources only where asked, so that one injected current can be looked at alone. */
  void assemble(double[] admittances, boolean withSources) {
    Arrays.fill(y, 0);
    Arrays.fill(j, 0);
    floating.clear();
    Elements e = net.elements;
    for (int i = 0; i < e.count(); i++) {
      stamp(e.box[i], e.from[i], e.to[i], admittances[2 * i], admittances[2 * i + 1]);
    }
    for (Network.VoltageSource source : net.sources) {
      new SourceStamp(source).into(this, withSources);
    }
  }

  private void stamp(int box, int from, int to, double re, double im) {
    add(box, from, from, re, im);
    if (to != Network.EARTH && to != from) {
      add(box, to, to, re, im);
      add(box, from, to, -re, -im);
      add(box, to, from, -re, -im);
    } else if (to == from) {
      add(box, from, from, -re, -im);
    }
  }

  void add(int box, int row, int column, double re, double im) {
    int n = net.terminalsOf(box);
    int at = block[box] + 2 * ((row - net.first[box]) * n + column - net.first[box]);
    y[at] += re;
    y[at + 1] += im;
  }

  /** A current into a terminal from outside. */
  void inject(int terminal, double re, double im) {
    j[2 * terminal] -= re;
    j[2 * terminal + 1] -= im;
  }

  void solve() {
    for (int box = net.boxes() - 1; box >= 0; box--) {
      eliminate(box);
    }
    for (int box = 0; box < net.boxes(); box++) {
      substitute(box);
    }
  }

  private void eliminate(int box) {
    int start = net.first[box];
    int n = net.terminalsOf(box);
    int base = block[box];
    int m = 0;
    for (int i = 0; i < n; i++) {
      int at = base + 2 * (i * n + i);
      scale[i] = Math.abs(y[at]) + Math.abs(y[at + 1]);
      if (net.up[start + i] != Network.OPEN) {
        kept[m++] = i;
      }
    }
    if (m < n) {
      for (int k = 0; k < n; k++) {
        if (net.up[start + k] == Network.OPEN) {
          dropTerminal(box, k, n);
        }
      }
    }
    throughRun(box, n, m);
    for (int a = 0; a < m; a++) {
      int to = net.up[start + kept[a]];
      for (int b = 0; b < m; b++) {
        int of = base + 2 * (kept[a] * n + kept[b]);
        if (y[of] != 0 || y[of + 1] != 0) {
          add(net.parent[box], to, net.up[start + kept[b]], y[of], y[of + 1]);
        }
      }
      j[2 * to] += j[2 * (start + kept[a])];
      j[2 * to + 1] += j[2 * (start + kept[a]) + 1];
    }
  }

  /** Eliminates an open terminal from those that come after it and those that a conductor feeds; its own row stays. */
  private void dropTerminal(int box, int k, int n) {
    int start = net.first[box];
    int base = block[box];
    int pivot = base + 2 * (k * n + k);
    if (Math.abs(y[pivot]) + Math.abs(y[pivot + 1]) <= NOTHING * scale[k]) {
      floating.set(start + k);
      y[pivot] = leak;
      y[pivot + 1] = 0;
      if (leak == 0) {
        return;
      }
    }
    double square = y[pivot] * y[pivot] + y[pivot + 1] * y[pivot + 1];
    double pr = y[pivot] / square;
    double pi = -y[pivot + 1] / square;
    double jr = j[2 * (start + k)];
    double ji = j[2 * (start + k) + 1];
    for (int i = 0; i < n; i++) {
      if (i == k || i < k && net.up[start + i] == Network.OPEN) {
        continue;
      }
      int at = base + 2 * (i * n + k);
      double fr = y[at] * pr - y[at + 1] * pi;
      double fi = y[at] * pi + y[at + 1] * pr;
      if (fr == 0 && fi == 0) {
        continue;
      }
      for (int c = 0; c < n; c++) {
        if (c == k || c < k && net.up[start + c] == Network.OPEN) {
          continue;
        }
        int of = base + 2 * (k * n + c);
        int to = base + 2 * (i * n + c);
        y[to] -= fr * y[of] - fi * y[of + 1];
        y[to + 1] -= fr * y[of + 1] + fi * y[of];
      }
      j[2 * (start + i)] -= fr * jr - fi * ji;
      j[2 * (start + i) + 1] -= fr * ji + fi * jr;
    }
  }

  /** (1 + Y z) I = Y v' + J, for the terminals that a conductor feeds. */
  private void throughRun(int box, int n, int m) {
    int start = net.first[box];
    int base = block[box];
    boolean longer = false;
    for (int a = 0; a < m; a++) {
      int t = start + kept[a];
      longer |= net.ohms[t] != 0 || net.reactance[t] != 0;
    }
    if (!longer) {
      return;
    }
    for (int a = 0; a < m; a++) {
      for (int b = 0; b < m; b++) {
        int of = base + 2 * (kept[a] * n + kept[b]);
        int t = start + kept[b];
        int at = 2 * (a * m + b);
        system[at] = y[of] * net.ohms[t] - y[of + 1] * net.reactance[t] + (a == b ? 1 : 0);
        system[at + 1] = y[of] * net.reactance[t] + y[of + 1] * net.ohms[t];
        right[2 * (a * (m + 1) + b)] = y[of];
        right[2 * (a * (m + 1) + b) + 1] = y[of + 1];
      }
      right[2 * (a * (m + 1) + m)] = j[2 * (start + kept[a])];
      right[2 * (a * (m + 1) + m) + 1] = j[2 * (start + kept[a]) + 1];
    }
    if (!Dense.solve(system, right, m, m + 1)) {
      throw new NetworkException("the loads beyond a run and the run itself are in resonance");
    }
    for (int a = 0; a < m; a++) {
      for (int b = 0; b < m; b++) {
        int to = base + 2 * (kept[a] * n + kept[b]);
        y[to] = right[2 * (a * (m + 1) + b)];
        y[to + 1] = right[2 * (a * (m + 1) + b) + 1];
      }
      j[2 * (start + kept[a])] = right[2 * (a * (m + 1) + m)];
      j[2 * (start + kept[a]) + 1] = right[2 * (a * (m + 1) + m) + 1];
    }
  }

  private void substitute(int box) {
    int start = net.first[box];
    int n = net.terminalsOf(box);
    int base = block[box];
    for (int i = 0; i < n; i++) {
      int t = start + i;
      int u = net.up[t];
      if (u == Network.OPEN) {
        continue;
      }
      double re = j[2 * t];
      double im = j[2 * t + 1];
      for (int c = 0; c < n; c++) {
        int other = net.up[start + c];
        if (other != Network.OPEN) {
          int of = base + 2 * (i * n + c);
          re += y[of] * volts[2 * other] - y[of + 1] * volts[2 * other + 1];
          im += y[of] * volts[2 * other + 1] + y[of + 1] * volts[2 * other];
        }
      }
      amps[2 * t] = re;
      amps[2 * t + 1] = im;
      volts[2 * t] = volts[2 * u] - (net.ohms[t] * re - net.reactance[t] * im);
      volts[2 * t + 1] = volts[2 * u + 1] - (net.ohms[t] * im + net.reactance[t] * re);
    }
    for (int k = n - 1; k >= 0; k--) {
      if (net.up[start + k] == Network.OPEN) {
        openVolts(start, k, n, base);
      }
    }
  }

  private void openVolts(int start, int k, int n, int base) {
    int t = start + k;
    double re = -j[2 * t];
    double im = -j[2 * t + 1];
    for (int c = 0; c < n; c++) {
      if (c != k && (c > k || net.up[start + c] != Network.OPEN)) {
        int of = base + 2 * (k * n + c);
        re -= y[of] * volts[2 * (start + c)] - y[of + 1] * volts[2 * (start + c) + 1];
        im -= y[of] * volts[2 * (start + c) + 1] + y[of + 1] * volts[2 * (start + c)];
      }
    }
    double pr = y[base + 2 * (k * n + k)];
    double pi = y[base + 2 * (k * n + k) + 1];
    double square = pr * pr + pi * pi;
    boolean held = square > 0;
    volts[2 * t] = held ? (re * pr + im * pi) / square : 0;
    volts[2 * t + 1] = held ? (im * pr - re * pi) / square : 0;
  }
}
