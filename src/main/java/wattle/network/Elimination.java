package wattle.network;

import java.util.Arrays;
import java.util.BitSet;

/**
 * One linear solution of a tree, from the far ends to the root and back.
 *
 * <p>Seen from its box, all that lies beyond takes {@code I = Y v + J}. The run to the box before puts an impedance z into
 * each conductor in turn, which makes of that {@code I = (Y − y z yᵀ / (1 + z y_k)) v' + …}, y being the column of the
 * conductor and y_k its own admittance: no division by z, so a run of no length changes nothing and needs no care. A
 * conductor that is open, or that begins in this box, takes no current, and its terminal is eliminated. What is left is
 * added to the box before. On the way back the volts of each box follow from those of the box before. Work and memory are
 * in proportion to the number of boxes; nothing recurs.
 *
 * <p>A part that floats has no definite voltage to earth; one terminal of it is held at zero and marked.
 */
final class Elimination {
  /** A pivot this small beside what it was before is rounding alone: nothing holds the terminal. */
  private static final double NOTHING = 1e-13;

  private final Network net;
  private final int[] block;
  private final double[] y;
  private final double[] j;
  private final double leak;
  private final double[] scale;
  /** Whether nothing was written down yet, so that all is zero as it was made. */
  private boolean fresh = true;
  final double[] volts;
  final double[] amps;
  final BitSet floating = new BitSet();

  /** @param leak siemens by which a part that floats is held to earth; 0 to hold it fast */
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
    scale = new double[largest];
  }

  /** Writes down the elements; sources only where asked, so that one injected current can be looked at alone. */
  void assemble(double[] admittances, boolean withSources) {
    if (!fresh) {
      Arrays.fill(y, 0);
      Arrays.fill(j, 0);
      floating.clear();
    }
    fresh = false;
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
    int n = net.first[box + 1] - start;
    int base = block[box];
    boolean open = isOpen(start, n);
    if (n == 3 && !open) {
      ThreeWires.through(y, j, net.ohms, net.reactance, start, base);
      int parent = net.parent[box];
      int parentStart = net.first[parent];
      ThreeWires.toParent(y, j, net.up, start, base, parentStart, net.first[parent + 1] - parentStart, block[parent]);
      return;
    }
    if (open) {
      for (int i = 0; i < n; i++) {
        int at = base + 2 * (i * n + i);
        scale[i] = Math.abs(y[at]) + Math.abs(y[at + 1]);
      }
      for (int k = 0; k < n; k++) {
        if (net.up[start + k] == Network.OPEN) {
          dropTerminal(box, k, n);
        }
      }
    }
    for (int k = 0; k < n; k++) {
      int t = start + k;
      if (net.up[t] != Network.OPEN && (net.ohms[t] != 0 || net.reactance[t] != 0)) {
        throughConductor(start, k, n, base, open);
      }
    }
    if (net.parent[box] >= 0) {
      addToParent(box, start, n, base);
    }
  }

  /** Whether a terminal of a box has no conductor to the box before. */
  private boolean isOpen(int start, int n) {
    for (int i = 0; i < n; i++) {
      if (net.up[start + i] == Network.OPEN) {
        return true;
      }
    }
    return false;
  }

  static NetworkException resonance() {
    return new NetworkException("the loads beyond a run and the run itself are in resonance");
  }

  private void addToParent(int box, int start, int n, int base) {
    int parent = net.parent[box];
    int parentStart = net.first[parent];
    int parentSize = net.first[parent + 1] - parentStart;
    int parentBase = block[parent];
    for (int a = 0; a < n; a++) {
      int row = net.up[start + a];
      if (row == Network.OPEN) {
        continue;
      }
      int parentRow = parentBase + 2 * ((row - parentStart) * parentSize - parentStart);
      int own = base + 2 * a * n;
      for (int b = 0; b < n; b++, own += 2) {
        int column = net.up[start + b];
        if (column != Network.OPEN) {
          y[parentRow + 2 * column] += y[own];
          y[parentRow + 2 * column + 1] += y[own + 1];
        }
      }
      j[2 * row] += j[2 * (start + a)];
      j[2 * row + 1] += j[2 * (start + a) + 1];
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

  /** Puts the impedance of one conductor before its terminal. */
  private void throughConductor(int start, int k, int n, int base, boolean open) {
    int t = start + k;
    double zr = net.ohms[t];
    double zi = net.reactance[t];
    int own = base + 2 * (k * n + k);
    double dr = 1 + zr * y[own] - zi * y[own + 1];
    double di = zr * y[own + 1] + zi * y[own];
    double square = dr * dr + di * di;
    if (!(square > 0)) {
      throw resonance();
    }
    double fr = dr / square;
    double fi = -di / square;
    double gr = zr * fr - zi * fi;
    double gi = zr * fi + zi * fr;
    double jr = j[2 * t];
    double ji = j[2 * t + 1];
    int row = base + 2 * k * n;
    for (int i = 0; i < n; i++) {
      if (i == k || open && net.up[start + i] == Network.OPEN) {
        continue;
      }
      int at = base + 2 * (i * n + k);
      double cr = y[at] * gr - y[at + 1] * gi;
      double ci = y[at] * gi + y[at + 1] * gr;
      if (cr == 0 && ci == 0) {
        continue;
      }
      int to = base + 2 * i * n;
      for (int c = 0, of = row; c < n; c++, of += 2, to += 2) {
        // What belongs to open terminals is never read again, and may as well be changed too.
        if (c != k) {
          y[to] -= cr * y[of] - ci * y[of + 1];
          y[to + 1] -= cr * y[of + 1] + ci * y[of];
        }
      }
      j[2 * (start + i)] -= cr * jr - ci * ji;
      j[2 * (start + i) + 1] -= cr * ji + ci * jr;
      double er = y[at];
      y[at] = er * fr - y[at + 1] * fi;
      y[at + 1] = er * fi + y[at + 1] * fr;
    }
    for (int c = 0, of = row; c < n; c++, of += 2) {
      double er = y[of];
      y[of] = er * fr - y[of + 1] * fi;
      y[of + 1] = er * fi + y[of + 1] * fr;
    }
    j[2 * t] = jr * fr - ji * fi;
    j[2 * t + 1] = jr * fi + ji * fr;
  }

  private void substitute(int box) {
    int start = net.first[box];
    int n = net.first[box + 1] - start;
    int base = block[box];
    boolean open = isOpen(start, n);
    if (n == 3 && !open) {
      ThreeWires.back(y, j, net.up, net.ohms, net.reactance, volts, amps, start, base);
      return;
    }
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
    for (int k = n - 1; open && k >= 0; k--) {
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
