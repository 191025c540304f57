package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A breaker or fuse carries what hangs on its own hot, also where another hot of the branch comes from the same leg. */
class LoadOfEachHotTest {
  private static final String PLAN = """
      plan "Two fuses" revision "as found"
      use code us-2023
      service main SYSTEM 60 A existing { source available 10 kA  run 40 m of 6 Cu triplex in outdoors  earth rods by 6 Cu 25 ohm }
      panel F "Fuse box" from main existing {
        bus 60 A   slots 4   bonded   order one-column
        main fuse 60 A 10 kA
        3  20 A  fuse leg A  wet  "Washing machine"
        4  20 A  fuse leg A  wet  "Bathroom heater"
      }
      branch wet by 12/3 NM-B existing { F --5 m-- bath.heater --4 m-- wash.machine }
      room bath existing { heater: wall heater 1.5 kW 120 V on red }
      room wash is laundry existing { machine: washer 10 A on black }
      """;

  private static String on(String system) {
    return PLAN.replace("SYSTEM", system);
  }

  private static List<String> rules(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle")).facts().stream()
        .map(Finding::rule).toList();
  }

  /** 1,500 W / 120 V = 12.5 A behind one fuse and 10 A behind the other: each is below 20 A, their 22.5 A are on the neutral alone. */
  @ParameterizedTest
  @ValueSource(strings = {"120/240 V", "120/208 V", "120/208 V three-phase"})
  void twoHotsOfOneLegAreNotOneLoad(String system) {
    assertThat(rules(on(system))).contains("shared-neutral-same-leg").doesNotContain("branch-overloaded", "unexpected", "kind-unknown");
  }

  /** Whoever moves one hot to another leg also makes both open together, or has only the other fault (NFPA 70 210.4(B)). */
  @ParameterizedTest
  @ValueSource(strings = {"120/240 V", "120/208 V", "120/208 V three-phase"})
  void theMendIsWhole(String system) {
    List<String> orders = fixes(on(system));
    assertThat(orders).isNotEmpty().allMatch(o -> o.contains("both fuses in one pull-out") && o.contains("a neutral for each hot"));
    List<String> ofBreakers = fixes(on(system).replace("  20 A  fuse leg A", "  20 A  leg A"));
    assertThat(ofBreakers).isNotEmpty().allMatch(o -> o.contains("one handle for both") && o.contains("a neutral for each hot"));
  }

  private static List<String> fixes(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle")).facts().stream()
        .filter(f -> f.rule().equals("shared-neutral-same-leg")).flatMap(f -> f.fixes().stream()).map(Fix::order).toList();
  }

  /** Both on one hot are 22.5 A behind one fuse. */
  @ParameterizedTest
  @ValueSource(strings = {"120/240 V", "120/208 V", "120/208 V three-phase"})
  void bothOnOneHotAreTooMuch(String system) {
    assertThat(rules(on(system).replace("on red", "on black"))).contains("branch-overloaded");
  }
}
