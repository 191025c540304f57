package wattle.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.read.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;

/** Faults of a three-phase supply, against a worked example of a handbook and figures by hand. */
class ThreePhaseFaultsTest {
  private static Compilation plan(String source, String run, String main) {
    return new Compiler(SourceReader.FROM_DISK).compile(
        new Source(
            "plan.wattle", """
                plan "Faults"
                use code us-2023
                service main 120/208 V 800 A three-phase { source %s
                  run %s
                  earth water-pipe by 3/0 Cu }
                panel M from main { bus 800 A   slots 42   bonded
                  main breaker 800 A 65 kA
                  1+3+5  100 A %s three-pole  H
                }
                panel H from M/1 by 20 ft of 2 in EMT with 4 x 2 Cu THWN, 8 Cu ground { bus 125 A   slots 30
                  main breaker 100 A %s
                  1  20 A  spare
                }
                """
                .formatted(source, run, main, main)),
        Path.of("plan.wattle"));
  }

  private static Fault at(Compilation plan, String panel, FaultKind kind) {
    return plan.figures().faults().panel(panel).fault(kind).orElseThrow();
  }

  /**
   * Electrical plan review, "Point-to-point method of short-circuit calculation" (Cooper Bussmann): 300 kVA at 1.8 % on 120/208 V and an
   * unlimited primary drive 46,273 A; behind 20 ft of two sets of 500 kcmil copper in steel conduit the multiplier is 0.852. The method
   * adds magnitudes, so that it lies between the most and the least of an unstated X/R, but for its own rounded constants.
   */
  @Test
  void aHandbookExampleLiesBetweenTheBounds() {
    Compilation plan = plan("transformer 300 kVA 1.8 %", "20 ft of 2 sets of 4 in EMT with 4 x 500 kcmil Cu THWN", "65 kA");
    Fault main = at(plan, "M", FaultKind.THREE_PHASE);
    double handbook = 46273 * 0.852;
    assertThat(main.leastAmperes()).isBetween(0.95 * handbook, handbook);
    assertThat(main.mostAmperes()).isGreaterThan(handbook);
    // The same method, table 4: 5907 for three single conductors of 2 AWG copper in steel conduit at 600 V, scribd.com 184293836.
    double f = 1.732 * 20 * handbook / (5907 * 208);
    assertThat(at(plan, "H", FaultKind.THREE_PHASE).leastAmperes()).isLessThan(handbook / (1 + f) * 1.02);
    assertThat(at(plan, "H", FaultKind.THREE_PHASE).mostAmperes()).isGreaterThan(handbook / (1 + f) * 0.98);
  }

  /**
   * At the terminals: S / (√3 × U × z) = 75 kVA / (√3 × 208 V × 2 %) = 10,409 A; between two hots √3/2 of it, by symmetrical
   * components.
   */
  @Test
  void atTheTransformerItIsItsRatedCurrentOverItsImpedance() {
    Compilation plan = plan("transformer 75 kVA 2 % ratio 3", "0.001 ft of 4 in EMT with 4 x 500 kcmil Cu THWN", "65 kA");
    double rated = 75000 / (Math.sqrt(3) * 208 * 0.02);
    assertThat(at(plan, "M", FaultKind.THREE_PHASE).mostAmperes()).isCloseTo(rated, withinPercentage(0.1));
    assertThat(at(plan, "M", FaultKind.LINE_LINE).mostAmperes()).isCloseTo(rated * Math.sqrt(3) / 2, withinPercentage(0.1));
  }

  /** The ratio of a fault between three hots to one between two holds behind any run: 2 / √3. */
  @Test
  void behindRunsTheRatioStays() {
    Compilation plan = plan("transformer 75 kVA 2 % ratio 3", "20 ft of 4 in EMT with 4 x 500 kcmil Cu THWN", "65 kA");
    for (String panel : List.of("M", "H")) {
      assertThat(at(plan, panel, FaultKind.THREE_PHASE).mostAmperes() / at(plan, panel, FaultKind.LINE_LINE).mostAmperes())
          .as(panel).isCloseTo(2 / Math.sqrt(3), within(1e-9));
    }
  }

  /** Where a three-phase fault drives more than a three-pole breaker opens, and one between two hots does not, that is found. */
  @Test
  void interruptingRatingsAreHeldAgainstTheGreatest() {
    Compilation plan = plan("transformer 300 kVA 2 % ratio 4", "20 ft of 2 sets of 4 in EMT with 4 x 500 kcmil Cu THWN", "65 kA");
    double most = at(plan, "H", FaultKind.THREE_PHASE).mostAmperes();
    double lines = at(plan, "H", FaultKind.LINE_LINE).mostAmperes();
    String between = (int) ((most + lines) / 2) + " A";
    String kiloamperes = Math.round((most + lines) / 2 / 10) / 100.0 + " kA";
    assertThat(lines).as(between).isLessThan(most);
    Compilation small = plan("transformer 300 kVA 2 % ratio 4", "20 ft of 2 sets of 4 in EMT with 4 x 500 kcmil Cu THWN", kiloamperes);
    assertThat(small.findings()).anyMatch(f -> f.rule().equals("interrupting-rating-below-fault") && f.headline().contains("main of 'H'"));
  }

  /** Whatever the share of resistance and reactance, the least is never above the most. */
  @Test
  void theLeastIsNeverAboveTheMost() {
    for (String source : List.of("available 10 kA", "available 40 kA", "transformer 75 kVA 2 %", "transformer 500 kVA 5 %")) {
      for (String run : List.of("1 ft of 4 in EMT with 4 x 500 kcmil Cu THWN", "300 ft of 4 in EMT with 4 x 500 kcmil Cu THWN",
          "300 ft of 1 in PVC with 4 x 8 Cu THWN", "200 ft of 3 sets of 4 in EMT with 4 x 500 kcmil Cu THWN")) {
        Compilation plan = plan(source, run, "65 kA");
        for (String panel : List.of("M", "H")) {
          for (Fault fault : plan.figures().faults().panel(panel).faults()) {
            assertThat(fault.leastAmperes()).as(source + ", " + run + ", " + fault.kind().words()).isLessThanOrEqualTo(fault.mostAmperes());
          }
        }
      }
    }
  }
}
