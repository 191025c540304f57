package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** Conductors and grounds held against published examples and against lawful work, on each supply. */
class ConductorsAndGroundsTest {
  private static final List<Rule> RULES = RuleLoader.load(StandardLibrary.written(List.of("common", "us-2023")).value()).value();

  private static List<Finding> findings(String service, String plan) {
    String text = "plan \"T\"\nuse code us-2023\nservice main " + service
        + " 200 A { source transformer 25 kVA 2 %   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu }\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n" + plan;
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(new Source("t.wattle", text), Path.of("t.wattle"), List.of());
    assertThat(bound.findings()).filteredOn(f -> f.severity() == Severity.ERROR).isEmpty();
    return RuleBook.run(new HouseFigures(bound.house(), bound.library()), RULES);
  }

  private static List<String> headlines(String service, String plan, String... rules) {
    return findings(service, plan).stream().filter(f -> List.of(rules).contains(f.rule())).map(Finding::headline).toList();
  }

  private static final String[] WIRES = {"breaker-above-conductor", "conductor-below-load", "ground-thin", "ground-not-enlarged"};

  private static List<String> wires(String breaker, String cable, String device) {
    return headlines("120/240 V", "1+3 " + breaker + " two-pole x\n}\nbranch x by " + cable
        + " { P --6 m-- shop.x }\nroom shop is workshop { x: " + device + " }\n", WIRES);
  }

  /** Common practice: circuits that inspectors pass every day. */
  @Test
  void lawfulCircuitsRaiseNothing() {
    assertThat(wires("30 A", "12/2 NM-B", "heat pump 14 A minimum-circuit 18 A maximum-breaker 30 A")).isEmpty();
    assertThat(wires("20 A", "14/2 NM-B", "well pump 8 A")).isEmpty();
    assertThat(wires("50 A", "10/2 NM-B", "welder 40 A effective 25 A")).isEmpty();
    assertThat(wires("40 A", "8/3 NM-B", "range 12 kW")).isEmpty();
    assertThat(wires("50 A", "6/3 NM-B", "range 12 kW")).isEmpty();
    assertThat(wires("40 A", "6/3 NM-B", "range 10 kW")).isEmpty();
    assertThat(wires("30 A", "10/3 NM-B", "dryer 5.4 kW")).isEmpty();
    assertThat(wires("30 A", "10/2 NM-B", "water heater 4.5 kW")).isEmpty();
    assertThat(wires("60 A", "6/2 NM-B", "vehicle charger 40 A")).isEmpty();
    assertThat(wires("60 A", "6/2 NM-B", "electric furnace 10 kW")).isEmpty();
    assertThat(wires("20 A", "12/2 NM-B", "baseboard heater 3.8 kW")).isEmpty();
    assertThat(wires("60 A", "3/4 in EMT with 2 x 6 Cu THWN-2, 10 Cu THWN-2 ground", "vehicle charger 40 A")).isEmpty();
  }

  /**
   * ecmweb.com, Code Q&A: air-conditioner calculations: 24 A × 1.25 = 30 A, 10 AWG; breaker 24 A × 2.25 = 54 A, next size down 50 A.
   */
  @Test
  void compressorByRatedLoad() {
    assertThat(wires("50 A", "10/2 NM-B", "air conditioner 24 A")).isEmpty();
    assertThat(wires("60 A", "10/2 NM-B", "air conditioner 24 A")).containsExactly("a 60 A breaker feeds 10 AWG copper on 'x'");
    assertThat(wires("50 A", "12/2 NM-B", "air conditioner 24 A"))
        .containsExactly("'x' needs conductors good for 30 A; its 12 AWG copper is good for 20 A");
  }

  /** ecmweb.com, Code Q&A 42: minimum circuit ampacity 44 A, at most 60 A: 8 AWG with 75 °C terminals will do, at 60 °C not. */
  @Test
  void nameplateAmpacityByTerminals() {
    String unit = "heat pump 35 A minimum-circuit 44 A maximum-breaker 60 A";
    String wires = "3/4 in EMT with 2 x 8 Cu THWN-2, 10 Cu THWN-2 ground";
    assertThat(wires("60 A", wires, unit)).containsExactly("'x' needs conductors good for 44 A; its 8 AWG copper is good for 40 A");
    String marked = "1+3 60 A two-pole terminals 75 degC x\n}\nbranch x by " + wires + " { P --6 m-- shop.x }\nroom shop is workshop { x: "
        + unit
        + " terminals 75 degC }\n";
    assertThat(headlines("120/240 V", marked, WIRES)).isEmpty();
  }

  /** An aluminum conductor with a nameplate was let off: 10 AWG has 25 A at 60 °C. */
  @Test
  void aluminumWithNameplate() {
    assertThat(wires("40 A", "1 in EMT with 2 x 10 Al THWN-2, 8 Al THWN-2 ground",
        "heat pump 24 A minimum-circuit 30 A maximum-breaker 40 A"))
        .contains("'x' needs conductors good for 30 A; its 10 AWG aluminum is good for 25 A");
  }

  /** NFPA 70 210.19(A)(1): 48 A continuous needs 60 A; 6/2 NM-B has 55 A, though a 60 A breaker may guard it (240.4(B)). */
  @Test
  void continuousLoadOnRoundedBreaker() {
    List<Finding> found = findings("120/240 V",
        "1+3 60 A two-pole x\n}\nbranch x by 6/2 NM-B { P --6 m-- shop.x }\nroom shop is workshop { x: vehicle charger 48 A }\n");
    assertThat(found).filteredOn(f -> f.rule().equals("conductor-below-load")).singleElement().satisfies(f -> {
      assertThat(f.headline()).isEqualTo("'x' needs conductors good for 60 A; its 6 AWG copper is good for 55 A");
      assertThat(f.reason()).contains("48 A × 1.25 (continuous) = 60 A")
          .contains("6 AWG copper has 75 A in the 90 °C column; NM-B is held to the 60 °C column, 55 A");
    });
  }

  /** ecmag.com, CQD Spotlight: a 20 A circuit enlarged from 12 to 6 AWG for voltage drop needs a 6 AWG ground. */
  @Test
  void groundGrowsWithHots() {
    String plan = "1 20 A arc-fault x\n}\nbranch x by 1 in PVC with 2 x 6 Cu THWN-2, %s Cu THWN-2 ground { P --80 m-- shop.x }\n"
        + "room shop is workshop { x: light 900 W }\n";
    for (String service : List.of("120/240 V", "120/208 V")) {
      assertThat(headlines(service, plan.formatted("12"), WIRES))
          .containsExactly("the hots of 'x' are 6 AWG where 12 AWG would do, and its ground is 12 AWG");
      assertThat(headlines(service, plan.formatted("6"), WIRES)).isEmpty();
    }
  }
}
