package wattle.network;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import wattle.model.Load.Behavior;

/** The solver against a general-purpose library, and against laws that hold for every network. */
class RandomNetworksTest {
  private static Complex[] volts(Sketch sketch, Solution solution) {
    int width = sketch.hots + 2;
    Complex[] volts = new Complex[sketch.boxes.size() * width];
    for (int t = 0; t < volts.length; t++) {
      volts[t] = solution.volts(t / width, t % width);
    }
    return volts;
  }

  private static void assertAgree(Complex[] one, Complex[] other) {
    double largest = 0;
    for (Complex v : other) {
      largest = Math.max(largest, v.magnitude());
    }
    // Overloaded networks sag far below their nominal volts; networks without any would agree whatever the solver did.
    assertThat(largest).isGreaterThan(1);
    for (int t = 0; t < one.length; t++) {
      assertThat(one[t].minus(other[t]).magnitude()).as("terminal %d", t).isLessThan(1e-9 * largest);
    }
  }

  /** Admittances by the meaning of the load, not by what the solver says: each from the volts that it found. */
  private static Complex[] admittances(Sketch sketch, Solution solution) {
    Complex[] admittances = new Complex[sketch.elements.size()];
    for (int e = 0; e < admittances.length; e++) {
      Sketch.Element element = sketch.elements.get(e);
      if (element.nominal() == 0) {
        admittances[e] = element.figure();
        continue;
      }
      double volts = solution.elementVolts(e).magnitude();
      double held = Math.max(volts, element.nominal() / 2);
      double square = element.behavior() == Behavior.IMPEDANCE
          ? element.nominal() * element.nominal()
          : element.behavior() == Behavior.CURRENT ? element.nominal() * held : held * held;
      admittances[e] = element.figure().conjugate().times(1 / square);
    }
    return admittances;
  }

  @Property(tries = 300)
  void treesAgreeWithTheFullNodalSolution(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false);
    Solution solution = sketch.build().solve();
    assertAgree(volts(sketch, solution), FullNodal.volts(sketch, admittances(sketch, solution)));
  }

  @Property(tries = 200)
  void loadsThatDoNotFollowTheVoltageAgreeToo(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, false, false);
    Solution solution = sketch.build().solve();
    if (solution.unsettled().isEmpty()) {
      assertAgree(volts(sketch, solution), FullNodal.volts(sketch, admittances(sketch, solution)));
    }
  }

  @Property(tries = 200)
  void whatIsNoTreeAgreesToo(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, true);
    Solution solution = sketch.build().solve();
    assertAgree(volts(sketch, solution), FullNodal.volts(sketch, admittances(sketch, solution)));
  }

  @Property(tries = 200)
  void severalSourcesAgreeToo(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, seed % 2 == 0).withSources(seed);
    Solution solution = sketch.build().solve();
    assertAgree(volts(sketch, solution), FullNodal.volts(sketch, admittances(sketch, solution)));
  }

  /** Sources that give their power at the volts they find, as admittances below zero by what they are to give there. */
  @Property(tries = 200)
  void sourcesThatFollowAgreeToo(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false);
    java.util.Random random = new java.util.Random(seed);
    int box = random.nextInt(sketch.boxes.size());
    double watts = 500 * random.nextDouble();
    // At most twice, at least half of what its power takes at nominal volts, so that either bound is met.
    sketch.followers
        .add(new Sketch.Follower(box, 0, sketch.neutral(), watts, 120, (0.5 + 1.5 * random.nextDouble()) * Math.max(watts, 1) / 120));
    Solution solution = sketch.build().solve();
    if (!solution.unsettled().isEmpty()) {
      return;
    }
    Sketch.Follower follower = sketch.followers.get(0);
    int element = sketch.elements.size();
    double held = Math.max(solution.elementVolts(element).magnitude(), 60);
    double amps = Math.min(watts / held, follower.most());
    Complex[] all = java.util.Arrays.copyOf(admittances(sketch, solution), element + 1);
    all[element] = new Complex(-amps / held, 0);
    assertAgree(volts(sketch, solution), FullNodal.volts(sketch, all));
    assertThat(solution.elementAmps(element).magnitude()).isLessThanOrEqualTo(follower.most() * (1 + 1e-9));
  }

  /** Each of several sources alone, the others shorted, and the volts added. */
  @Property(tries = 100)
  void severalSourcesSuperpose(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false).withSources(seed);
    Complex[] together = volts(sketch, sketch.build().solve());
    java.util.List<Sketch.Source> all = java.util.List.copyOf(sketch.sources);
    Complex[] service = sketch.emf;
    Complex[] nothing = new Complex[service.length];
    java.util.Arrays.fill(nothing, Complex.ZERO);
    Complex[] sum = new Complex[together.length];
    java.util.Arrays.fill(sum, Complex.ZERO);
    for (int one = -1; one < all.size(); one++) {
      sketch.emf = one < 0 ? service : nothing;
      for (int s = 0; s < all.size(); s++) {
        sketch.sources.set(s, s == one ? all.get(s) : new Sketch.Source(all.get(s).box(), nothing, all.get(s).each()));
      }
      Complex[] alone = volts(sketch, sketch.build().solve());
      for (int t = 0; t < sum.length; t++) {
        sum[t] = sum[t].plus(alone[t]);
      }
    }
    assertAgree(sum, together);
  }

  /** Each leg's electromotive force alone, and the volts added. */
  @Property(tries = 100)
  void sourcesSuperpose(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false);
    Complex[] all = sketch.emf;
    Complex[] together = volts(sketch, sketch.build().solve());
    Complex[] sum = new Complex[together.length];
    java.util.Arrays.fill(sum, Complex.ZERO);
    for (int i = 0; i < all.length; i++) {
      sketch.emf = new Complex[all.length];
      java.util.Arrays.fill(sketch.emf, Complex.ZERO);
      sketch.emf[i] = all[i];
      Complex[] alone = volts(sketch, sketch.build().solve());
      for (int t = 0; t < sum.length; t++) {
        sum[t] = sum[t].plus(alone[t]);
      }
    }
    assertAgree(sum, together);
  }

  /** Both legs of a split-phase supply exchanged, and with them all that hangs on them: every phasor changes its sign. */
  @Property(tries = 100)
  void exchangedLegsMirror(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false);
    if (sketch.hots != 2) {
      return;
    }
    Complex[] before = volts(sketch, sketch.build().solve());
    sketch.emf = new Complex[]{sketch.emf[1], sketch.emf[0]};
    Complex[] after = volts(sketch, sketch.build().solve());
    Complex[] mirrored = new Complex[after.length];
    for (int t = 0; t < after.length; t++) {
      mirrored[t] = after[t].times(-1);
    }
    assertAgree(mirrored, before);
  }

  @Property(tries = 100)
  void aRunOfNoLengthChangesNothing(@ForAll long seed) {
    Sketch sketch = Sketch.random(seed, true, false);
    Complex[] before = volts(sketch, sketch.build().solve());
    int box = sketch.run(sketch.boxes.size() - 1, 0, 0);
    int load = sketch.load(box, 0, sketch.neutral(), 600, 120, Behavior.IMPEDANCE);
    Complex[] beyond = volts(sketch, sketch.build().solve());
    Sketch.Element moved = sketch.elements.get(load);
    sketch.elements.set(
        load, new Sketch.Element(box - 1, moved.a(), moved.b(), moved.figure(), moved.nominal(), moved.behavior()));
    Complex[] inPlace = volts(sketch, sketch.build().solve());
    assertAgree(beyond, inPlace);
    assertThat(before).hasSize(beyond.length - sketch.hots - 2);
  }
}
