package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.read.SourceReader;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.Leg;
import wattle.model.Panel;

/** Loads between three hots, against figures by hand. */
class ThreePhaseLoadsTest {
  private static Compilation plan(String way, String cable, String device) {
    return new Compiler(SourceReader.FROM_DISK).compile(
        new Source(
            "plan.wattle", """
                plan "Lift"
                use code us-2023
                service main 120/208 V 200 A three-phase { source available 10 kA   run 10 m of 2 in PVC with 4 x 3/0 Cu THWN
                  earth water-pipe by 4 Cu }
                panel H from main { bus 225 A   slots 30   bonded
                  main breaker 200 A 22 kA
                  %s  lift  "Lift"
                }
                branch lift by %s { H --18 m-- liftroom.lift }
                room liftroom "Lift machine room" is utility { lift: %s }
                trial runs { liftroom.lift on }
                trial drawn { liftroom.lift draws 40 A power 0.8 }
                """
                .formatted(way, cable, device)),
        Path.of("plan.wattle"));
  }

  private static final String CABLE = "1.25 in EMT with 3 x 2 Cu THWN hot, 8 Cu ground";

  private static List<String> names(Compilation plan) {
    return plan.findings().stream().map(f -> f.rule()).distinct().toList();
  }

  /** 15 kW at a power factor of 0.8 is 18.75 kVA, and 18750 / (√3 × 208 V) = 52.05 A in each leg, with nothing in the neutral. */
  @Test
  void aThreePhaseMotorLoadsEachLegAlike() {
    Compilation plan = plan("1+3+5  100 A 22 kA three-pole", CABLE, "lift motor 15 kW");
    Panel panel = plan.house().panels().get("H");
    LegLoads load = plan.figures().loads().panel("H");
    for (Leg leg : Leg.values()) {
      assertThat(load.amperes(leg, panel.system())).as("leg " + leg).isCloseTo(52.05, within(0.01));
    }
    assertThat(load.neutralAmperes(panel.system())).isCloseTo(0, within(1e-6));
    assertThat(load.total()).isCloseTo(18750, within(1e-6));
    assertThat(names(plan)).doesNotContain("pole-feeds-nothing", "load-three-phase-lacks-hots", "legs-unbalanced");
  }

  /** A stated current is that of each line, and a device's current is that of a line, not of a winding. */
  @Test
  void theNetworkHasTheCurrentOfALine() {
    Compilation plan = plan("1+3+5  100 A 22 kA three-pole", CABLE, "three-phase heater 15 kW");
    var result = plan.figures().trials().stated();
    double nominal = 15000 / (Math.sqrt(3) * 208);
    assertThat(result.outlets().stream().filter(o -> o.device().equals("liftroom.lift")).flatMap(o -> o.current().stream()).toList())
        .hasSize(3).allSatisfy(i -> assertThat(i.si()).isCloseTo(nominal, within(0.02 * nominal)));
  }

  @Test
  void onTwoPolesItIsFound() {
    Compilation plan = plan("1+3  100 A 22 kA two-pole", CABLE, "lift motor 15 kW");
    assertThat(names(plan)).contains("load-three-phase-lacks-hots");
  }

  @Test
  void aTwoHotLoadOnThreePolesLeavesOneIdle() {
    Compilation plan = plan("1+3+5  100 A 22 kA three-pole", CABLE, "baseboard heater 5 kW");
    assertThat(names(plan)).contains("pole-feeds-nothing");
    assertThat(names(plan("1+3  100 A 22 kA two-pole", CABLE, "baseboard heater 5 kW"))).doesNotContain("pole-feeds-nothing");
  }

  /** A rating in amperes is that of each line: 20 A on 208 V are √3 × 20 × 208 = 7205 VA. */
  @Test
  void aRatingInAmperesIsThatOfALine() {
    Compilation plan = plan("1+3+5  100 A 22 kA three-pole", CABLE, "three-phase heater 20 A");
    assertThat(plan.figures().loads().panel("H").total()).isCloseTo(7205.3, within(0.1));
  }
}
