package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What must hold of fault currents whatever the lengths and sizes. */
class FaultProperties {
  private static final List<String> SIZES = List.of("14/2", "12/2", "10/2", "8/2", "6/2");

  private static Fault end(double meters, String cable, String source) {
    String branch = "by " + cable + " NM-B { P --" + String.format(java.util.Locale.ROOT, "%.3f", meters) + " m-- r.one }";
    List<FaultPoint> points = Plans.faults(Plans.house(source, "15 A", branch)).branch("far");
    return points.get(1).fault(FaultKind.LINE_NEUTRAL).orElseThrow();
  }

  @Property(tries = 60)
  void aLongerRunLowersTheCurrent(
      @ForAll @DoubleRange(min = 0, max = 200) double meters, @ForAll @DoubleRange(min = 0.01, max = 100) double more,
      @ForAll @IntRange(max = 4) int size) {
    Fault near = end(meters, SIZES.get(size), "source transformer 25 kVA 2 % ratio 1.1");
    Fault far = end(meters + more, SIZES.get(size), "source transformer 25 kVA 2 % ratio 1.1");
    assertThat(far.mostAmperes()).isLessThan(near.mostAmperes());
    assertThat(far.leastAmperes()).isLessThan(near.leastAmperes());
    assertThat(far.leastAmperes()).isLessThanOrEqualTo(far.mostAmperes());
  }

  @Property(tries = 60)
  void aThickerWireRaisesTheCurrent(
      @ForAll @DoubleRange(min = 0.5, max = 200) double meters, @ForAll @IntRange(max = 3) int size) {
    Fault thin = end(meters, SIZES.get(size), "source available 10 kA");
    Fault thick = end(meters, SIZES.get(size + 1), "source available 10 kA");
    assertThat(thick.mostAmperes()).isGreaterThan(thin.mostAmperes());
    assertThat(thick.leastAmperes()).isGreaterThan(thin.leastAmperes());
  }

  @Property(tries = 40)
  void aRunOfNoLengthChangesNothing(@ForAll @DoubleRange(min = 0.5, max = 30) double kiloamperes) {
    String source = String.format(java.util.Locale.ROOT, "source available %.3f kA", kiloamperes);
    Fault fault = end(0, "14/2", source);
    double stated = Double.parseDouble(source.split(" ")[2]) * 1000;
    assertThat(fault.mostAmperes()).isCloseTo(stated, org.assertj.core.api.Assertions.withinPercentage(1e-9));
    assertThat(fault.leastAmperes()).isCloseTo(stated, org.assertj.core.api.Assertions.withinPercentage(1e-9));
  }
}
