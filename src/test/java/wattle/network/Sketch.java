package wattle.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import wattle.model.Load.Behavior;

/** A network as a test wrote it, so that it can be built in more than one way. Hots first, then neutral, then ground. */
final class Sketch {
  record Conductor(int up, double ohms, double reactance) {}

  record Box(int parent, List<Conductor> conductors) {}

  /** @param nominal 0 for an admittance, else volts of a load */
  record Element(int box, int a, int b, Complex figure, double nominal, Behavior behavior) {}

  record Link(int boxA, int a, int boxB, int b, Complex impedance) {}

  /** A further source between the neutral and the hots of a box; its legs act on each other through nothing. */
  record Source(int box, Complex[] emf, Complex each) {}

  /** @param most amperes */
  record Follower(int box, int a, int b, double watts, double nominal, double most) {}

  final int hots;
  final List<Box> boxes = new ArrayList<>();
  final List<Element> elements = new ArrayList<>();
  final List<Link> links = new ArrayList<>();
  final List<Source> sources = new ArrayList<>();
  final List<Follower> followers = new ArrayList<>();
  Complex[] emf;
  Complex[][] sourceImpedance;

  Sketch(int hots) {
    this.hots = hots;
  }

  int neutral() {
    return hots;
  }

  int ground() {
    return hots + 1;
  }

  /** A service of 120 V legs with a neutral that is earthed and bonded to the ground. */
  static Sketch service(int hots) {
    Sketch sketch = new Sketch(hots);
    sketch.emf = new Complex[hots];
    sketch.sourceImpedance = new Complex[hots][hots];
    for (int i = 0; i < hots; i++) {
      sketch.emf[i] = Complex.polar(120, hots == 3 ? -120.0 * i : 180.0 * i);
      for (int k = 0; k < hots; k++) {
        sketch.sourceImpedance[i][k] = i == k ? new Complex(0.01, 0.012) : new Complex(0.001, 0.003);
      }
    }
    List<Conductor> open = new ArrayList<>();
    for (int i = 0; i < hots + 2; i++) {
      open.add(new Conductor(Network.OPEN, 0, 0));
    }
    sketch.boxes.add(new Box(-1, open));
    sketch.elements.add(new Element(0, sketch.neutral(), Network.EARTH, new Complex(0.04, 0), 0, null));
    sketch.elements.add(new Element(0, sketch.neutral(), sketch.ground(), new Complex(2000, 0), 0, null));
    return sketch;
  }

  /** Adds a box at the end of a run of all conductors. */
  int run(int from, double ohms, double reactance) {
    List<Conductor> conductors = new ArrayList<>();
    for (int i = 0; i < hots + 2; i++) {
      conductors.add(new Conductor(i, ohms, reactance));
    }
    boxes.add(new Box(from, conductors));
    return boxes.size() - 1;
  }

  void open(int box, int conductor) {
    boxes.get(box).conductors.set(conductor, new Conductor(Network.OPEN, 0, 0));
  }

  int load(int box, int a, int b, double watts, double nominal, Behavior behavior) {
    return load(box, a, b, new Complex(watts, 0), nominal, behavior);
  }

  int load(int box, int a, int b, Complex voltAmperes, double nominal, Behavior behavior) {
    elements.add(new Element(box, a, b, voltAmperes, nominal, behavior));
    return elements.size() - 1;
  }

  /** Anything that a house may hold: open conductors, runs of no length, earth electrodes, loads of all kinds. */
  static Sketch random(long seed, boolean linear, boolean linked) {
    Random random = new Random(seed);
    Sketch sketch = service(1 + random.nextInt(3));
    int count = 1 + random.nextInt(40);
    for (int i = 0; i < count; i++) {
      int from = random.nextInt(4) == 0 ? random.nextInt(sketch.boxes.size()) : sketch.boxes.size() - 1;
      boolean none = random.nextInt(6) == 0;
      int box = sketch.run(from, none ? 0 : 0.3 * random.nextDouble(), none ? 0 : 0.05 * random.nextDouble());
      if (random.nextInt(8) == 0) {
        int conductor = random.nextInt(sketch.hots + 2);
        sketch.open(box, conductor);
        sketch.elements.add(new Element(box, conductor, Network.EARTH, new Complex(0.01, 0), 0, null));
      }
      if (random.nextInt(10) == 0) {
        sketch.elements.add(new Element(box, sketch.ground(), Network.EARTH, new Complex(0.04, 0), 0, null));
      }
      if (random.nextInt(12) == 0) {
        sketch.elements.add(new Element(box, 0, sketch.ground(), new Complex(20, 0), 0, null));
      }
      sketch.randomLoad(box, random, linear);
    }
    for (int i = 0; linked && i < 3; i++) {
      int conductor = sketch.hots + random.nextInt(2);
      int a = random.nextInt(sketch.boxes.size());
      int b = random.nextInt(sketch.boxes.size());
      if (a != b) {
        sketch.links.add(new Link(a, conductor, b, conductor, new Complex(0.01 + random.nextDouble(), 0.01)));
      }
    }
    return sketch;
  }

  /** The same with up to three further sources, each somewhere in the tree and somewhat out of step, as no house has them. */
  Sketch withSources(long seed) {
    Random random = new Random(seed);
    for (int i = 1 + random.nextInt(3); i > 0; i--) {
      Complex[] out = new Complex[hots];
      for (int leg = 0; leg < hots; leg++) {
        out[leg] = Complex.polar(110 + 20 * random.nextDouble(), (hots == 3 ? -120.0 * leg : 180.0 * leg) + 10 * random.nextDouble());
      }
      sources.add(new Source(random.nextInt(boxes.size()), out, new Complex(0.05 + random.nextDouble(), 0.2 * random.nextDouble())));
    }
    return this;
  }

  private void randomLoad(int box, Random random, boolean linear) {
    int a = random.nextInt(hots);
    int b = random.nextBoolean() && hots > 1 ? (a + 1) % hots : neutral();
    double nominal = b == neutral() ? 120 : hots == 3 ? 208 : 240;
    Behavior behavior = linear ? Behavior.IMPEDANCE : Behavior.values()[random.nextInt(3)];
    load(box, a, b, new Complex(100 * random.nextDouble(), 40 * random.nextDouble()), nominal, behavior);
  }

  Network build() {
    NetworkBuilder builder = new NetworkBuilder();
    for (int b = 0; b < boxes.size(); b++) {
      builder.box(boxes.get(b).parent);
      boxes.get(b).conductors.forEach(c -> builder.terminal(c.up, c.ohms, c.reactance));
      if (b == 0) {
        int[] legs = new int[hots];
        for (int i = 0; i < hots; i++) {
          legs[i] = i;
        }
        builder.source(0, neutral(), legs, emf, sourceImpedance);
      }
    }
    for (Element e : elements) {
      if (e.nominal == 0) {
        builder.admittance(e.box, e.a, e.b, e.figure);
      } else {
        builder.load(e.box, e.a, e.b, e.figure, e.nominal, e.behavior);
      }
    }
    for (Source s : sources) {
      int[] legs = new int[hots];
      Complex[][] impedance = new Complex[hots][hots];
      for (int i = 0; i < hots; i++) {
        legs[i] = i;
        for (int k = 0; k < hots; k++) {
          impedance[i][k] = i == k ? s.each : Complex.ZERO;
        }
      }
      builder.source(s.box, neutral(), legs, s.emf, impedance);
    }
    followers.forEach(f -> builder.follower(f.box, f.a, f.b, f.watts, f.nominal, f.most));
    links.forEach(l -> builder.link(l.boxA, l.a, l.boxB, l.b, l.impedance));
    return builder.build();
  }
}
