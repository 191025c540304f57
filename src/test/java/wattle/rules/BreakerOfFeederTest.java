package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A feeder of 10/3 NM-B, good for 30 A, on a 60 A breaker: a smaller breaker is a remedy only where the load would not trip it. */
class BreakerOfFeederTest {
  private static Finding finding(String system, String heater) {
    String plan = """
        use code us-2023
        service main SYSTEM 100 A { source available 10 kA  run 5 m of 3 Cu triplex }
        panel P from main { bus 125 A   slots 12   bonded   main breaker 100 A 10 kA
          1+3  60 A  two-pole  G  "Workshop" }
        panel G from P/1 by 10 m of 10/3 NM-B { bus 100 A   slots 8
          1+3  50 A  two-pole  heat  "Heat" }
        branch heat by 6/2 NM-B { G --3 m-- shop.heater }
        room shop { heater: wall heater HEATER }
        """.replace("SYSTEM", system).replace("HEATER", heater);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle")).findings().stream()
        .filter(f -> f.rule().equals("feeder-breaker-above-conductor")).findFirst().orElseThrow();
  }

  /** 2 kW between two hots of 240 or 208 V is 8.3 or 9.6 A, 8 kW is 33 or 38 A. */
  @ParameterizedTest
  @CsvSource({"120/240 V", "120/208 V", "120/208 V three-phase"})
  void aSmallerBreakerOnlyWhereTheLoadAllows(String system) {
    Fix light = finding(system, "2 kW").fixes().get(0);
    assertThat(light.order()).startsWith("use a 30 A breaker, or 6 AWG copper or larger for the feeder");
    assertThat(light.edits()).isNotEmpty();
    Fix heavy = finding(system, "8 kW").fixes().get(0);
    assertThat(heavy.order()).startsWith("use 6 AWG copper or larger for the feeder; a 30 A breaker is too small for its load of ");
    assertThat(heavy.edits()).isEmpty();
  }
}
