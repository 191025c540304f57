package wattle.emit.document.glance;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** The first half page of a report: the worst findings and the figures that decide, each as the parts behind it have it. */
class AtAGlanceTest {
  /**
   * A heater of 12 A on A at 120 V and a water heater of 4,500 VA between the legs: A has 1,440 + 2,250 = 3,690 VA, B 2,250 VA; an
   * available 10 kA behind a main that interrupts 5 kA; a multiwire circuit of 20 A.
   */
  private static final String PLAN = """
      use code us-2023
      dwelling { floor-area 1500 ft2 }
      service main SYSTEM 100 A { source available 10 kA  run 5 m of 3 Cu triplex }
      panel P from main {
        bus 125 A   slots 12   bonded
        main breaker 100 A 5 kA
        1    20 A            heat
        3+5  30 A two-pole   water
        2+4  20 A two-pole   counter
      }
      branch heat by 12/2 NM-B { P --30 m-- den.heater }
      branch water by 10/2 NM-B { P --3 m-- den.tank }
      branch counter by 12/3 NM-B { P --4 m-- den.c }
      room den { heater: wall heater 1440 W 120 V   tank: water heater 4500 W   c: split receptacle }
      """;

  private static List<AtAGlance.Entry> glance(String text) {
    Compilation plan = new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
    return AtAGlance.of(plan);
  }

  private static List<String> lines(List<AtAGlance.Entry> entries, String name) {
    return entries.stream().filter(e -> e.name().equals(name)).flatMap(e -> e.lines().stream()).toList();
  }

  @Test
  void aHouseOnASplitPhaseService() {
    List<AtAGlance.Entry> entries = glance(PLAN.replace("SYSTEM", "120/240 V"));
    assertThat(entries).extracting(AtAGlance.Entry::name)
        .containsExactly("Findings", "Calculated load", "Legs", "Voltage drop", "Available fault current", "Shared neutrals", "Checked");
    assertThat(lines(entries, "Findings")).hasSize(4);
    assertThat(lines(entries, "Findings").get(0)).matches("[1-9][0-9]* errors?, [0-9]+ warnings?, [0-9]+ advice");
    assertThat(lines(entries, "Findings").get(1)).as("the gravest first").startsWith("error: ");
    assertThat(lines(entries, "Calculated load")).singleElement().asString().contains("service main: ", " A of 100 A (", "NFPA 70", "220");
    assertThat(lines(entries, "Legs")).singleElement().asString()
        .contains("panel P, everything connected: A 3690 VA, B 2250 VA; imbalance ");
    assertThat(lines(entries, "Available fault current")).hasSize(2);
    assertThat(lines(entries, "Available fault current").get(0)).contains(" kA at panel P; its main interrupts 5 kA");
    assertThat(lines(entries, "Available fault current").get(1)).as("at the end of the long run").contains("den.heater on heat");
    assertThat(lines(entries, "Voltage drop")).anySatisfy(l -> assertThat(l).contains("den.heater on heat"));
  }

  /** Two hots on two legs of a split phase return the difference, at most 20 A; on a wye, at most 20 A by A² + B² − AB with A = B. */
  @ParameterizedTest
  @CsvSource({"120/240 V", "120/208 V", "120/208 V three-phase"})
  void theSharedNeutralCarriesNoMoreThanOneBreaker(String system) {
    assertThat(lines(glance(PLAN.replace("SYSTEM", system)), "Shared neutrals")).singleElement().asString()
        .contains("counter on legs ", ": at most 20 A, 0 A with every stated load on");
  }

  /** A range has a neutral and shares it with nobody. */
  @Test
  void theNeutralOfOneApplianceIsNotShared() {
    String range = PLAN.replace("SYSTEM", "120/240 V").replace("c: split receptacle", "c: range 8 kW");
    assertThat(lines(glance(range), "Shared neutrals")).isEmpty();
  }

  /** Where the worksheet cannot be filled in and the main says nothing, that is said; what is not known is no zero. */
  @Test
  void whatIsNotKnownIsSaid() {
    String bare = PLAN.replace("SYSTEM", "120/240 V").replace("100 A 5 kA", "100 A").replace("dwelling { floor-area 1500 ft2 }\n", "");
    List<AtAGlance.Entry> entries = glance(bare);
    assertThat(lines(entries, "Available fault current").get(0)).endsWith("its main states no interrupting rating");
    assertThat(lines(entries, "Calculated load")).singleElement().asString().contains("not calculated");
    assertThat(glance(bare.replace("source available 10 kA", "")).stream().map(AtAGlance.Entry::name))
        .doesNotContain("Available fault current");
  }
}
