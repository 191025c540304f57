package wattle.network;

import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.CommonOps_ZDRM;

/**
 * The outside check: all node equations and the equation of every run, written as one matrix and solved by a general
 * linear algebra library, which knows nothing of trees. Loads are taken with the admittances that they ended with.
 */
final class FullNodal {
  private final Sketch sketch;
  private final ZMatrixRMaj matrix;
  private final ZMatrixRMaj right;
  private final int width;

  private FullNodal(Sketch sketch) {
    this.sketch = sketch;
    width = sketch.hots + 2;
    int size = 2 * sketch.boxes.size() * width + sketch.links.size();
    matrix = new ZMatrixRMaj(size, size);
    right = new ZMatrixRMaj(size, 1);
  }

  /** Volts at every terminal, in order, for the given admittances of the elements. */
  static Complex[] volts(Sketch sketch, Complex[] admittances) {
    FullNodal full = new FullNodal(sketch);
    full.write(admittances);
    ZMatrixRMaj found = new ZMatrixRMaj(full.matrix.numRows, 1);
    if (!CommonOps_ZDRM.solve(full.matrix, full.right, found)) {
      throw new AssertionError("the library found no solution");
    }
    Complex[] volts = new Complex[sketch.boxes.size() * full.width];
    for (int t = 0; t < volts.length; t++) {
      volts[t] = new Complex(found.getReal(t, 0), found.getImag(t, 0));
    }
    return volts;
  }

  private void write(Complex[] admittances) {
    int nodes = sketch.boxes.size() * width;
    Complex one = new Complex(1, 0);
    Complex minus = new Complex(-1, 0);
    for (int box = 0; box < sketch.boxes.size(); box++) {
      for (int i = 0; i < width; i++) {
        Sketch.Conductor conductor = sketch.boxes.get(box).conductors().get(i);
        int t = box * width + i;
        int current = nodes + t;
        if (conductor.up() == Network.OPEN) {
          add(current, current, one);
          continue;
        }
        int u = sketch.boxes.get(box).parent() * width + conductor.up();
        add(t, current, minus);
        add(u, current, one);
        add(current, u, one);
        add(current, t, minus);
        add(current, current, new Complex(-conductor.ohms(), -conductor.reactance()));
      }
    }
    for (int e = 0; e < sketch.elements.size(); e++) {
      Sketch.Element element = sketch.elements.get(e);
      int a = element.box() * width + element.a();
      add(a, a, admittances[e]);
      if (element.b() != Network.EARTH) {
        int b = element.box() * width + element.b();
        add(b, b, admittances[e]);
        add(a, b, admittances[e].times(-1));
        add(b, a, admittances[e].times(-1));
      }
    }
    for (int k = 0; k < sketch.links.size(); k++) {
      Sketch.Link link = sketch.links.get(k);
      int a = link.boxA() * width + link.a();
      int b = link.boxB() * width + link.b();
      int current = 2 * nodes + k;
      add(a, current, one);
      add(b, current, minus);
      add(current, a, one);
      add(current, b, minus);
      add(current, current, link.impedance().times(-1));
    }
    source();
    for (Sketch.Source s : sketch.sources) {
      Complex y = s.each().inverse();
      for (int i = 0; i < sketch.hots; i++) {
        int leg = s.box() * width + i;
        int star = s.box() * width + sketch.neutral();
        add(leg, leg, y);
        add(star, star, y);
        add(leg, star, y.times(-1));
        add(star, leg, y.times(-1));
        Complex amps = y.times(s.emf()[i]);
        right.set(leg, 0, right.getReal(leg, 0) + amps.re(), right.getImag(leg, 0) + amps.im());
        right.set(star, 0, right.getReal(star, 0) - amps.re(), right.getImag(star, 0) - amps.im());
      }
    }
    for (int f = 0; f < sketch.followers.size(); f++) {
      Sketch.Follower follower = sketch.followers.get(f);
      Complex y = admittances[sketch.elements.size() + f];
      int a = follower.box() * width + follower.a();
      int b = follower.box() * width + follower.b();
      add(a, a, y);
      add(b, b, y);
      add(a, b, y.times(-1));
      add(b, a, y.times(-1));
    }
  }

  private void source() {
    ZMatrixRMaj impedance = new ZMatrixRMaj(sketch.hots, sketch.hots);
    for (int i = 0; i < sketch.hots; i++) {
      for (int k = 0; k < sketch.hots; k++) {
        impedance.set(i, k, sketch.sourceImpedance[i][k].re(), sketch.sourceImpedance[i][k].im());
      }
    }
    CommonOps_ZDRM.invert(impedance);
    int star = sketch.neutral();
    for (int i = 0; i < sketch.hots; i++) {
      for (int k = 0; k < sketch.hots; k++) {
        Complex y = new Complex(impedance.getReal(i, k), impedance.getImag(i, k));
        add(i, k, y);
        add(i, star, y.times(-1));
        add(star, k, y.times(-1));
        add(star, star, y);
        Complex amps = y.times(sketch.emf[k]);
        right.set(i, 0, right.getReal(i, 0) + amps.re(), right.getImag(i, 0) + amps.im());
        right.set(star, 0, right.getReal(star, 0) - amps.re(), right.getImag(star, 0) - amps.im());
      }
    }
  }

  private void add(int row, int column, Complex value) {
    matrix.set(row, column, matrix.getReal(row, column) + value.re(), matrix.getImag(row, column) + value.im());
  }
}
