package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Why a breaker is above its wire, and what is offered; each figure by hand from NFPA 70 tables 310.16, 310.15(B)(1)(1) and (C)(1). */
class ConductorReasonsTest {
  private static List<Finding> findings(String supply, String slot, String branch, String devices) {
    String text = "plan \"T\"\nuse code us-2023\nservice main " + supply
        + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth rods by 6 Cu }\npanel P from main { bus 200 A   slots 42"
        + "   bonded\n main breaker 200 A 22 kA\n " + slot + " x\n}\nbranch x by " + branch + " }\nroom shop is workshop { " + devices
        + " }\nbranch y { Q }\n";
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", text), Path.of("t.wattle")).findings();
  }

  private static Finding above(List<Finding> findings) {
    return findings.stream().filter(f -> f.rule().equals("breaker-above-conductor")).findFirst().orElseThrow();
  }

  /**
   * 12 AWG THHN in a dry attic at 55 °C, four such runs together: 30 A × 0.76 × 0.7 = 16 A, by the 90 °C column although its ground states
   * no insulation. Two receptacles: no rounding up, 15 A (240.4(B)(1)). One load: 20 A, the next standard rating, and no finding.
   */
  @Test
  void dryThhnGoesByTheNinetyDegreeColumn() {
    String run = "1/2 in EMT with 2 x 12 Cu THHN, 12 Cu ground { P --5 m in attic 55 degC bundled 4-- shop.a";
    Finding several = above(findings("120/240 V", "1 20 A", run + " --3 m-- shop.b", "a: receptacle   b: receptacle"));
    assertThat(several.reason()).contains("30 A in the 90 °C column").contains("= 16 A").contains("15 A at most (240.4(B)(1))");
    assertThat(findings("120/240 V", "1 20 A", run, "a: appliance 1500 W")).extracting(Finding::rule)
        .doesNotContain("breaker-above-conductor");
  }

  /** 25 A × 0.71 × 0.5 = 8.9 A: below the least breaker that is made, and told all the same; no such breaker is offered. */
  @Test
  void belowTheLeastBreaker() {
    Finding finding = above(
        findings("120/240 V", "1 15 A", "14/2 NM-B { P --5 m in attic 60 degC bundled 6-- shop.a --1 m-- shop.b",
            "a: receptacle b: receptacle"));
    assertThat(finding.reason()).contains("= 8.9 A");
    assertThat(finding.fixes().get(0).order()).contains("8 AWG").contains("no breaker is made as small");
    assertThat(finding.fixes().get(0).edits()).isEmpty();
  }

  /** A smaller breaker is offered where the load stands it alone: 7 kW are 29.2 A at 240 V and 33.7 A at 208 V. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "120/240 V | 3+5 40 A two-pole | 10/2 NM-B | wall heater 7 kW         | 8 AWG copper or larger | false",
      "120/208 V | 3+5 40 A two-pole | 10/2 NM-B | wall heater 7 kW         | 8 AWG copper or larger | false",
      "120/240 V | 3+5 40 A two-pole | 10/2 NM-B | wall heater 5 kW         | use a 30 A breaker      | true",
      "120/240 V | 3+5 40 A two-pole fuse | 10/2 NM-B | wall heater 7 kW    | 30 A fuse is too small  | false",
      "120/240 V | 3+5 40 A two-pole fuse | 10/2 NM-B | wall heater 5 kW    | use a 30 A fuse         | true",
      "120/208 V three-phase | 1+3+5 40 A three-pole | 10/3 NM-B | three-phase heater 12 kW | 8 AWG copper or larger | false",
      "230 V     | 1 40 A            | 10/2 NM-B | wall heater 7 kW 230 V   | 8 AWG copper or larger | false",
      "230 V     | 1 40 A            | 10/2 NM-B | wall heater 5 kW 230 V   | use a 30 A breaker      | true"})
  void noSmallerBreakerThanTheLoad(String supply, String slot, String cable, String device, String words, boolean edit) {
    Finding finding = above(findings(supply, slot, cable + " { P --5 m-- shop.a", "a: " + device));
    assertThat(finding.fixes().get(0).order()).contains(words);
    assertThat(finding.fixes().get(0).edits().isEmpty()).isEqualTo(!edit);
  }

  /** 240.4(B), (D) and (G), and the column that holds the wire down. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "3+5 70 A two-pole | 6/2 NM-B | wall heater 9 kW | held to the 60 °C column, 55 A; the next standard rating above is 60 A (240.4(B))",
      "3+5 40 A two-pole | 1/2 in EMT with 2 x 10 Cu THHN, 10 Cu ground | wall heater 5 kW"
          + " | its 60 °C terminals limit it to 30 A; 30 A is the most",
      "3+5 30 A two-pole terminals 75 degC | 1/2 in EMT with 2 x 12 Cu THHN, 12 Cu ground | wall heater 3 kW terminals 75 degC"
          + " | (240.4(D))",
      "3+5 80 A two-pole | 10/2 NM-B | motor 24 A 240 V | the article of its load allows 60 A (240.4(G))"})
  void reasonsAreToldApart(String slot, String cable, String device, String words) {
    assertThat(above(findings("120/240 V", slot, cable + " { P --5 m-- shop.a", "a: " + device)).reason()).contains(words);
  }

  /** A conductor of a raceway is bought in the color of a hot; one that the plan calls neutral stays white. NFPA 70 200.7(C)(1). */
  @Test
  void whiteInARaceway() {
    String named = "1/2 in EMT with 10 Cu THHN, 10 Cu THHN neutral, 10 Cu ground { P --5 m-- shop.a";
    assertThat(findings("120/240 V", "3+5 30 A two-pole", named, "a: wall heater 5 kW")).extracting(Finding::rule)
        .contains("raceway-white-hot");
    String alike = "1/2 in EMT with 2 x 10 Cu THHN, 10 Cu ground { P --5 m-- shop.a";
    assertThat(findings("120/240 V", "3+5 30 A two-pole", alike, "a: wall heater 5 kW")).extracting(Finding::rule)
        .doesNotContain("raceway-white-hot");
    assertThat(findings("120/240 V", "3+5 30 A two-pole", "10/2 NM-B { P --5 m-- shop.a", "a: wall heater 5 kW")).extracting(Finding::rule)
        .doesNotContain("raceway-white-hot");
  }

  /** 12 A at 120 V over 12 AWG, 1.98 mΩ a foot out and back (chapter 9 table 8, 1.98 Ω per 1000 ft): 3 % are 3.6 V, 75 ft, 23 m. */
  @Test
  void longestRunWithinThreePercent() {
    Finding drop = findings("120/240 V", "1 20 A arc-fault", "12/2 NM-B { P --150 ft-- shop.a", "a: appliance 1440 W").stream()
        .filter(f -> f.rule().equals("voltage-drop-branch")).findFirst().orElseThrow();
    assertThat(drop.fixes().get(0).order()).contains("run all of it in 8 AWG").contains("within 23 m");
  }
}
