package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.CA;
import static wattle.worksheet.Examples.SPLIT;
import static wattle.worksheet.Examples.US;
import static wattle.worksheet.Examples.feeder;
import static wattle.worksheet.Examples.feet;
import static wattle.worksheet.Examples.meters;
import static wattle.worksheet.Examples.part;
import static wattle.worksheet.Examples.service;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.SupplySystem;
import wattle.read.SourceReader;

/** The least number of circuits of a dwelling, NFPA 70 210.11, against those of the plan. */
class LeastCircuitsTest {
  private static final LeastCircuits.General NONE = new LeastCircuits.General(0, Optional.empty());

  private static final String PLAN = """
      use code us-2023
      dwelling { floor-area 1500 ft2 }
      service main 120/240 V 100 A { run 30 ft of 4 Cu triplex }
      panel P from main {
        bus 125 A slots 20 bonded
        main breaker 100 A
        1+3 15 A two-pole rooms
        2   15 A hall
        4   20 A bath
        5   20 A c1
        6   20 A c2
        7   20 A laundry
        8   20 A dish
      }
      branch rooms by 14/3 NM-B { P --9 ft-- bed.a --9 ft-- bed.b }
      branch hall by 14/2 NM-B { P --9 ft-- hall.l }
      branch bath by 12/2 NM-B is bathroom { P --9 ft-- bath.r }
      branch c1 by 12/2 NM-B is small-appliance { P --9 ft-- kitchen.c1 }
      branch c2 by 12/2 NM-B is small-appliance { P --9 ft-- kitchen.c2 }
      branch laundry by 12/2 NM-B is laundry { P --9 ft-- laundry.w }
      branch dish by 12/2 NM-B { P --9 ft-- kitchen.dish }
      room bed { a: receptacle on A   b: receptacle on B }
      room hall { l: light 10 W }
      room bath { r: receptacle }
      room kitchen { c1: receptacle at counter   c2: receptacle at counter   dish: dishwasher 1200 W }
      room laundry { w: washer 900 W }
      """;

  private static LeastCircuits ofPlan(String text) {
    Compilation plan = new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    return worksheets.leastCircuits(worksheets.services().get(0)).orElseThrow();
  }

  /** Annex D example D1(a), flylib.com example_no_d1_a: 4500 VA at 120 V are 37.5 A, three circuits of 15 A or two of 20 A. */
  @Test
  void aPublishedOneFamilyDwelling() {
    LeastCircuits least = US.leastCircuits(service(feet(1500, 1)), NONE).orElseThrow();
    assertThat(least.lighting().si()).isEqualTo(37.5, within(1e-6));
    assertThat(least.least(15)).isEqualTo(3);
    assertThat(least.least(20)).isEqualTo(2);
    assertThat(least.smallApplianceLeast()).isEqualTo(2);
    assertThat(least.laundryLeast()).isEqualTo(1);
  }

  /** Annex D example D4(b), flylib.com example_no_d4_b: 2520 VA are 21 A, two circuits of 15 A or two of 20 A. */
  @Test
  void aPublishedFlat() {
    LeastCircuits least = US.leastCircuits(feeder(SPLIT, feet(840, 0)), NONE).orElseThrow();
    assertThat(least.lighting().si()).isEqualTo(21, within(1e-6));
    assertThat(least.least(15)).isEqualTo(2);
    assertThat(least.least(20)).isEqualTo(2);
  }

  /** codelibrary.amlegal.com Centerville 152.36: 4500 W at 115 V are 39.1 A, three circuits of 15 A. */
  @Test
  void atAnotherVoltage() {
    SupplySystem system = new SupplySystem(SupplySystem.Kind.SPLIT_PHASE, 115, 230);
    LeastCircuits least = US.leastCircuits(feeder(system, feet(1500, 1)), NONE).orElseThrow();
    assertThat(least.lighting().si()).isEqualTo(39.1, within(0.05));
    assertThat(least.least(15)).isEqualTo(3);
  }

  /** Exactly whole circuits are not one more: 45 A are three of 15 A, and on two legs of a wye the voltage to the neutral counts. */
  @Test
  void wholeCircuits() {
    SupplySystem wye = new SupplySystem(SupplySystem.Kind.TWO_LEGS_OF_WYE, 120, 208);
    LeastCircuits least = US.leastCircuits(feeder(wye, feet(1800, 1)), NONE).orElseThrow();
    assertThat(least.lighting().si()).isEqualTo(45, within(1e-6));
    assertThat(least.least(15)).isEqualTo(3);
    assertThat(least.least(20)).isEqualTo(3);
  }

  /** CSA C22.1 has no lighting by floor area; a part of a dwelling and several dwellings have none either. */
  @Test
  void whereTheCodeHasNone() {
    assertThat(CA.leastCircuits(service(meters(150)), NONE)).isEmpty();
    assertThat(US.leastCircuits(part(feet(500, 0)), NONE)).isEmpty();
    assertThat(US.leastCircuits(service(feet(840, 0), feet(840, 0)), NONE)).isEmpty();
    assertThat(US.leastCircuits(service(feet(840, 0).times(3)), NONE)).isEmpty();
  }

  /** By hand: two hots and one more of 15 A are three circuits, 45 A; bathroom, laundry and dishwasher are not for general use. */
  @Test
  void againstThePlan() {
    LeastCircuits least = ofPlan(PLAN);
    assertThat(least.plannedCircuits()).isEqualTo(3);
    assertThat(least.planned()).contains(45.0);
    assertThat(least.smallAppliance()).isEqualTo(2);
    assertThat(least.laundry()).isEqualTo(1);
    assertThat(least.lines()).containsExactly(
        "Least number of circuits, 210.11: general lighting 37.5 A, 3 of 15 A or 2 of 20 A; the plan has 3, 45 A in all.",
        "Small-appliance circuits, 210.11(C)(1): 2 at least; the plan has 2. Laundry circuits, 210.11(C)(2): 1 at least; the plan has 1.");
  }

  /** 30 A are fewer than 37.5 A; a second kitchen circuit and the laundry are missing; beside an error elsewhere it is the same. */
  @Test
  void fewerThanNeeded() {
    String few = PLAN.replace("        2   15 A hall\n", "").replace("branch hall by 14/2 NM-B { P --9 ft-- hall.l }\n", "")
        .replace("c2 by 12/2 NM-B is small-appliance", "c2 by 12/2 NM-B").replace(" is laundry", "")
        .replace("c2: receptacle at counter", "");
    List<String> lines = ofPlan(few).lines();
    assertThat(lines.get(0)).endsWith("the plan has 2, 30 A in all: fewer than needed.");
    assertThat(lines.get(1)).contains("the plan has 1: fewer than needed. Laundry", "1 at least; the plan has 0: fewer than needed.");
    assertThat(ofPlan(few + "room attic { x: lamp-post 40 W }\n").lines()).isEqualTo(lines);
  }
}
