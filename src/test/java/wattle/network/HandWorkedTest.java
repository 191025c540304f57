package wattle.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import wattle.model.Load.Behavior;

/** Split-phase cases that an electrician works out by hand; common practice. */
class HandWorkedTest {
  private static final int A = 0;
  private static final int B = 1;
  private static final int N = 2;

  private static Sketch stiff() {
    Sketch sketch = Sketch.service(2);
    Complex small = new Complex(1e-6, 0);
    sketch.sourceImpedance = new Complex[][]{{small, Complex.ZERO}, {Complex.ZERO, small}};
    return sketch;
  }

  /**
   * 1200 W and 600 W, each for 120 V: 12 Ω and 24 Ω. With the neutral gone they are in series across 240 V and carry
   * 240 / 36 = 6.667 A: 80 V at the larger, 160 V at the smaller.
   */
  @Test
  void twoUnequalLoadsInSeriesWhenTheirNeutralOpens() {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0, 0);
    sketch.open(box, N);
    int large = sketch.load(box, A, N, 1200, 120, Behavior.IMPEDANCE);
    int small = sketch.load(box, B, N, 600, 120, Behavior.IMPEDANCE);
    Solution solution = sketch.build().solve();
    assertThat(solution.elementVolts(large).magnitude()).isCloseTo(80, within(1e-4));
    assertThat(solution.elementVolts(small).magnitude()).isCloseTo(160, within(1e-4));
    assertThat(solution.amps(box, A).magnitude()).isCloseTo(240.0 / 36, within(1e-5));
    assertThat(solution.amps(box, N).magnitude()).isZero();
  }

  /** The same with one leg of 10 A and one of 6 A that are held: the smaller current wins, and the larger load starves. */
  @Test
  void heldCurrentsInSeriesTakeTheSmallerOne() {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0, 0);
    sketch.open(box, N);
    int large = sketch.load(box, A, N, 1200, 120, Behavior.CURRENT);
    int small = sketch.load(box, B, N, 720, 120, Behavior.CURRENT);
    Solution solution = sketch.build().solve();
    assertThat(solution.unsettled()).isEmpty();
    assertThat(solution.elementAmps(large).magnitude()).isCloseTo(6, within(1e-6));
    assertThat(solution.isStarved(large)).isTrue();
    assertThat(solution.isStarved(small)).isFalse();
  }

  private static double neutralAmps(int legOfLower, double upper, double lower) {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0.05, 0);
    sketch.load(box, A, N, upper * 120, 120, Behavior.CURRENT);
    if (lower > 0) {
      sketch.load(box, legOfLower, N, lower * 120, 120, Behavior.CURRENT);
    }
    return sketch.build().solve().amps(box, N).magnitude();
  }

  @Test
  void aSharedNeutralCarriesTheDifferenceOnOppositeLegsAndTheSumOnOne() {
    assertThat(neutralAmps(B, 10, 10)).isCloseTo(0, within(1e-9));
    assertThat(neutralAmps(B, 10, 0)).isCloseTo(10, within(1e-6));
    assertThat(neutralAmps(A, 10, 10)).isCloseTo(20, within(1e-6));
  }

  /** Three equal loads on the legs of a wye return nothing; two return as much as each takes. */
  @Test
  void theNeutralOfAWye() {
    for (int loads = 1; loads <= 3; loads++) {
      Sketch sketch = Sketch.service(3);
      int box = sketch.run(0, 0.02, 0);
      for (int i = 0; i < loads; i++) {
        sketch.load(box, i, sketch.neutral(), 1200, 120, Behavior.CURRENT);
      }
      double amps = sketch.build().solve().amps(box, sketch.neutral()).magnitude();
      assertThat(amps).isCloseTo(loads == 3 ? 0 : 10, within(0.05));
    }
  }

  /** P = 1000 W at the end of 1 Ω on 120 V: V² − 120 V + 1000 = 0, the upper root. */
  @Test
  void constantPowerEndsOnTheUpperRoot() {
    Sketch sketch = Sketch.service(1);
    sketch.sourceImpedance = new Complex[][]{{new Complex(1, 0)}};
    int load = sketch.load(0, 0, 1, 1000, 120, Behavior.POWER);
    Solution solution = sketch.build().solve();
    assertThat(solution.elementVolts(load).magnitude()).isCloseTo(60 + Math.sqrt(3600 - 1000), within(1e-6));
    assertThat(solution.elementPower(load).re()).isCloseTo(1000, within(1e-6));
  }

  /** The most that 1 Ω lets through from 120 V is 120² / 4 = 3600 W (maximum power transfer, common practice). */
  @Test
  void constantPowerBeyondWhatTheRunLetsThroughIsSaid() {
    Sketch sketch = Sketch.service(1);
    sketch.sourceImpedance = new Complex[][]{{new Complex(1, 0)}};
    int load = sketch.load(0, 0, 1, 3700, 120, Behavior.POWER);
    Solution solution = sketch.build().solve();
    assertThat(solution.isStarved(load) || solution.unsettled().contains(load)).isTrue();
  }

  /** A hot behind an open breaker floats but its load: no volts across it, and no figure that is no number. */
  @Test
  void whatHangsOnNothingIsDead() {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0.1, 0);
    sketch.open(box, A);
    int beyond = sketch.run(box, 0.1, 0);
    int load = sketch.load(beyond, A, N, 1200, 120, Behavior.IMPEDANCE);
    Solution solution = sketch.build().solve();
    assertThat(solution.elementVolts(load).magnitude()).isLessThan(1e-9);
    assertThat(solution.elementAmps(load).magnitude()).isZero();
  }

  @Test
  void partsThatHangOnNothingAreMarked() {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0.1, 0);
    sketch.open(box, A);
    sketch.open(box, N);
    sketch.load(box, A, N, 1200, 120, Behavior.IMPEDANCE);
    Solution solution = sketch.build().solve();
    assertThat(solution.isFloating(box, N)).isTrue();
    assertThat(solution.volts(box, A).isFinite()).isTrue();
    assertThat(solution.volts(box, A, N).magnitude()).isZero();
  }

  /** 120 V behind 0.1 Ω of hot and 0.1 Ω of ground, bolted: 600 A. */
  @Test
  void aFaultIsAnElementLikeAnyOther() {
    Sketch sketch = stiff();
    int box = sketch.run(0, 0.1, 0);
    sketch.elements.add(new Sketch.Element(box, A, 3, new Complex(1e6, 0), 0, null));
    Solution solution = sketch.build().solve();
    assertThat(solution.amps(box, A).magnitude()).isCloseTo(120 / (0.2 + 1e-6 + 1 / 2000.0), within(0.01));
  }

  @Test
  void impedancesThatCannotBeAreRefused() {
    NetworkBuilder builder = new NetworkBuilder();
    builder.root();
    builder.terminal();
    builder.box(0);
    assertThatThrownBy(() -> builder.terminal(0, -1, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.terminal(0, Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.terminal(3, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.resistance(0, 0, Network.EARTH, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> builder.link(0, 0, 0, 0, Complex.ZERO)).isInstanceOf(IllegalArgumentException.class);
  }
}
