package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** The loads of a branch are known beside a mistake on another branch, and are not where the mistake is on the branch itself. */
class LoadsBesideMistakeTest {
  /** 2,400 W at 120 V are 20 A: too much for a 15 A breaker and for 14 AWG (NFPA 70-2023 210.20(A), 424.4(B)). */
  private static final String PLAN = """
      plan "Two rooms" revision "A"
      use code us-2023
      service main 120/240 V 100 A {
        source available 10 kA
        run 3 m of 1/0 Al SER
        earth rods by 6 Cu 25 ohm
      }
      panel P "P" from main { bus 100 A slots 20 bonded main breaker 100 A 22 kA
        1 15 A arc-fault hall "Hall"
        2 15 A arc-fault den "Den"
      }
      branch hall by 14/2 NM-B { P --5 m-- hall.r }
      branch den by 14/2 NM-B { P --5 m-- den.heat --2 m-- den.r }
      room hall { r: receptacle tamper-resistant }
      room den { heat: baseboard heater 2400 W 120 V continuous   r: receptacle tamper-resistant }
      """;

  private static List<String> overloads(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle")).facts().stream()
        .map(Finding::rule)
        .filter(List.of("continuous-overload", "load-above-breaker", "space-heat-circuit-small")::contains).sorted().toList();
  }

  @Test
  void ofAnotherBranch() {
    List<String> all = List.of("continuous-overload", "load-above-breaker", "space-heat-circuit-small");
    assertThat(overloads(PLAN)).isEqualTo(all);
    assertThat(overloads(PLAN.replace("hall { r: receptacle", "hall { r: rhubarb"))).as("unknown part in the hall").isEqualTo(all);
    assertThat(overloads(PLAN.replace("hall by 14/2 NM-B", "hall by 14/2 NM-Q"))).as("unknown cable of the hall").isEqualTo(all);
    assertThat(overloads(PLAN.replace("P --5 m-- hall.r", "P --5 m-- attic.r"))).as("way to an unknown room").isEqualTo(all);
  }

  @Test
  void ofItsOwnBranchTheSumIsNotKnown() {
    assertThat(overloads(PLAN.replace("  r: receptacle tamper-resistant }\n", "  r: rhubarb }\n")))
        .as("something of the den was left out of the sum").doesNotContain("continuous-overload");
  }
}
