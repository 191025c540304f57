package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.connected;
import static wattle.worksheet.Examples.result;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.Leg;
import wattle.read.SourceReader;

/** Feeders: outbuildings by what is in them, parts of a dwelling by the floor area that is theirs, several dwellings by their own. */
class OutbuildingTest {
  private static final String SHOP = """
      use code us-2023
      dwelling { floor-area 1800 ft2 }
      service main 120/240 V 200 A { run 60 ft of 4/0 Al triplex }
      panel P from main { bus 200 A slots 30 bonded
        main breaker 200 A
        1+3 60 A two-pole S
        2   15 A arc-fault living
      }
      panel S from P/1 by 90 ft of 6/3 UF-B buried 24 in is outbuilding { bus 100 A slots 16
        main breaker 60 A
        1+3 40 A two-pole car
        5   30 A dust
        7   15 A wl
        2+4 30 A two-pole saw
      }
      branch living by 14/2 NM-B { P --20 ft-- living.o1 }
      branch car by 8/2 NM-B { S --10 ft-- bay.car }
      branch dust by 10/2 NM-B { S --10 ft-- bay.dust }
      branch wl by 14/2 NM-B { S --10 ft-- bay.l1 --5 ft-- bay.r1 }
      branch saw by 10/2 NM-B { S --10 ft-- bay.saw }
      room living { o1: receptacle }
      room bay is workshop { car: vehicle charger 32 A   dust: table saw 24 A 120 V   l1: light 200 W   r1: receptacle
        saw: table saw 17 A }
      """;

  private static Compilation compile(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static HouseWorksheets worksheets(String text) {
    Compilation plan = compile(text);
    return new HouseWorksheets(plan.house(), plan.library());
  }

  private static Outcome standard(String text, String panel) {
    HouseWorksheets worksheets = worksheets(text);
    return worksheets.calculate(worksheets.method("standard").orElseThrow(), worksheets.feeder(panel).orElseThrow());
  }

  /**
   * By hand, with no area of the workshop: lights as stated (220.14, in watts as stated, no power factor of the library), 180 VA for the
   * receptacle (220.14(I)), no lighting of a dwelling; leg A has the dust collector of 24 A as its largest motor, leg B the saw of 17 A.
   */
  @Test
  void aWorkshopIsNotChargedTheLightingOfTheHouse() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      Outcome outcome = standard(SHOP.replace("120/240 V", supply), "S");
      assertThat(outcome.objections()).isEmpty();
      Worksheet sheet = outcome.worksheet().orElseThrow();
      assertThat(connected(sheet.lines(), "lights outside the floor area")).isEqualTo(200, within(1e-6));
      assertThat(result(sheet.lines(), "receptacles outside the floor area, the first 10000 VA")).isEqualTo(180, within(1e-6));
      assertThat(sheet.lines()).noneMatch(l -> l.name().startsWith("general"));
      double outlets = 380 / 240.0;
      // 7200 VA at least (220.57), which is 34.6 A at 208 V.
      double car = supply.equals("120/240 V") ? 32 : 7200 / 208.0;
      assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(car + 17 + 24 * 1.25 + outlets, within(0.1));
      assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(car + 17 * 1.25 + outlets, within(0.1));
      double governs = Math.max(car + 17 + 24 * 1.25 + outlets, sheet.total().si() / (supply.equals("120/240 V") ? 240 : 208));
      assertThat(sheet.current().si()).isEqualTo(governs, within(0.1));
      assertThat(sheet.sized().si()).as("the charger at 125 %").isEqualTo(governs + 32 * 1.25 - car, within(0.1));
    }
  }

  /** A power factor that the plan states counts under NFPA 70: 200 W at 0.8 are 250 VA. */
  @Test
  void aStatedPowerFactorCounts() {
    Worksheet sheet = standard(SHOP.replace("light 200 W", "light 200 W power-factor 0.8"), "S").worksheet().orElseThrow();
    assertThat(connected(sheet.lines(), "lights outside the floor area")).isEqualTo(250, within(1e-6));
    assertThat(compile(SHOP).house().assumed()).anySatisfy(a -> assertThat(a).contains("bay.l1").contains("power factor of the kind, 0.9"));
    assertThat(compile(SHOP.replace("light 200 W", "light 200 W power-factor 0.8")).house().assumed())
        .noneMatch(a -> a.contains("power factor"));
  }

  @Test
  void anOverloadedFeederIsFoundBesideAnErrorElsewhere() {
    assertThat(compile(SHOP).findings()).extracting(Finding::rule).contains("feeder-below-load");
    assertThat(compile(SHOP + "room attic { x: lamp-post 40 W }\n").findings()).extracting(Finding::rule).contains("feeder-below-load");
    assertThat(compile(SHOP.replace("1+3 60 A two-pole S", "1+3 100 A two-pole S")).findings()).extracting(Finding::rule)
        .doesNotContain("feeder-below-load");
  }

  private static final String UPSTAIRS = """
      use code us-2023
      dwelling { floor-area 150 m2 }
      service main 120/240 V 100 A { run 9 m of 4/0 Al triplex }
      panel P from main { bus 200 A slots 20 bonded
        main breaker 100 A
        1+3 40 A two-pole U
        2   15 A hall
      }
      panel U from P/1 by 9 m of 8/3 NM-B { bus 60 A slots 8
        1 15 A bed
        3 15 A office
      }
      branch hall by 14/2 NM-B { P --3 m-- hall.l }
      branch bed by 14/2 NM-B { U --3 m-- bed.l }
      branch office by 14/2 NM-B { U --3 m-- office.l }
      room hall area 20 m2 { l: light 60 W }
      room bed { l: light 60 W }
      room office area 15 m2 { l: light 60 W }
      """;

  /** By hand: of 150 m² the hall states 20 and the office 15; the rest, 115, is the bedroom's, since no other room is without an area. */
  @Test
  void whatNoRoomStatesIsTheRestOfTheFloorArea() {
    Outcome outcome = standard(UPSTAIRS, "U");
    assertThat(outcome.objections()).isEmpty();
    assertThat(connected(outcome.worksheet().orElseThrow().lines(), "general lighting")).isEqualTo(33 * 130, within(1e-6));
    Outcome two = standard(UPSTAIRS.replace("room hall area 20 m2", "room hall"), "U");
    assertThat(two.objections()).extracting(Objection::rule).containsExactly("room-area-estimated");
    assertThat(connected(two.worksheet().orElseThrow().lines(), "general lighting")).as("the most it can be").isEqualTo(33 * 150,
        within(1e-6));
    Outcome none = standard(UPSTAIRS.replace("dwelling { floor-area 150 m2 }", "dwelling { storeys 1 }"), "U");
    assertThat(none.objections()).extracting(Objection::rule).contains("room-area-missing");
  }

  /**
   * A fault that rests on an estimate is none: 3 kW of heat and at most 4290 VA of lighting on 15 A, of which only the heat and
   * 495 VA is certain.
   */
  @Test
  void anEstimateMakesNoFault() {
    String tight = UPSTAIRS.replace("room hall area 20 m2", "room hall").replace("1+3 40 A", "1+3 15 A");
    assertThat(standard(tight, "U").worksheet().orElseThrow().current().si()).isGreaterThan(14);
    assertThat(compile(tight).findings()).extracting(Finding::rule).doesNotContain("feeder-below-load");
  }

  private static final String FLATS = """
      use code us-2023
      dwelling one on F1 { floor-area 70 m2 }
      dwelling two on F2 { floor-area 90 m2 }
      service main 120/240 V 200 A { run 9 m of 4/0 Al triplex }
      panel M from main { bus 200 A slots 20 bonded
        main breaker 200 A
        1+3 150 A two-pole floor
      }
      panel floor from M/1 by 9 m of 2-2-2-4 Al SER { bus 200 A slots 20
        1+3 60 A two-pole F1
        2+4 60 A two-pole F2
        5   15 A stair
      }
      panel F1 from floor/1 by 9 m of 6/3 NM-B { bus 100 A slots 12
        1 15 A a
      }
      panel F2 from floor/2 by 9 m of 6/3 NM-B { bus 100 A slots 12
        1 15 A b
      }
      branch stair by 14/2 NM-B { floor --3 m-- stair.l }
      branch a by 14/2 NM-B { F1 --3 m-- abed.l }
      branch b by 14/2 NM-B { F2 --3 m-- bbed.l }
      room stair { l: light 100 W }
      room abed { l: light 60 W }
      room bbed { l: light 60 W }
      """;

  /** A floor panel feeds two whole dwellings and the stair: their floor areas are stated, and no room needs one. */
  @Test
  void aFloorPanelFeedsWholeDwellings() {
    HouseWorksheets worksheets = worksheets(FLATS);
    HouseInputs.Read read = worksheets.feeder("floor").orElseThrow();
    assertThat(read.inputs().scope()).isEqualTo(Inputs.Scope.FEEDER);
    assertThat(read.objections()).isEmpty();
    Worksheet sheet = worksheets.least(read).orElseThrow();
    assertThat(connected(sheet.lines(), "general lighting")).isEqualTo(33 * 160, within(1e-6));
    assertThat(result(sheet.lines(), "lights outside the dwellings")).isEqualTo(100, within(1e-6));
  }

  /** A workplace is told what fits it, and no dwelling's circuits are counted for it: 9 kW, 400 W and 180 VA by hand. */
  @Test
  void aWorkplaceIsNotToldToAddADwelling() {
    String text = """
        use code us-2023
        service main 120/208 V 200 A three-phase { source available 10 kA }
        panel P from main { bus 200 A slots 30 bonded
          main breaker 200 A
          1+3+5 40 A three-pole heat
          2 20 A ground-fault bench
        }
        branch heat by 8/3 MC { P --20 ft-- shop.heat }
        branch bench by 12/2 MC { P --20 ft-- shop.l --5 ft-- shop.o }
        room shop is workshop { heat: three-phase heater 9 kW   l: light 400 W   o: receptacle }
        """;
    Finding unknown = compile(text).findings().stream().filter(f -> f.rule().equals("calculated-load-unknown")).findFirst().orElseThrow();
    assertThat(unknown.reason()).contains("workplace").contains("9580 VA").doesNotContain("small-appliance");
    assertThat(unknown.fixes()).noneMatch(f -> f.order().contains("dwelling {")).anyMatch(f -> f.order().contains("220.42(A)"));
  }
}
