package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.read.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;

/** A lost neutral of a feeder: what is left are two loads in series between two hots. */
class FeederNeutralTest {
  private static Compilation plan(String system, String event) {
    return new Compiler(SourceReader.FROM_DISK).compile(
        new Source(
            "plan.wattle", """
                plan "Lost neutral"
                use code us-2023
                service main %s { source available 20 kA   run 5 m of 2 in PVC with %d x 3/0 Cu THWN   earth water-pipe by 4 Cu }
                panel M from main { bus 225 A   slots 30   bonded
                  main breaker 200 A 22 kA
                  1+3  100 A two-pole  D
                }
                panel D "Flat" from M/1 by 5 m of 1-1-1-3 Al SER { bus 125 A   slots 20
                  1  20 A  one
                  3  20 A  two
                }
                branch one by 12/2 NM-B { D --5 m-- kitchen.one }
                branch two by 12/2 NM-B { D --5 m-- kitchen.two }
                room kitchen { one: receptacle   two: receptacle }
                trial lost { kitchen.one draws 1200 W   kitchen.two draws 600 W   %s }
                """
                .formatted(system, system.endsWith("three-phase") ? 4 : 3, event)),
        Path.of("plan.wattle"));
  }

  /**
   * By hand: 12 Ω and 24 Ω in series between the hots; the smaller load gets two thirds of the voltage between them: 160 V of 240 V,
   * 138.7 V of 208 V.
   */
  @ParameterizedTest
  @CsvSource({"120/240 V 200 A, 160.0", "120/208 V 200 A, 138.7", "120/208 V 200 A three-phase, 138.7"})
  void theSmallerLoadGetsMostOfTheVoltage(String system, double volts) {
    Compilation plan = plan(system, "open neutral of D");
    TrialResult result = plan.figures().trials().result(plan.house().trials().get("lost")).value();
    double found = result.outlets().stream().filter(o -> o.device().equals("kitchen.two")).findFirst().orElseThrow().volts().si();
    assertThat(found).isCloseTo(volts, within(1.5));
  }

  @Test
  void whatIsNotThereCannotBeOpened() {
    assertThat(plan("120/240 V 200 A", "open neutral of M").findings()).anyMatch(f -> f.rule().equals("trial-impossible"));
  }
}
