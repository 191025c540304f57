package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Published sums of generators and welders, each named. */
class PublishedGeneratorsTest {
  private static List<String> headlines(String ways, String branch, String device) {
    String text = """
        plan "Invented" use code us-2023
        dwelling { floor-area 100 m2 }
        service main 120/240 V 400 A { source available 10 kA   run 20 m of 2 sets of 4/0 Al triplex   earth rods by 2 Cu }
        panel P from main { bus 400 A   slots 40   bonded
          main breaker 400 A 22 kA
          %s
        }
        branch b by %s { P --20 ft-- out.x }
        room out is workshop { x: %s }
        """.formatted(ways, branch, device);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle")).findings().stream()
        .map(Finding::headline).toList();
  }

  /**
   * NFPA 70 445.13(A). forums.mikeholt.com 47484: 20 kW at 240 V, 83.3 A on the nameplate, 95.8 A for the conductors; 12989: 60 kVA at
   * 240 V, 250 A and 287.5 A, for which 350 kcmil is wanted; with an overcurrent device of its own 250 A, and 250 kcmil of 255 A.
   */
  @ParameterizedTest
  @CsvSource({"20 kW, 110, 4 Cu, 95.8 A", "20 kW, 110, 3 Cu, ''", "60 kVA, 300, 300 kcmil Cu, 288 A", "60 kVA, 300, 350 kcmil Cu, ''",
      "60 kVA own-breaker, 250, 250 kcmil Cu, ''", "60 kVA own-breaker, 250, 4/0 Cu, 250 A"})
  void conductorsOfAGenerator(String rating, String breaker, String size, String needs) {
    List<String> found = headlines("2+4 " + breaker + " A two-pole back-fed interlocked b",
        "2-1/2 in PVC with 3 x " + size + " THWN-2, 2 Cu ground", "standby generator " + rating).stream()
        .filter(h -> h.contains("too small for its generator")).toList();
    if (needs.isEmpty()) {
      assertThat(found).isEmpty();
    } else {
      assertThat(found).singleElement().asString().endsWith("needs " + needs);
    }
  }

  /** NFPA 70 630.11(A). ecmweb.com, Code Q&amp;A 45: a welder of 40 A at a duty cycle of 50 % needs 40 × 0.71 = 28.4 A; 10 AWG has them. */
  @ParameterizedTest
  @CsvSource({"10/2 MC, true", "12/2 MC, false"})
  void conductorsOfAWelder(String cable, boolean carries) {
    List<String> found = headlines("2+4 50 A two-pole b", cable, "welder 40 A duty-cycle 50 % 240 V").stream()
        .filter(h -> h.contains("too small for its load")).toList();
    assertThat(found.isEmpty()).isEqualTo(carries);
    assertThat(found).allMatch(h -> h.endsWith("needs 28.4 A"));
  }
}
