package wattle.network;

import java.util.BitSet;
import java.util.List;

/** What a network does. Volts are to the earth far away, amperes flow away from the root; all are phasors. */
public final class Solution {
  final Network net;
  final double[] volts;
  final double[] amps;
  final double[] admittances;
  final Complex[] linkAmps;
  final double leak;
  private final BitSet floating;
  private final List<Integer> unsettled;

  Solution(
      Network net, double[] volts, double[] amps, double[] admittances, Complex[] linkAmps, double leak,
      BitSet floating, List<Integer> unsettled) {
    this.net = net;
    this.volts = volts;
    this.amps = amps;
    this.admittances = admittances;
    this.linkAmps = linkAmps;
    this.leak = leak;
    this.floating = floating;
    this.unsettled = List.copyOf(unsettled);
  }

  public Complex volts(int box, int local) {
    int t = net.terminal(box, local);
    return new Complex(volts[2 * t], volts[2 * t + 1]);
  }

  /** Between two terminals of one box; {@link Network#EARTH} stands for the earth. */
  public Complex volts(int box, int a, int b) {
    return b == Network.EARTH ? volts(box, a) : volts(box, a).minus(volts(box, b));
  }

  /** Into a box through the conductor that ends at this terminal; zero where none does. */
  public Complex amps(int box, int local) {
    int t = net.terminal(box, local);
    return new Complex(amps[2 * t], amps[2 * t + 1]);
  }

  /** Through an element, from its first terminal to its second. */
  public Complex elementAmps(int element) {
    Complex y = new Complex(admittances[2 * element], admittances[2 * element + 1]);
    return elementVolts(element).times(y);
  }

  /** From an element's first terminal to its second. */
  public Complex elementVolts(int element) {
    int a = net.elements.from[element];
    int b = net.elements.to[element];
    Complex from = new Complex(volts[2 * a], volts[2 * a + 1]);
    return b == Network.EARTH ? from : from.minus(new Complex(volts[2 * b], volts[2 * b + 1]));
  }

  /** What an element takes, in volt-amperes; the real part in watts. */
  public Complex elementPower(int element) {
    return elementVolts(element).times(elementAmps(element).conjugate());
  }

  /** Lost in the conductor that ends at this terminal, with the joints counted to it, in watts. */
  public double wattsLost(int box, int local) {
    int t = net.terminal(box, local);
    return net.ohms[t] * (amps[2 * t] * amps[2 * t] + amps[2 * t + 1] * amps[2 * t + 1]);
  }

  /** Given by a leg of a source, counted in the order in which sources were written. */
  public Complex sourceAmps(int source, int leg) {
    return SourceStamp.current(net.sources.get(source), leg, volts);
  }

  /** Of the leg of a source that gives most. */
  public double mostSourceAmps(int source) {
    double most = 0;
    for (int leg = 0; leg < net.sources.get(source).legs().length; leg++) {
      most = Math.max(most, sourceAmps(source, leg).magnitude());
    }
    return most;
  }

  /** Given by a source at its terminals, in volt-amperes; the real part in watts, below zero where it takes. */
  public Complex sourcePower(int source) {
    Network.VoltageSource given = net.sources.get(source);
    Complex power = Complex.ZERO;
    for (int leg = 0; leg < given.legs().length; leg++) {
      int t = given.legs()[leg];
      int star = given.star();
      Complex across = new Complex(volts[2 * t] - volts[2 * star], volts[2 * t + 1] - volts[2 * star + 1]);
      power = power.plus(across.times(sourceAmps(source, leg).conjugate()));
    }
    return power;
  }

  /** Through a link, from its first end to its second. */
  public Complex linkAmps(int link) {
    return linkAmps[link];
  }

  /** Whether this terminal holds a part that floats; what is joined to it has no definite voltage to earth. */
  public boolean isFloating(int box, int local) {
    return isFloating(net.terminal(box, local));
  }

  boolean isFloating(int terminal) {
    return floating.get(terminal);
  }

  /** Loads that came to no agreement with the voltage that they get; empty where all did. */
  public List<Integer> unsettled() {
    return unsettled;
  }

  /** Whether a load gets so little that it was taken as a resistance, whatever it is: less than half, more than nothing. */
  public boolean isStarved(int element) {
    double share = elementVolts(element).magnitude() / net.elements.nominal[element];
    return !net.elements.isLinear(element) && share < Elements.HOLDS_DOWN_TO && share > 0.01;
  }
}
