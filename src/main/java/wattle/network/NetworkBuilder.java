package wattle.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import wattle.model.Load.Behavior;

/**
 * Writes a network down. Impedances must be finite, resistances not negative, and every box must name one that is there
 * already; whoever reads a plan has checked that, so a breach throws {@link IllegalArgumentException}.
 */
public final class NetworkBuilder {
  private final Growing.Ints parent = new Growing.Ints();
  private final Growing.Ints first = new Growing.Ints();
  private final Growing.Ints up = new Growing.Ints();
  private final Growing.Doubles ohms = new Growing.Doubles();
  private final Growing.Doubles reactance = new Growing.Doubles();
  private final Growing.Ints elementBox = new Growing.Ints();
  private final Growing.Ints from = new Growing.Ints();
  private final Growing.Ints to = new Growing.Ints();
  private final Growing.Doubles figures = new Growing.Doubles();
  private final Growing.Doubles nominal = new Growing.Doubles();
  private final Growing.Ints behavior = new Growing.Ints();
  private final java.util.Map<Integer, Double> most = new java.util.HashMap<>();
  private final List<Network.VoltageSource> sources = new ArrayList<>();
  private final List<Network.Link> links = new ArrayList<>();

  /** Begins a box that no run feeds. */
  public int root() {
    return box(-1);
  }

  /** Begins a box fed from another; terminals added next are its own. */
  public int box(int fedFrom) {
    if (fedFrom < -1 || fedFrom >= parent.size()) {
      throw new IllegalArgumentException("no box " + fedFrom);
    }
    parent.add(fedFrom);
    first.add(up.size());
    return parent.size() - 1;
  }

  /** Adds a terminal to the box begun last that no conductor joins to the box before: open, or made here. */
  public int terminal() {
    return terminal(Network.OPEN, 0, 0);
  }

  /**
   * Adds a terminal to the box begun last, at the end of a conductor.
   *
   * @param upstream its number in the box that feeds this one, or {@link Network#OPEN}
   * @param resistance of the conductor with the joints in it, in ohms; 0 for none
   * @param reactanceOhms positive for an inductance
   * @return its number in its box, from 0
   */
  public int terminal(int upstream, double resistance, double reactanceOhms) {
    int box = parent.size() - 1;
    require(resistance >= 0 && Double.isFinite(resistance) && Double.isFinite(reactanceOhms), "impedance");
    if (upstream == Network.OPEN) {
      up.add(Network.OPEN);
    } else {
      int feeding = parent.get(box);
      require(feeding >= 0 && upstream >= 0 && upstream < size(feeding), "terminal upstream");
      up.add(first.get(feeding) + upstream);
    }
    ohms.add(resistance);
    reactance.add(reactanceOhms);
    return up.size() - 1 - first.get(box);
  }

  private int size(int box) {
    return (box + 1 < first.size() ? first.get(box + 1) : up.size()) - first.get(box);
  }

  /** An admittance in siemens between two terminals of a box, or one and {@link Network#EARTH}. */
  public int admittance(int box, int a, int b, Complex siemens) {
    require(siemens.isFinite(), "admittance");
    return element(box, a, b, siemens, 0, 0);
  }

  /** A resistance above zero in ohms between two terminals of a box, or one and {@link Network#EARTH}. */
  public int resistance(int box, int a, int b, double resistance) {
    require(resistance > 0 && Double.isFinite(1 / resistance), "resistance");
    return admittance(box, a, b, new Complex(1 / resistance, 0));
  }

  /**
   * A load between two terminals of a box.
   *
   * @param voltAmperes what it takes at nominal voltage, imaginary part positive for an inductive load
   * @param nominalVolts above zero
   */
  public int load(int box, int a, int b, Complex voltAmperes, double nominalVolts, Behavior behaves) {
    require(nominalVolts > 0 && Double.isFinite(nominalVolts) && voltAmperes.isFinite(), "load");
    return element(box, a, b, voltAmperes, nominalVolts, behaves.ordinal());
  }

  /**
   * A source between two terminals of a box that gives its power at the voltage that it finds there, in step with it.
   *
   * @param watts that it gives where its current allows it
   * @param mostAmps that it gives at most; below half the nominal voltage less, in proportion to the voltage
   */
  public int follower(int box, int a, int b, double watts, double nominalVolts, double mostAmps) {
    require(watts >= 0 && Double.isFinite(watts) && mostAmps > 0 && Double.isFinite(mostAmps), "follower");
    int element = load(box, a, b, new Complex(-watts, 0), nominalVolts, Behavior.POWER);
    most.put(element, mostAmps);
    return element;
  }

  private int element(int box, int a, int b, Complex figure, double volts, int behaves) {
    elementBox.add(box);
    from.add(in(box, a));
    to.add(b == Network.EARTH ? Network.EARTH : in(box, b));
    figures.add(figure.re());
    figures.add(figure.im());
    nominal.add(volts);
    behavior.add(behaves);
    return from.size() - 1;
  }

  private int in(int box, int local) {
    require(box >= 0 && box < parent.size() && local >= 0 && local < size(box), "terminal");
    return first.get(box) + local;
  }

  /**
   * A source between a star point and legs of one box.
   *
   * @param emf electromotive force from the star point to each leg
   * @param impedance between the legs, as a symmetric matrix that has an inverse
   * @return its number, from 0
   */
  public int source(int box, int star, int[] legs, Complex[] emf, Complex[][] impedance) {
    require(legs.length == emf.length && legs.length == impedance.length && isSymmetric(impedance), "source");
    int[] terminals = Arrays.stream(legs).map(l -> in(box, l)).toArray();
    sources.add(new Network.VoltageSource(box, in(box, star), terminals, emf.clone(), Dense.inverse(impedance)));
    return sources.size() - 1;
  }

  /** An impedance, not zero, between terminals of two boxes beside the tree. */
  public int link(int boxA, int a, int boxB, int b, Complex impedance) {
    require(impedance.isFinite() && impedance.magnitude() > 0, "link");
    links.add(new Network.Link(in(boxA, a), in(boxB, b), impedance));
    return links.size() - 1;
  }

  /** As every impedance without rotating parts in it is. */
  private static boolean isSymmetric(Complex[][] impedance) {
    for (int i = 0; i < impedance.length; i++) {
      for (int k = 0; k < i; k++) {
        if (impedance[i].length != impedance.length || !impedance[i][k].equals(impedance[k][i])) {
          return false;
        }
      }
    }
    return true;
  }

  private static void require(boolean holds, String what) {
    if (!holds) {
      throw new IllegalArgumentException("bad " + what);
    }
  }

  public Network build() {
    Growing.Ints ends = new Growing.Ints();
    for (int i = 0; i < first.size(); i++) {
      ends.add(first.get(i));
    }
    ends.add(up.size());
    byte[] behaviors = new byte[behavior.size()];
    for (int i = 0; i < behaviors.length; i++) {
      behaviors[i] = (byte) behavior.get(i);
    }
    Elements elements = new Elements(elementBox.toArray(), from.toArray(), to.toArray(), figures.toArray(), nominal.toArray(), behaviors,
        most);
    return new Network(
        parent.toArray(), ends.toArray(), up.toArray(), ohms.toArray(), reactance.toArray(), elements, sources, links);
  }
}
