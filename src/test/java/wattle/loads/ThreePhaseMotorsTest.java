package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.Leg;
import wattle.model.Panel;
import wattle.read.SourceReader;

/**
 * Motors between three hots by their horsepower, against NFPA 70 table 430.250 (as printed at wiresizecalculator.net and in document
 * 250218196 of scribd.com) and figures by hand.
 */
class ThreePhaseMotorsTest {
  private static Compilation plan(String volts, String breaker, String wire, String device, String more) {
    return new Compiler(SourceReader.FROM_DISK).compile(
        new Source(
            "plan.wattle", """
                plan "Pump house"
                use code us-2023
                service main %s V 200 A three-phase { source available 10 kA   run 10 m of 2 in PVC with 4 x 3/0 Cu THWN
                  earth water-pipe by 4 Cu }
                panel H from main { bus 225 A   slots 30   bonded   terminals 75 degC
                  main breaker 200 A 22 kA
                  1+3+5  %s 22 kA three-pole  pump  "Pump"
                }
                branch pump by 1 in EMT with 3 x %s Cu THWN hot, 10 Cu ground { H --18 m-- plant.pump }
                room plant "Plant room" is utility { pump: %s }
                trial runs { plant.pump on }
                %s
                """
                .formatted(volts, breaker, wire, device, more)),
        Path.of("plan.wattle"));
  }

  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(Finding::rule).distinct().toList();
  }

  private static double leg(Compilation plan, Leg leg) {
    Panel panel = plan.house().panels().get("H");
    return plan.figures().loads().panel("H").amperes(leg, panel.system());
  }

  /** A motor for 230 V takes its power at 208 V too: 22 A × 230 / 208 = 24.3 A; one for 200 V is made for 208 V systems. */
  @ParameterizedTest
  @CsvSource({
      "three-phase motor 7.5 hp, 24.2", "three-phase motor 7.5 hp 208 V, 24.2", "three-phase motor 7.5 hp 200 V, 25.3",
      "three-phase motor 7.5 hp 230 V, 24.327", "lift motor 20 hp, 59.4", "lift motor 40 hp 200 V, 120", "three-phase motor 0.5 hp, 2.4",
      "three-phase air conditioner 5 hp, 16.7"})
  void eachLegHasTheCurrentOfTheTable(String device, double amperes) {
    Compilation plan = plan("120/208", "70 A", "10", device, "");
    for (Leg leg : Leg.values()) {
      assertThat(leg(plan, leg)).as(leg.name()).isCloseTo(amperes, within(0.001));
    }
    assertThat(rules(plan)).doesNotContain("motor-not-listed");
  }

  /** The column for 460 V serves 440 to 480 V: 10 hp take 14 A of a 277/480 V system. */
  @Test
  void onHigherVoltage() {
    assertThat(leg(plan("277/480", "30 A", "12", "three-phase motor 10 hp 460 V", ""), Leg.B)).isCloseTo(14, within(0.001));
    assertThat(rules(plan("230/400", "30 A", "12", "three-phase motor 10 hp 400 V", ""))).contains("motor-not-listed");
    assertThat(leg(plan("230/400", "30 A", "12", "three-phase motor 7.5 kW 400 V power-factor 0.85", ""), Leg.C))
        .isCloseTo(7500 / 0.85 / (Math.sqrt(3) * 400), within(0.001));
  }

  @Test
  void whatIsNotMadeIsFound() {
    assertThat(rules(plan("120/208", "30 A", "10", "three-phase motor 6 hp", ""))).contains("motor-not-listed");
    assertThat(rules(plan("120/208", "30 A", "10", "three-phase motor 250 hp", ""))).contains("motor-not-listed");
  }

  /** The trial solver, a network of its own, finds the same current within the fall of the voltage. */
  @Test
  void theNetworkAgrees() {
    var result = plan("120/208", "60 A", "10", "three-phase motor 7.5 hp", "").figures().trials().stated();
    assertThat(result.outlets().stream().filter(o -> o.device().equals("plant.pump")).flatMap(o -> o.current().stream()).toList())
        .hasSize(3).allSatisfy(i -> assertThat(i.si()).isCloseTo(24.2, within(0.5)));
  }

  /** 430.22: 24.2 A × 1.25 = 30.25 A: 10 AWG at 75 °C has 35 A, 12 AWG 25 A. 430.52: 250 % of 24.2 A = 60.5 A, next standard 70 A. */
  @Test
  void conductorsAndBreaker() {
    assertThat(rules(plan("120/208", "70 A", "10", "three-phase motor 7.5 hp", ""))).doesNotContain("conductor-below-load",
        "breaker-above-conductor");
    assertThat(rules(plan("120/208", "60 A", "12", "three-phase motor 7.5 hp", ""))).contains("conductor-below-load");
    assertThat(rules(plan("120/208", "80 A", "10", "three-phase motor 7.5 hp", ""))).contains("breaker-above-conductor");
  }

  /** A mistake elsewhere takes nothing of it away. */
  @Test
  void besideAMistakeElsewhere() {
    Compilation plan = plan("120/208", "60 A", "12", "three-phase motor 7.5 hp", "room shed is utility { o: light 3 W }");
    assertThat(rules(plan)).contains("conductor-below-load");
    assertThat(rules(plan)).contains("device-unfed");
    assertThat(leg(plan, Leg.A)).isCloseTo(24.2, within(0.001));
  }

  @Test
  void madeForAnotherSystem() {
    assertThat(rules(plan("120/208", "30 A", "10", "three-phase motor 5 hp 460 V", ""))).contains("voltage-unfit");
    assertThat(rules(plan("120/208", "30 A", "10", "three-phase motor 1 hp 115 V", ""))).contains("voltage-unfit");
    assertThat(rules(plan("120/208", "30 A", "10", "three-phase motor 5 hp 200 V", ""))).doesNotContain("voltage-unfit",
        "rated-for-other-voltage");
  }
}
