package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What rules of the Canadian pack are about, and what they leave alone: distances to water, dwelling units, lengths, units of boxes. */
class CanadianHousesTest {
  private static List<Finding> findings(String slots, String more) {
    String plan = "plan \"T\"\nuse code ca-2021\ndwelling { floor-area 130 m2 }\nservice main 120/240 V 100 A { source available 10 kA"
        + "   run 20 m of 41 mm PVC with 3 x 3 Cu RW90   earth rods by 6 Cu }\npanel P from main { bus 100 A   slots 24   bonded\n"
        + " main breaker 100 A 10 kA\n" + slots + "\n}\n" + more;
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", plan), Path.of("t.wattle")).facts().stream()
        .flatMap(f -> f.each().stream()).toList();
  }

  private static List<String> rules(String slots, String more) {
    return findings(slots, more).stream().map(Finding::rule).toList();
  }

  /** 26-704, as oncodes.ca, Appendix B rule 26-700: within 1.5 m of a sink, whatever the room is called. */
  @Test
  void groundFaultGoesByTheDistanceToWater() {
    String laundry = "branch l by 12/2 NMD90 { P --5 m-- laundry.r }\nroom laundry { r: receptacle %s tamper-resistant }\n";
    assertThat(rules("1 20 A arc-fault l", laundry.formatted(""))).doesNotContain("ground-fault-missing-near-water");
    assertThat(rules("1 20 A arc-fault l", laundry.formatted("from-sink 2 m"))).doesNotContain("ground-fault-missing-near-water");
    assertThat(rules("1 20 A arc-fault l", laundry.formatted("from-sink 1.2 m"))).contains("ground-fault-missing-near-water");
    String bath = "branch b by 14/2 NMD90 { P --5 m-- bath.r }\nroom bath is bathroom { r: receptacle tamper-resistant }\n";
    assertThat(rules("1 15 A b", bath)).contains("ground-fault-missing-near-water");
  }

  /** 26-656 and 26-658, as dixonelectric.ca, understanding the CEC requirements: in dwelling units, bathrooms and counters let off. */
  @Test
  void arcFaultIsForDwellingUnits() {
    String plan = "branch x by 14/2 NMD90 { P --5 m-- %s.r }\nroom %s { r: receptacle from-sink 3 m tamper-resistant }\n";
    for (String room : List.of("bedroom", "laundry", "living", "hall")) {
      assertThat(rules("1 15 A x", plan.formatted(room, room))).as(room).contains("arc-fault-missing-in-dwelling");
      assertThat(rules("1 15 A arc-fault x", plan.formatted(room, room))).as(room).doesNotContain("arc-fault-missing-in-dwelling");
    }
    for (String room : List.of("shed", "bathroom", "yard", "workshop")) {
      assertThat(rules("1 15 A x", plan.formatted(room, room))).as(room).doesNotContain("arc-fault-missing-in-dwelling");
    }
  }

  /** 8-304: twelve outlets at 15 A, and no habit of the trade beside it. */
  @Test
  void twelveOutletsAndNoHabit() {
    StringBuilder run = new StringBuilder("branch x by 14/2 NMD90 { P --2 m-- den.o1");
    StringBuilder outlets = new StringBuilder("room den is living { o1: receptacle tamper-resistant");
    for (int i = 2; i <= 12; i++) {
      run.append(" --2 m-- den.o").append(i);
      outlets.append("  o").append(i).append(": receptacle tamper-resistant");
    }
    assertThat(rules("1 15 A arc-fault x", run + " }\n" + outlets + " }\n")).doesNotContain("many-outlets", "outlets-above-twelve");
    assertThat(rules("1 15 A arc-fault x", run + " --2 m-- den.o13 }\n" + outlets + " o13: receptacle tamper-resistant }\n"))
        .contains("outlets-above-twelve").doesNotContain("many-outlets");
  }

  /**
   * 8-102, as ESA bulletin 8-6-1 at studylib.net: general-use circuits of a dwelling may go by a table of lengths, which is not in the
   * pack; those that state a load go by it: 12 A over 30 m of 14 AWG, 2 × 12 A × 0.01 Ω/m × 30 m, lose some 7.4 V, 6 %.
   */
  @Test
  void lengthsOfGeneralUseCircuits() {
    String plan = "branch x by 14/2 NMD90 { P --30 m-- %s.r }\nroom %s { r: receptacle %s tamper-resistant }\n";
    assertThat(rules("1 15 A arc-fault x", plan.formatted("living", "living", ""))).doesNotContain("voltage-drop-above-three");
    assertThat(rules("1 15 A arc-fault x", plan.formatted("living", "living", "1440 W"))).contains("voltage-drop-above-three");
    assertThat(rules("1 15 A x", plan.formatted("shed", "shed", ""))).contains("voltage-drop-above-three");
  }

  /** 12-3034 and Table 22: five conductors of 14 AWG and two devices, nine times 24.6 mL; a box in one unit with what it needs. */
  @Test
  void boxesAreToldInMilliliters() {
    String plan = "branch x by 14/2 NMD90 { P --8 m-- bed.b --3 m by 14/3 NMD90-- bed.lamp }\nroom bed is bedroom { box b %s"
        + " { r: receptacle tamper-resistant  sw: switch for lamp }   lamp: light 20 W }\n";
    List<Finding> small = findings("1 15 A arc-fault x", plan.formatted("200 mL"));
    assertThat(small).filteredOn(f -> f.rule().equals("box-too-small")).singleElement().satisfies(f -> {
      assertThat(f.headline()).doesNotContain("in³").contains("221.4", "200");
      assertThat(f.reason()).doesNotContain("in³").contains("24.6");
    });
    assertThat(rules("1 15 A arc-fault x", plan.formatted("230 mL"))).doesNotContain("box-too-small");
  }

  /** Section 0 and 10-616: what trips the breaker is a bonding conductor, and findings of the common pack say so too. */
  @Test
  void findingsUseTheTermsOfTheCode() {
    List<Finding> bare = findings("1 15 A arc-fault x", "branch x by 14/2 NM without ground { P --5 m-- den.r }\nroom den is living { r:"
        + " receptacle tamper-resistant }\n");
    assertThat(bare).extracting(Finding::headline).anyMatch(h -> h.endsWith("has no bonding conductor"))
        .noneMatch(h -> h.contains("equipment ground"));
    assertThat(bare).flatExtracting(f -> f.source().stream().map(Object::toString).toList()).noneMatch(s -> s.startsWith("NFPA"));
  }
}
