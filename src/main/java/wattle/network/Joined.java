package wattle.network;

/**
 * Which terminals of a network metal joins: conductors, and elements within a box that are no more than a contact. The earth joins
 * nothing, since what flows through it opens no breaker.
 */
public final class Joined {
  /** Siemens from which an element is a bond, a contact or a bolted fault, and not a load or an electrode. */
  private static final double CONTACT = 10;

  private final Network network;
  private final int[] group;

  private Joined(Network network) {
    this.network = network;
    group = new int[network.terminals()];
    for (int i = 0; i < group.length; i++) {
      group[i] = i;
    }
  }

  public static Joined of(Network network) {
    Joined joined = new Joined(network);
    for (int terminal = 0; terminal < network.up.length; terminal++) {
      if (network.up[terminal] != Network.OPEN) {
        joined.join(terminal, network.up[terminal]);
      }
    }
    Elements elements = network.elements;
    for (int e = 0; e < elements.count(); e++) {
      boolean earth = elements.from[e] == Network.EARTH || elements.to[e] == Network.EARTH;
      if (!earth && !elements.isLoad(e) && Math.hypot(elements.figures[2 * e], elements.figures[2 * e + 1]) >= CONTACT) {
        joined.join(elements.from[e], elements.to[e]);
      }
    }
    network.links.forEach(link -> joined.join(link.from(), link.to()));
    return joined;
  }

  /** Whether metal leads from one terminal to another. */
  public boolean areJoined(int box, int local, int otherBox, int otherLocal) {
    return root(network.terminal(box, local)) == root(network.terminal(otherBox, otherLocal));
  }

  private void join(int one, int other) {
    group[root(one)] = root(other);
  }

  private int root(int terminal) {
    int at = terminal;
    while (group[at] != at) {
      group[at] = group[group[at]];
      at = group[at];
    }
    return at;
  }
}
