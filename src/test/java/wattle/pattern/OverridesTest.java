package wattle.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.House;
import wattle.read.SourceReader;

/** One placement of a pattern that is not as the others. */
class OverridesTest {
  private static final String PLAN = """
      plan "Three cabins"
      use code us-2023
      service main 120/240 V 200 A { source available 10 kA   run 10 m of 2 in PVC with 3 x 3/0 Cu THWN
        earth water-pipe by 4 Cu }
      panel M from main { bus 225 A   slots 30   bonded
        main breaker 200 A 22 kA
        (2 * n - 1 + 2 * (n - 1))+(2 * n + 1 + 2 * (n - 1))  60 A two-pole  cabin{n}  for n from 1 to 3
      }
      pattern cabin(n) {
        panel cabin "Cabin {n}" from M by (5 m * n) of 6/3 NM-B { bus 100 A   slots 12
          main breaker 60 A 10 kA
          1+3  30 A two-pole  heat  "Heat"
          2  20 A  lights  "Lights"
        }
        branch heat by 10/2 NM-B { cabin --4 m-- hall.heater }
        branch lights by 12/2 NM-B { cabin --4 m-- hall.sw --2 m-- hall.lamp }
        room hall "Hall {n}" { heater: baseboard heater 3 kW   box b 1-gang { sw: switch for lamp }   lamp: light 60 VA }
      }
      place cabin(n) as cabin{n} for n from 1 to 3
      """;

  private static Compilation plan(String more) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("plan.wattle", PLAN + more), Path.of("plan.wattle"));
  }

  private static List<String> structure(Compilation plan) {
    return plan.findings().stream().map(Finding::rule)
        .filter(List.of("name-unknown", "name-twice", "kind-unknown", "breaker-without-branch", "device-unfed", "slot-taken")::contains)
        .toList();
  }

  private static double voltAmperes(Compilation plan, String panel) {
    return plan.figures().loads().panel(panel).total();
  }

  /** A device by its name, a slot line by its slots, a branch whole; what is not named stays, and the other placements stay. */
  @Test
  void takesThePlaceOfWhatHasItsName() {
    Compilation plan = plan("""
        override cabin2 {
          panel cabin { 1+3  20 A two-pole  heat  "Small heater" }
          branch heat by 12/2 NM-B { cabin --9 m-- hall.heater }
          room hall { heater: baseboard heater 1500 W 240 V   sw: dimmer for lamp }
        }
        """);
    assertThat(structure(plan)).isEmpty();
    House house = plan.house();
    assertThat(voltAmperes(plan, "cabin2")).isCloseTo(1560, within(1e-6));
    assertThat(voltAmperes(plan, "cabin1")).isCloseTo(3060, within(1e-6));
    assertThat(voltAmperes(plan, "cabin3")).isCloseTo(3060, within(1e-6));
    assertThat(house.branches().get("cabin2.heat").sections().get(0).length().orElseThrow().si()).isCloseTo(9, within(1e-9));
    assertThat(house.branches().get("cabin1.heat").sections().get(0).length().orElseThrow().si()).isCloseTo(4, within(1e-9));
    assertThat(house.panels().get("cabin2").breakers().get(0).label()).contains("Small heater");
    assertThat(house.devices().get("cabin2.hall.sw").box()).isEqualTo("cabin2.hall.b");
    assertThat(house.devices().get("cabin2.hall.sw").kind().name()).isEqualTo("dimmer");
    assertThat(house.overridden()).containsOnlyKeys("cabin2");
    assertThat(house.overridden().get("cabin2")).containsExactly("slot 1+3", "heat", "hall.heater", "hall.sw");
  }

  /** A branch that is left out takes its slot line with it; a new one uses its slots. */
  @Test
  void leavesOutAndAdds() {
    Compilation plan = plan("""
        override cabin3 {
          without heat
          without hall.heater
          panel cabin { 1+3  20 A two-pole  pump  "Pump" }
          branch pump by 12/2 NM-B { cabin --9 m-- yard.pump }
          room yard "Yard" is outdoors { pump: motor 1 hp 230 V }
        }
        """);
    assertThat(structure(plan)).isEmpty();
    // NFPA 70 table 430.248: 1 hp at 230 V has 8 A; 8 A x 240 V = 1920 VA, and the lamp.
    assertThat(voltAmperes(plan, "cabin3")).isCloseTo(1980, within(1e-6));
    assertThat(plan.house().devices()).containsKeys("cabin3.yard.pump", "cabin1.hall.heater").doesNotContainKeys("cabin3.hall.heater");
    assertThat(plan.house().overridden().get("cabin3")).contains("without heat", "pump", "yard.pump");
  }

  /** The settings of a panel and the wire of its feeder; the length belongs to the wire. */
  @Test
  void anotherFeeder() {
    Compilation plan = plan("override cabin1 { panel cabin by 30 m of 4/3 NM-B { main breaker 50 A 10 kA } }\n");
    assertThat(structure(plan)).isEmpty();
    var panel = plan.house().panels().get("cabin1");
    assertThat(panel.feeder().orElseThrow().length().orElseThrow().si()).isCloseTo(30, within(1e-9));
    assertThat(panel.main().orElseThrow().rating().orElseThrow().si()).isCloseTo(50, within(1e-9));
    assertThat(panel.breakers()).hasSize(2);
  }

  @Test
  void whatIsNotThereIsFound() {
    assertThat(structure(plan("override cabin4 { room hall { lamp: light 5 W } }\n"))).containsExactly("name-unknown");
    assertThat(structure(plan("override cabin1 { without attic }\n"))).containsExactly("name-unknown");
    assertThat(structure(plan("override cabin1 { without hall.heater }\noverride cabin1 { without heat }\n"))).contains("name-twice");
    assertThat(structure(plan("override cabin1 { without heat }\n"))).containsExactly("device-unfed");
  }

  /** A mistake in an override stands in its line and leaves the other placements judged. */
  @Test
  void aMistakeStandsInItsLine() {
    Compilation plan = plan("override cabin1 {\n  room hall { lamp: lihgt 60 W }\n}\noverride cabin2 { without hall.heater }\n");
    List<Finding> findings = plan.findings().stream().filter(f -> f.rule().equals("kind-unknown")).toList();
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).place().orElseThrow().span().text()).contains("lihgt");
    assertThat(structure(plan)).contains("kind-unknown");
    assertThat(plan.findings().stream().map(Finding::headline)).anyMatch(h -> h.contains("cabin2"));
  }

  /** It is laid out as other blocks are, and reading that gives the same. */
  @Test
  void isLaidOut() {
    String text = PLAN + "override   cabin3 {\n without heat\n   without   hall.heater\n room hall { lamp:  light 5 W }\n}\n";
    String tidy = Formatter.format(new Source("plan.wattle", text)).value();
    assertThat(tidy).contains("override cabin3 {\n  without heat\n  without hall.heater\n");
    assertThat(Formatter.format(new Source("plan.wattle", tidy)).value()).isEqualTo(tidy);
  }
}
