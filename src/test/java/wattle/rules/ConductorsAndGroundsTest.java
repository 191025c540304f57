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
    assertThat(wires("60 A", "10/2 NM-B", "air conditioner 24 A")).containsExactly("circuit 'x' is too small for its breaker: 10 AWG"
        + " copper on 60 A");
    assertThat(wires("50 A", "12/2 NM-B", "air conditioner 24 A"))
        .containsExactly("circuit 'x' is too small for its load: 12 AWG copper is good for 20 A, needs 30 A");
  }

  /** ecmweb.com, Code Q&A 42: minimum circuit ampacity 44 A, at most 60 A: 8 AWG with 75 °C terminals will do, at 60 °C not. */
  @Test
  void nameplateAmpacityByTerminals() {
    String unit = "heat pump 35 A minimum-circuit 44 A maximum-breaker 60 A";
    String wires = "3/4 in EMT with 2 x 8 Cu THWN-2, 10 Cu THWN-2 ground";
    assertThat(wires("60 A", wires, unit))
        .containsExactly("circuit 'x' is too small for its load: 8 AWG copper is good for 40 A, needs 44 A");
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
        .contains("circuit 'x' is too small for its load: 10 AWG aluminum is good for 25 A, needs 30 A");
  }

  /** NFPA 70 210.19(A)(1): 48 A continuous needs 60 A; 6/2 NM-B has 55 A, though a 60 A breaker may guard it (240.4(B)). */
  @Test
  void continuousLoadOnRoundedBreaker() {
    List<Finding> found = findings("120/240 V",
        "1+3 60 A two-pole x\n}\nbranch x by 6/2 NM-B { P --6 m-- shop.x }\nroom shop is workshop { x: vehicle charger 48 A }\n");
    assertThat(found).filteredOn(f -> f.rule().equals("conductor-below-load")).singleElement().satisfies(f -> {
      assertThat(f.headline()).isEqualTo("circuit 'x' is too small for its load: 6 AWG copper is good for 55 A, needs 60 A");
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
          .containsExactly("equipment ground of circuit 'x' is not enlarged: 12 AWG, with hots of 6 AWG where 12 AWG is enough");
      assertThat(headlines(service, plan.formatted("6"), WIRES)).isEmpty();
    }
  }

  /** NFPA 70 table 430.248: a motor of 2 hp at 115 V takes 24 A; 430.22: 24 A × 1.25 = 30 A; at 230 V 12 A, at 208 V 13.2 A. */
  @Test
  void motorByHorsepower() {
    String plan = "1 %s x\n}\nbranch x by %s { P --6 m-- shop.x }\nroom shop is workshop { x: motor 2 hp 120 V }\n";
    assertThat(headlines("120/240 V", plan.formatted("60 A", "10/2 NM-B"), WIRES)).isEmpty();
    assertThat(headlines("120/240 V", plan.formatted("60 A", "12/2 NM-B"), WIRES))
        .containsExactly("circuit 'x' is too small for its load: 12 AWG copper is good for 20 A, needs 30 A");
    assertThat(headlines("120/240 V", plan.formatted("70 A", "10/2 NM-B"), WIRES))
        .containsExactly("circuit 'x' is too small for its breaker: 10 AWG copper on 70 A");
    String across = "1+3 30 A two-pole x\n}\nbranch x by 14/2 NM-B { P --6 m-- shop.x }\nroom shop is workshop { x: motor 2 hp }\n";
    assertThat(headlines("120/240 V", across, WIRES)).isEmpty();
    assertThat(headlines("120/208 V", across, WIRES))
        .containsExactly("circuit 'x' is too small for its load: 14 AWG copper is good for 15 A, needs 16.5 A");
  }

  private static final String[] BONDS = {"neutral-bonded-twice", "feeder-ground-missing", "feeder-bonded-without-ground",
      "old-feeder-bond-barred", "metal-grounded-by-neutral"};

  private static List<String> bonds(String cable, String panel) {
    return findings("120/240 V", "1+3 60 A two-pole G\n}\npanel G from P/1 by 75 m of " + cable + " " + panel
        + " slots 12   bus 100 A\n main breaker 60 A 10 kA\n 1 20 A o\n}\nbranch o by 12/2 NM-B { G --4 m-- shop.o }\n"
        + "room shop is workshop { o: light 1200 VA }\n").stream().map(Finding::rule).filter(List.of(BONDS)::contains).toList();
  }

  /** NFPA 70 250.32(B)(1) and its exception 1: what each way of wiring another building's panel comes to. */
  @Test
  void bondAndGroundOfAnOutbuildingTogether() {
    assertThat(bonds("6/3 UF-B", "is outbuilding {")).isEmpty();
    assertThat(bonds("6/3 UF-B", "is outbuilding { bonded")).containsExactly("neutral-bonded-twice");
    assertThat(bonds("6/3 UF-B without ground", "is outbuilding { bonded")).containsExactly("feeder-bonded-without-ground");
    assertThat(bonds("6/3 UF-B without ground", "is outbuilding {")).containsExactly("feeder-ground-missing");
    assertThat(bonds("6/3 UF-B without ground", "existing is outbuilding {")).containsExactly("feeder-ground-missing");
    assertThat(bonds("6/3 UF-B without ground", "existing is outbuilding { bonded   no metal-path"))
        .containsExactly("metal-grounded-by-neutral");
    assertThat(bonds("6/3 UF-B without ground", "existing is outbuilding { bonded   metal-path"))
        .containsExactlyInAnyOrder("old-feeder-bond-barred", "metal-grounded-by-neutral");
    assertThat(bonds("2 in EMT with 3 x 6 Cu THWN-2", "is outbuilding {")).isEmpty();
  }

  /** Kirchhoff: neutral 6 AWG and ground 10 AWG in parallel share 10 A as 1.21 to 0.491 Ω/kft: 10 A × 0.491 / 1.701 = 2.9 A. */
  @Test
  void neutralCurrentOnTheGround() {
    List<Finding> found = findings("120/240 V",
        "1+3 60 A two-pole G\n}\npanel G from P/1 by 75 m of 6/3 UF-B { bonded slots 12   bus 100 A\n"
            + " main breaker 60 A 10 kA\n 1 20 A o\n}\nbranch o by 12/2 NM-B { G --4 m-- shop.o }\nroom shop is workshop { o: light"
            + " 1200 VA }\n");
    assertThat(found).filteredOn(f -> f.rule().equals("neutral-bonded-twice")).singleElement()
        .satisfies(f -> assertThat(f.reason()).contains("Of the 10 A").contains("2.9 A returns"));
  }

  /** Two loads of 8 A in a chain: 16 A on the first 20 m and 8 A on the next; all at the far end would be twice as much on the second. */
  @Test
  void dropPutsEachLoadWhereItIs() {
    String plan = "1 20 A arc-fault x\n}\nbranch x by 12/2 NM-B { P --%s m-- shop.a --%s m-- shop.b }\n"
        + "room shop is workshop { a: light 960 VA   b: light 960 VA }\n";
    // 1.93 Ω/kft = 6.332 Ω/km: 2 × 6.332e-3 × (16 × 14 + 8 × 8) / 120 = 3.04 %; all at the end 16 × 22: 3.7 %
    assertThat(headlines("120/240 V", plan.formatted("14", "8"), "voltage-drop-branch")).hasSize(1);
    assertThat(headlines("120/240 V", plan.formatted("13", "8"), "voltage-drop-branch")).isEmpty();
    assertThat(headlines("120/208 V", plan.formatted("13", "8"), "voltage-drop-branch")).isEmpty();
  }

  /** 6 AWG, 1.61 Ω/km, 75 m, 59 A: 2 × 0.121 Ω × 59 A = 14.2 V of 240 V, 5.9 %. */
  @Test
  void feederDropFromTheService() {
    String plan = "1+3 60 A two-pole G\n}\npanel G from P/1 by 75 m of 2 in PVC with 3 x 6 Cu THWN-2, 10 Cu THWN-2 ground { bus 100 A"
        + " slots 12\n"
        + " main breaker 60 A 10 kA\n 1+3 60 A two-pole c\n}\nbranch c by 4/2 NM-B { G --4 m-- shop.c }\n"
        + "room shop is workshop { c: vehicle charger 59 A }\n";
    List<Finding> found = findings("120/240 V", plan);
    assertThat(found).filteredOn(f -> f.rule().equals("voltage-drop-feeder")).singleElement().satisfies(f -> {
      assertThat(f.headline()).matches(".* is 5\\.9\\d* % at 59 A");
      assertThat(f.fixes().get(0).order()).isEqualTo("run it in 3 AWG, or keep it within 37 m");
    });
  }
}
