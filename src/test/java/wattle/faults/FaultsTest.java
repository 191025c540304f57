package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.model.Branch;
import wattle.read.SourceReader;
import wattle.reference.Reference;

class FaultsTest {
  private static Fault at(Faults faults, FaultKind kind) {
    List<FaultPoint> points = faults.branch("far");
    return points.get(points.size() - 1).fault(kind).orElseThrow();
  }

  /** Fault current at the secondary, infinite primary: kVA / (V z), sums in the reference, two of them in published threads. */
  @TestFactory
  List<DynamicTest> atTheTransformer() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("fault.csv")) {
      if (row.get("kind").equals("fault_example")) {
        String[] words = row.get("item").split(" ");
        String source = "source transformer " + words[0] + " kVA " + words[3] + " %";
        tests.add(
            DynamicTest.dynamicTest(
                row.get("item"),
                () -> {
                  Faults faults = Plans.faults(Plans.house(source, "15 A", "by 14/2 NM-B { P --1 m-- r.one }"));
                  Fault fault = faults.panel("P").fault(FaultKind.LINE_LINE).orElseThrow();
                  double expected = Double.parseDouble(row.get("value"));
                  assertThat(fault.mostAmperes()).isCloseTo(expected, within(0.5));
                  assertThat(fault.leastAmperes()).isCloseTo(expected, within(0.5));
                }));
      }
    }
    assertThat(tests).hasSize(5);
    return tests;
  }

  /** From a leg to the center tap 1.33 to 1.67 times as much: note of the point-to-point method, scribd.com 388329023. */
  @Test
  void fromLegToNeutralAtTheTransformer() {
    Faults faults = Plans.faults(Plans.house("source transformer 50 kVA 2 %", "15 A", "by 14/2 NM-B { P --1 m-- r.one }"));
    double lines = faults.panel("P").fault(FaultKind.LINE_LINE).orElseThrow().mostAmperes();
    Fault neutral = faults.panel("P").fault(FaultKind.LINE_NEUTRAL).orElseThrow();
    assertThat(neutral.leastAmperes() / lines).isCloseTo(1.333, within(0.01));
    assertThat(neutral.mostAmperes() / lines).isCloseTo(1.667, within(0.01));
  }

  /**
   * Point to point, a published sheet of figures (scribd.com 230809087): 46,296 A at the transformer, 150 ft of 3/0 copper
   * leave 8,978 A between legs, 40 ft of 6 AWG more leave 4,024 A, 30 ft of 12 AWG 1,530 A. Its constants are those of
   * conductors at 25 °C, and it adds the sizes of impedances where we add their parts: it stands between our bounds, and
   * nearer to that of cold conductors.
   */
  @Test
  void pointToPoint() {
    String plan = """
        plan "Test" use code us-2023
        service main 120/240 V 200 A {
          source available 46.296 kA
          run 150 ft of 3/4 in PVC with 3 x 3/0 Cu THWN
        }
        panel P from main { bus 200 A slots 20 bonded
          main breaker 200 A 22 kA
          1+3 60 A two-pole G }
        panel G from P/1 by 40 ft of 3/4 in PVC with 3 x 6 Cu THWN, 10 Cu ground { bus 100 A slots 12
          1+3 20 A two-pole far }
        branch far by 1/2 in PVC with 2 x 12 Cu THWN, 12 Cu ground { G --30 ft-- r.one }
        room r { one: electric furnace 2 kW }
        """;
    Faults faults = Plans.faults(plan);
    surrounds(faults.panel("P").fault(FaultKind.LINE_LINE).orElseThrow(), 8978);
    surrounds(faults.panel("G").fault(FaultKind.LINE_LINE).orElseThrow(), 4024);
    surrounds(at(faults, FaultKind.LINE_LINE), 1530);
  }

  private static void surrounds(Fault fault, double published) {
    assertThat(published).isBetween(fault.leastAmperes(), fault.mostAmperes());
    assertThat(fault.mostAmperes()).isCloseTo(published, withinPercentage(12));
  }

  /** By hand: 10 kA at 120 V is 12 mΩ; 20 m of 14 AWG copper out and back at 3.07 Ω/kft and 90 °C are 422 mΩ. */
  @Test
  void aBranchByHand() {
    Faults faults = Plans.faults(Plans.house("source available 10 kA", "15 A", "by 14/2 NM-B { P --20 m-- r.one }"));
    double resistance = 2 * 20 * 3.07 / 304.8 * (1 + 0.00323 * 15);
    assertThat(at(faults, FaultKind.LINE_NEUTRAL).hotLoop().resistance()).isCloseTo(0.012 + resistance, within(1e-5));
    assertThat(at(faults, FaultKind.LINE_NEUTRAL).leastAmperes()).isCloseTo(120 / (0.012 + resistance), withinPercentage(0.2));
    assertThat(at(faults, FaultKind.LINE_GROUND).leastAmperes())
        .isCloseTo(at(faults, FaultKind.LINE_NEUTRAL).leastAmperes(), within(1e-9));
    assertThat(faults.branch("far").get(1).fault(FaultKind.LINE_LINE)).isEmpty();
  }

  @Test
  void aFigureUnfoldsToTheSource() {
    Faults faults = Plans.faults(
        Plans.house("source transformer 50 kVA 1.8 % ratio 2", "15 A", "by 14/2 NM-B { P --20 m-- r.one }"));
    Fault fault = at(faults, FaultKind.LINE_NEUTRAL);
    var most = fault.most();
    assertThat(most.si()).isEqualTo(fault.mostAmperes());
    assertThat(most.worked()).startsWith("120 V / ").endsWith("mΩ");
    var impedance = most.inputs().get(1);
    assertThat(impedance.si()).isCloseTo(fault.coldLoop().magnitude(), within(1e-12));
    var resistance = impedance.inputs().get(0);
    assertThat(resistance.name()).isEqualTo("resistance up to the end of P to r.one");
    assertThat(resistance.inputs()).extracting("symbol").containsExactly("R_0", "ℓ", "r_o", "r_b");
    assertThat(resistance.inputs().get(0).formula()).isEqualTo("Z / √(1 + q²)");
    assertThat(fault.least().name()).isEqualTo("least fault current, line to neutral");
    assertThat(most.toBeVerified()).isTrue();
  }

  @Test
  void whatThePlanLeavesOpenHasNoFigure() {
    Faults later = Plans.faults(Plans.house("source available 10 kA", "15 A", "by 14/2 NM-B { P --later-- r.one }"));
    assertThat(later.branch("far").get(1).faults()).isEmpty();
    Faults unknown = Plans.faults(Plans.house("", "15 A", "by 14/2 NM-B { P --1 m-- r.one }"));
    assertThat(unknown.panel("P").faults()).isEmpty();
    Faults generator = Plans.faults(Plans.house("source generator 12 kVA", "15 A", "by 14/2 NM-B { P --1 m-- r.one }"));
    assertThat(generator.panel("P").faults()).isEmpty();
    assertThat(later.panel("nowhere").faults()).isEmpty();
  }

  @Test
  void everyBoxOfTheExampleHouseHasFigures() throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/alder-court/house.wattle"));
    Faults faults = Plans.faults(plan);
    int boxes = 0;
    for (Branch branch : plan.house().branches().values()) {
      for (FaultPoint point : faults.branch(branch.name())) {
        boxes++;
        assertThat(point.fault(FaultKind.LINE_GROUND)).as(branch.name() + " " + point.place()).isPresent();
        for (Fault fault : point.faults()) {
          assertThat(fault.leastAmperes()).isFinite().isPositive().isLessThanOrEqualTo(fault.mostAmperes());
        }
      }
    }
    assertThat(boxes).isGreaterThan(100);
    double atHouse = faults.panel("P").mostAmperes();
    assertThat(atHouse).isBetween(5000.0, 11600.0).isGreaterThan(faults.panel("G").mostAmperes());
  }
}
