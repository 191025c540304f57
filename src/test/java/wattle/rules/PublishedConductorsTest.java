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

/** Worked examples of exam questions and trade magazines, and what a house that nobody here drew comes to by hand. */
class PublishedConductorsTest {
  private static List<Finding> findings(String plan) {
    return new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("t.wattle", "plan \"T\"\nuse code us-2023\n" + plan), Path.of("t.wattle")).facts().stream()
        .flatMap(f -> f.each().stream()).toList();
  }

  private static List<Finding> of(String plan, String... rules) {
    return findings(plan).stream().filter(f -> List.of(rules).contains(f.rule())).toList();
  }

  private static String supply(String supply, String rating, String slots) {
    return "service main " + supply + " " + rating + " { source available 10 kA   earth water-pipe by 3/0 Cu }\npanel P from main { bus "
        + rating + "   slots 42   bonded\n main breaker " + rating + " 22 kA\n " + slots + "\n}\n";
  }

  /**
   * tests.com, electrician math practice test, question 8: 400 A, hots of 250 kcmil where 3/0 would do, for voltage drop: a ground of 3 AWG
   * grows by 250 / 167.8 to 78 404 circular mils, 1 AWG. Question 13: 150 A, 350 kcmil where 1/0 would do: 6 AWG grows by 3.314 to
   * 86 959 circular mils, 1/0.
   */
  @Test
  void groundsThatGrowWithTheirHots() {
    String large = supply("120/240 V", "800 A", "1+3 400 A two-pole G")
        + "panel G from P/1 by 120 m of 2 sets of 3 in PVC with 3 x 250 Cu THWN-2, %s Cu ground { bus 400 A slots 12\n"
        + " main breaker 400 A 10 kA\n}\n";
    assertThat(of(large.formatted("3"), "feeder-ground-not-enlarged")).singleElement().satisfies(f -> {
      assertThat(f.headline())
          .isEqualTo("equipment ground of feeder to panel G is not enlarged: 3 AWG, with hots of 250 kcmil where 3/0 AWG is enough");
      assertThat(f.fixes().get(0).order()).startsWith("use a ground of 1 AWG or larger");
    });
    assertThat(of(large.formatted("1"), "feeder-ground-not-enlarged")).isEmpty();
    String shop = supply("120/240 V", "400 A", "1+3 150 A two-pole G\n 2 15 A hall")
        + "branch hall by 14/2 NM-B { P --4 m-- hall.r }\nroom hall { r: receptacle }\n"
        + "panel G from P/1 by 200 m of 3 in PVC with 3 x 350 Cu THWN-2, %s Cu ground { bus 200 A slots 12\n"
        + " main breaker 150 A 10 kA\n}\n";
    assertThat(of(shop.formatted("6"), "feeder-ground-not-enlarged")).singleElement().satisfies(f -> {
      assertThat(f.headline()).contains("hots of 350 kcmil where 1/0 AWG is enough");
      assertThat(f.fixes().get(0).order()).startsWith("use a ground of 1/0 AWG or larger");
    });
    assertThat(of(shop.formatted("1"), "feeder-ground-not-enlarged")).hasSize(1);
    assertThat(of(shop.formatted("1/0"), "feeder-ground-not-enlarged")).isEmpty();
  }

  private static String circuit(String supply, String slot, String cable, String device) {
    return supply(supply, "200 A", slot + " x") + "branch x by " + cable + " { P --6 m-- shop.x }\nroom shop is workshop { x: " + device
        + " }\n";
  }

  /**
   * ecmweb.com, Motor Calculations part 2, feeders: 3 hp at 115 V takes 34 A, × 1.25 = 43 A, 6 AWG THHN at 60 °C. By table 430.52(C)(1) a
   * breaker of 250 % is 85 A, the next rating 90 A. At 230 V it is half of both; at 208 V 18.7 A, 23.4 A.
   */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "120/240 V | 1 90 A            | 8 | motor 3 hp 120 V | circuit 'x' is too small for its load: 8 AWG copper is good for 40 A,"
          + " needs 42.5 A",
      "120/240 V | 1 90 A            | 6 | motor 3 hp 120 V |",
      "120/240 V | 1 100 A           | 6 | motor 3 hp 120 V | circuit 'x' is too small for its breaker: 6 AWG copper on 100 A",
      "120/240 V | 1+3 45 A two-pole | 12 | motor 3 hp      | circuit 'x' is too small for its load: 12 AWG copper is good for 20 A,"
          + " needs 21.3 A",
      "120/240 V | 1+3 45 A two-pole | 10 | motor 3 hp      |",
      "120/208 V | 1+3 50 A two-pole | 12 | motor 3 hp      | circuit 'x' is too small for its load: 12 AWG copper is good for 20 A,"
          + " needs 23.4 A",
      "120/208 V | 1+3 50 A two-pole | 10 | motor 3 hp      |"})
  void motorOfThreeHorsepower(String supply, String slot, String size, String motor, String finding) {
    String plan = circuit(supply, slot, "1 in EMT with 2 x " + size + " Cu THHN, " + size + " Cu THHN ground", motor);
    assertThat(of(plan, "conductor-below-load", "breaker-above-conductor")).extracting(Finding::headline)
        .containsExactlyElementsOf(finding == null ? List.of() : List.of(finding));
  }

  /**
   * forums.mikeholt.com, 310.12 with adjustment: two feeders of three wires share a raceway, 80 %: 200 A × 0.83 = 166 A, 3/0 has 225 A ×
   * 0.8 = 180 A. By hand 2/0 has 195 A × 0.8 = 156 A.
   */
  @Test
  void wholeDwellingInASharedRaceway() {
    String plan = "dwelling { floor-area 140 m2 }\n" + supply("120/240 V", "200 A", "1+3 200 A two-pole H")
        + "panel H from P/1 by 10 m of 3 in PVC with 3 x %s Cu THWN-2, 6 Cu ground bundled 2 { bus 200 A   slots 30\n main lugs\n"
        + " 1 15 A hall\n}\nbranch hall by 14/2 NM-B { H --4 m-- hall.r }\nroom hall { r: receptacle }\n";
    assertThat(of(plan.formatted("3/0"), "feeder-breaker-above-conductor")).isEmpty();
    assertThat(of(plan.formatted("2/0"), "feeder-breaker-above-conductor")).singleElement()
        .satisfies(f -> assertThat(f.reason()).contains("83 % of 200 A, 166 A", "after its factors this one has 156 A"));
  }

  /** A start is judged where motor or branch are new: not in old work, and in it where it is looked at as new. */
  @Test
  void startOfAMotorInOldWork() {
    String plan = supply("120/240 V", "200 A", "1+3 60 A two-pole x")
        + "branch x by 12/2 NM-B %s { P --75 m-- shop.x }\nroom shop is workshop { x: motor 24 A 240 V locked-rotor 144 A %s }\n";
    assertThat(of(plan.formatted("existing", "existing"), "motor-start-dip")).isEmpty();
    assertThat(of(plan.formatted("", ""), "motor-start-dip")).hasSize(1);
    assertThat(of(plan.formatted("", "existing"), "motor-start-dip")).as("a new branch to an old motor").hasSize(1);
    assertThat(of(plan.formatted("existing", "new"), "motor-start-dip")).singleElement()
        .satisfies(f -> assertThat(f.headline()).contains("25.7 %"));
    assertThat(of(plan.formatted("existing", "existing") + "branch y { Q }\n", "motor-start-dip")).as("beside an error").isEmpty();
  }

  /** By hand: 120 V loads on one leg of a feeder: 4 × 1500 VA is 50 A on A and nothing on B, 25 A if it were even. */
  @Test
  void legsOfAFeederThatIsNotEven() {
    String plan = "dwelling { floor-area 140 m2 }\n" + supply("120/240 V", "200 A", "1+3 30 A two-pole G\n 2 15 A hall")
        + "panel G from P/1 by 10 m of 10/3 NM-B { bus 60 A slots 12\n main lugs\n 1 20 A a\n 5 20 A b\n 2 20 A c\n 6 20 A d\n}\n"
        + "branch hall by 14/2 NM-B { P --4 m-- hall.r }\nroom hall { r: receptacle }\n"
        + "branch a by 12/2 NM-B { G --4 m-- shop.a }\nbranch b by 12/2 NM-B { G --4 m-- shop.b }\n"
        + "branch c by 12/2 NM-B { G --4 m-- shop.c }\nbranch d by 12/2 NM-B { G --4 m-- shop.d }\n"
        + "room shop is workshop { a: wall heater 1500 W 120 V   b: wall heater 1500 W 120 V   c: wall heater 1500 W 120 V"
        + "   d: wall heater 1500 W 120 V }\n";
    assertThat(of(plan, "feeder-below-load")).singleElement().satisfies(f -> {
      assertThat(f.headline()).isEqualTo("the feeder of 'G' is rated 30 A and its calculated load is 50 A");
      assertThat(f.reason()).contains("which is not even: 50 A on leg A, 0 A on leg B, and the heaviest counts");
    });
  }

  /** Heaters on both hots of a shared neutral: each hot carries its own 1.5 kW, 12.5 A, figured at 15.6 A (424.4(B)); 14 AWG has 15 A. */
  @Test
  void heatOnASharedNeutral() {
    String plan = supply("120/240 V", "200 A", "1+3 15 A two-pole heat")
        + "branch heat by 14/3 NM-B { P --4 m-- hall.a on red --3 m-- hall.b on black }\nroom hall { a: baseboard heater %1$s 120 V\n"
        + " b: baseboard heater %1$s 120 V }\n";
    assertThat(of(plan.formatted("1500 W"), "space-heat-circuit-small")).singleElement()
        .satisfies(f -> assertThat(f.headline()).isEqualTo("wire of heat is too small for its heat: needs 15.6 A, good for 15 A"));
    assertThat(of(plan.formatted("1400 W"), "space-heat-circuit-small")).isEmpty();
  }
}
