package wattle.bench;

import java.util.ArrayList;
import java.util.List;
import wattle.model.Load.Behavior;
import wattle.network.Complex;
import wattle.network.Network;
import wattle.network.NetworkBuilder;

/**
 * An invented street as a network: a main with a panel every 30 m, forty branches to a panel, ten boxes to a branch, a load
 * in each. Every box has a hot, a neutral and a ground; neutral and ground are joined and earthed at each panel.
 */
final class Street {
  private static final int BRANCHES = 40;
  private static final int BOXES = 10;
  private static final double SOURCE_OHMS = 1e-3;

  /** Parent of each box, in the order written. */
  final List<Integer> parents = new ArrayList<>();
  private final List<Double> ohms = new ArrayList<>();
  private final List<Boolean> panels = new ArrayList<>();

  Street(int boxes) {
    add(-1, 0, true);
    int main = 0;
    while (parents.size() < boxes) {
      int panel = add(main, 1e-5, true);
      main = panel;
      for (int b = 0; b < BRANCHES && parents.size() < boxes; b++) {
        int at = panel;
        for (int i = 0; i < BOXES && parents.size() < boxes; i++) {
          at = add(at, 0.016 + 0.001 * (i % 3), false);
        }
      }
    }
  }

  private int add(int parent, double resistance, boolean panel) {
    parents.add(parent);
    ohms.add(resistance);
    panels.add(panel);
    return parents.size() - 1;
  }

  Network network() {
    NetworkBuilder net = new NetworkBuilder();
    for (int box = 0; box < parents.size(); box++) {
      net.box(parents.get(box));
      for (int conductor = 0; conductor < 3; conductor++) {
        if (box == 0) {
          net.terminal();
        } else {
          net.terminal(conductor, ohms.get(box), ohms.get(box) / 10);
        }
      }
      if (panels.get(box)) {
        net.resistance(box, 1, 2, 1e-3);
        net.resistance(box, 2, Network.EARTH, 25);
      } else {
        net.load(box, 0, 1, load(box), 120, Behavior.IMPEDANCE);
      }
    }
    Complex[][] impedance = {{new Complex(SOURCE_OHMS, 0)}};
    net.source(0, 1, new int[]{0}, new Complex[]{new Complex(120, 0)}, impedance);
    return net.build();
  }

  /** Small, so that the far end of a long street still has a voltage. */
  private Complex load(int box) {
    double share = 400.0 / parents.size();
    return new Complex(20 * share * (1 + box % 7), 5 * share);
  }

  // ---- The same as node equations, for the library

  /** Calls for each entry of the node equations in real and imaginary parts; nodes are numbered from the far ends. */
  void equations(Entry entry) {
    for (int box = 0; box < parents.size(); box++) {
      for (int c = 0; c < 3 && box > 0; c++) {
        admittance(entry, node(box, c), node(parents.get(box), c), new Complex(ohms.get(box), ohms.get(box) / 10).inverse());
      }
      if (panels.get(box)) {
        admittance(entry, node(box, 1), node(box, 2), new Complex(1e3, 0));
        admittance(entry, node(box, 2), -1, new Complex(1 / 25.0, 0));
      } else {
        admittance(entry, node(box, 0), node(box, 1), load(box).conjugate().times(1 / (120.0 * 120.0)));
      }
    }
    admittance(entry, node(0, 0), node(0, 1), new Complex(1 / SOURCE_OHMS, 0));
  }

  int node(int box, int conductor) {
    return 3 * (parents.size() - 1 - box) + conductor;
  }

  /** The right side: current of the source at these nodes, the real part alone. */
  double sourceAmperes() {
    return 120 / SOURCE_OHMS;
  }

  private static void admittance(Entry entry, int a, int b, Complex y) {
    complex(entry, a, a, y);
    if (b >= 0) {
      complex(entry, b, b, y);
      complex(entry, a, b, y.times(-1));
      complex(entry, b, a, y.times(-1));
    }
  }

  private static void complex(Entry entry, int row, int column, Complex y) {
    entry.add(2 * row, 2 * column, y.re());
    entry.add(2 * row + 1, 2 * column + 1, y.re());
    if (y.im() != 0) {
      entry.add(2 * row, 2 * column + 1, -y.im());
      entry.add(2 * row + 1, 2 * column, y.im());
    }
  }

  /** One entry; those of one place add up. */
  interface Entry {
    void add(int row, int column, double value);
  }
}
