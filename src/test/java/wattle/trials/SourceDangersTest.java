package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.derivation.Derivation;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** A generator that gives more than it can, or takes what it cannot; figures by hand, kilowatts over volts. */
class SourceDangersTest {
  private static Compilation compile(String system, String work, String transfer, String events) {
    String plan = """
        use code us-2023
        dwelling { floor-area 100 m2 }
        service main SYSTEM 200 A { source available 10 kA  run 20 m of 4/0 Al triplex  earth rods by 6 Cu }
        panel P from main { bus 225 A  slots 40  bonded
          TRANSFER
          1+3    30 A  two-pole                          w   "Water heater"
          2+4    40 A  two-pole back-fed                 pv  "Solar"
          37+39  40 A  two-pole back-fed interlocked     g   "Generator" }
        branch w  by 10/2 NM-B WORK { P --4 m-- u.w }
        branch pv by 8/2 NM-B WORK  { P --9 m-- u.pv }
        branch g  by 8/3 NM-B WORK  { P --4 m-- yard.g }
        room u is utility WORK { w: water heater 4.5 kW   pv: solar inverter 7 kW }
        room yard is outdoors WORK { g: generator inlet 6 kW }
        trial t { lose main  transfer P to yard.g  yard.g on  EVENTS }
        """.replace("SYSTEM", system).replace("WORK", work).replace("TRANSFER", transfer).replace("EVENTS", events);
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan", plan), Path.of("plan.wattle"));
  }

  private static List<Danger> dangers(Compilation plan, Danger.Kind kind) {
    return plan.figures().trials().result(plan.house().trials().get("t")).value().dangers().stream().filter(d -> d.kind() == kind).toList();
  }

  /** 6 kW are 25 A at 240 V and 28.8 A at 208 V: 40 A are 160 % and 139 %, 20 A are none too many. */
  @ParameterizedTest
  @CsvSource({"120/240 V, 1.60", "120/208 V, 1.387", "120/208 V three-phase, 1.387"})
  void generatorAboveItsRating(String system, double share) {
    List<Danger> over = dangers(compile(system, "", "main breaker 200 A 22 kA", "u.w draws 40 A"), Danger.Kind.SOURCE_OVER);
    assertThat(over).hasSize(1);
    double amperes = over.get(0).figure().map(Derivation::si).orElseThrow();
    double rated = over.get(0).limit().map(Derivation::si).orElseThrow();
    assertThat(amperes).isCloseTo(40, within(0.5));
    assertThat(amperes / rated).isCloseTo(share, within(0.02));
    assertThat(dangers(compile(system, "", "main breaker 200 A 22 kA", "u.w draws 20 A"), Danger.Kind.SOURCE_OVER)).isEmpty();
  }

  /** 5 kW of sun and nothing on: what the wires do not lose flows into the generator; with 4.5 kW on, half a kilowatt. */
  @Test
  void sunIntoAGenerator() {
    List<Danger> into = dangers(compile("120/240 V", "", "main breaker 200 A 22 kA", "u.pv gives 5 kW"), Danger.Kind.POWER_INTO_GENERATOR);
    assertThat(into).hasSize(1);
    assertThat(into.get(0).figure().map(Derivation::si).orElseThrow()).isCloseTo(-5000, within(60.0));
    assertThat(dangers(compile("120/240 V", "", "main breaker 200 A 22 kA", "u.pv gives 3 kW  u.w on"),
        Danger.Kind.POWER_INTO_GENERATOR)).isEmpty();
  }

  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(f -> f.rule())
        .filter(r -> List.of("inverter-on-generator", "inverter-off-by-hand", "standby-below-load", "standby-chosen-by-hand").contains(r))
        .distinct().sorted()
        .toList();
  }

  /** The plan says it without a trial, of old work too. NFPA 70-2023 702.4(A) for what is transferred; 100 m² alone are above 6 kW. */
  @ParameterizedTest
  @CsvSource({"120/240 V", "120/208 V", "120/208 V three-phase"})
  void toldWithoutATrial(String system) {
    assertThat(rules(compile(system, "", "main breaker 200 A 22 kA", ""))).containsExactly("inverter-off-by-hand",
        "standby-chosen-by-hand");
    assertThat(rules(compile(system, "existing", "main transfer 200 A automatic", "")))
        .containsExactly("inverter-on-generator", "standby-below-load");
    assertThat(rules(compile(system, "", "main transfer 200 A automatic load-managed", ""))).containsExactly("inverter-on-generator");
  }
}
