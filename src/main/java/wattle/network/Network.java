package wattle.network;

import java.util.List;
import java.util.OptionalInt;

/**
 * A network, written down: boxes in an order in which each comes after the one that feeds it. Every conductor that comes
 * to a box has a terminal there; terminals are numbered through the network. What lies within a box (loads, closed
 * switches, bonds, electrodes, faults) are elements between two of its terminals, or one and the earth.
 */
public final class Network {
  /** Stands for the earth far away, whose potential is zero by definition. */
  public static final int EARTH = -1;

  /** A conductor that comes from nowhere: open at its far end, or made in this box. */
  public static final int OPEN = -1;

  final int[] parent;
  final int[] first;
  final int[] up;
  final double[] ohms;
  final double[] reactance;
  final Elements elements;
  final List<VoltageSource> sources;
  final List<Link> links;

  /** Electromotive forces between a star point and legs of one box, behind a matrix of impedances. */
  record VoltageSource(int box, int star, int[] legs, Complex[] emf, Complex[][] admittance) {}

  /** An impedance between terminals of two boxes that the tree does not join. */
  record Link(int from, int to, Complex impedance) {}

  Network(
      int[] parent, int[] first, int[] up, double[] ohms, double[] reactance, Elements elements,
      List<VoltageSource> sources, List<Link> links) {
    this.parent = parent;
    this.first = first;
    this.up = up;
    this.ohms = ohms;
    this.reactance = reactance;
    this.elements = elements;
    this.sources = List.copyOf(sources);
    this.links = List.copyOf(links);
  }

  public int boxes() {
    return parent.length;
  }

  public int terminals() {
    return up.length;
  }

  /** The terminal that is number {@code local} of a box. */
  public int terminal(int box, int local) {
    return first[box] + local;
  }

  public int terminalsOf(int box) {
    return first[box + 1] - first[box];
  }

  /** The box that feeds another, or −1 for one that none does. */
  public int feeding(int box) {
    return parent[box];
  }

  /** The terminal of the feeding box that a conductor comes from, by its number there; absent where none does. */
  public OptionalInt upstream(int box, int local) {
    int above = up[terminal(box, local)];
    return above == OPEN ? OptionalInt.empty() : OptionalInt.of(above - first[parent[box]]);
  }

  public int elementCount() {
    return elements.from.length;
  }

  public int linkCount() {
    return links.size();
  }

  /** Solves it: see {@link Solver}. */
  public Solution solve() {
    return new Solver(this).solve();
  }
}
