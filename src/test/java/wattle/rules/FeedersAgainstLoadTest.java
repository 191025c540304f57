package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** Feeders and services held against the load calculated for them, and what 310.12 takes off, on each supply. */
class FeedersAgainstLoadTest {
  private static final List<String> OWN = List.of("feeder-conductor-below-load", "feeder-breaker-above-conductor", "service-conductor-thin",
      "service-above-conductors", "service-conductors-below-load", "feeder-conductor-below-calculated", "service-conductor-below-rating",
      "feeder-overcurrent-above-conductor");

  private static final Map<String, List<Rule>> RULES = Map.of("us-2023", rules("us-2023"), "ca-2021", rules("ca-2021"));

  private static List<Rule> rules(String code) {
    return RuleLoader.load(StandardLibrary.written(List.of("common", code)).value()).value().stream().filter(r -> OWN.contains(r.name()))
        .toList();
  }

  private static List<Finding> findings(String code, String plan) {
    Compilation bound = new Compiler(SourceReader.FROM_DISK)
        .structure(new Source("t.wattle", "plan \"T\"\nuse code " + code + "\n" + plan), Path.of("t.wattle"), List.of());
    assertThat(bound.findings()).filteredOn(f -> f.severity() == Severity.ERROR).isEmpty();
    return RuleBook.run(new HouseFigures(bound.house(), bound.library()), RULES.get(code));
  }

  private static List<String> headlines(String code, String plan) {
    return findings(code, plan).stream().map(Finding::headline).toList();
  }

  /** A shop with a heater of 24 A and one of 34 A on a 60 A feeder. */
  private static String shop(String supply, String status, String feeder) {
    return "dwelling { floor-area 140 m2 }\nservice main " + supply + " 200 A { source available 10 kA   run 20 m of 4/0 Al triplex }\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n 1+3 60 A two-pole G\n 2 15 A hall\n}\n"
        + "panel G from P/1 by 20 m of " + feeder + " " + status
        + " { bus 100 A slots 8\n main breaker 60 A 10 kA\n 1+3 30 A two-pole y\n 2+4 40 A two-pole z\n}\n"
        + "branch hall by 14/2 NM-B { P --4 m-- hall.r }\nroom hall { r: receptacle }\n"
        + "branch y by 10/2 NM-B { G --4 m-- shop.y }\nbranch z by 8/2 NM-B { G --4 m-- shop.z }\n"
        + "room shop is workshop { y: baseboard heater 24 A   z: baseboard heater 34 A }\n";
  }

  /** NFPA 70 215.2(A)(1) with table 310.16: 24 A + 34 A = 58 A; 6/2 NM-B has 55 A, though a 60 A breaker may guard it (240.4(B)). */
  @Test
  void feederOfFiftyEightAmperes() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      for (String status : List.of("", "existing")) {
        assertThat(headlines("us-2023", shop(supply, status, "6/3 NM-B")))
            .containsExactly("feeder of panel G is too small for its load: 6 AWG copper is good for 55 A, needs 58 A");
        assertThat(headlines("us-2023", shop(supply, status, "4/3 NM-B"))).isEmpty();
      }
    }
    assertThat(findings("us-2023", shop("120/240 V", "", "6/3 NM-B"))).singleElement().satisfies(f -> {
      assertThat(f.reason()).contains("Load: 58 A by the worksheet",
          "6 AWG copper has 75 A in the 90 °C column; NM-B is held to the 60 °C column, 55 A");
      assertThat(f.fixes().get(0).order()).isEqualTo("use 4 AWG copper or larger");
    });
  }

  /** NFPA 70 table 310.15(B)(1): at 50 °C a 90 °C conductor has 0.82 of its ampacity: 4 AWG 95 A × 0.82 = 77.9 A; 6 AWG 61.5 A. */
  @Test
  void feederAfterFactors() {
    String hot = "1 in EMT with 3 x 6 Cu THWN-2, 10 Cu THWN-2 ground in attic 60 degC";
    assertThat(headlines("us-2023", shop("120/240 V", "", hot)))
        .containsExactly("feeder of panel G is too small for its load: 6 AWG copper is good for 53.3 A, needs 58 A");
  }

  /** NFPA 70 215.2(A)(1), 625.42: 32 A × 1.25 for a charger + 16 A = 56 A, which 6/3 NM-B has not; the calculated load is 48 A. */
  @Test
  void continuousPartOfFeeder() {
    String plan = shop("120/240 V", "", "6/3 NM-B").replace("baseboard heater 24 A", "baseboard heater 16 A")
        .replace("baseboard heater 34 A", "vehicle charger 32 A");
    assertThat(headlines("us-2023", plan))
        .containsExactly("feeder of panel G is too small for its load: 6 AWG copper is good for 55 A, needs 56 A");
    assertThat(findings("us-2023", plan)).singleElement().satisfies(f -> assertThat(f.reason())
        .contains("48 A by the worksheet + 8 A, a quarter of its continuous part, = 56 A"));
  }

  private static String meterMain(String supply, String rating, String feeder, String more) {
    return "dwelling { floor-area 140 m2 }\nservice main " + supply + " " + rating
        + " { source available 10 kA   run 10 m of 4/0 Al triplex }\npanel M from main { bus 200 A   slots 8   bonded\n main breaker "
        + rating + " 22 kA\n 1+3 " + rating + " two-pole H\n" + more + "}\npanel H from M/1 by " + feeder
        + " { bus 200 A   slots 30\n main lugs\n 1 15 A hall\n}\nbranch hall by 14/2 NM-B { H --4 m-- hall.r }\n"
        + "room hall { r: receptacle }\n";
  }

  /**
   * NFPA 70 310.12(B) and its table, as ecmag.com, Heat is the enemy: a feeder that carries a whole dwelling needs 83 % of its rating:
   * 2 AWG aluminum for 100 A, 4/0 for 200 A, on 120/240 V and on two legs of 208Y/120 V.
   */
  @Test
  void feederOfWholeDwelling() {
    for (String supply : List.of("120/240 V", "120/208 V")) {
      assertThat(headlines("us-2023", meterMain(supply, "100 A", "10 m of 2-2-2-4 Al SER", ""))).isEmpty();
      assertThat(headlines("us-2023", meterMain(supply, "200 A", "10 m of 4/0-4/0-4/0-2/0 Al SER", ""))).isEmpty();
      assertThat(headlines("us-2023", meterMain(supply, "100 A", "10 m of 4-4-4-6 Al SER", "")))
          .containsExactly("feeder of panel H is too small for its breaker: 4-4-4-6 Al SER on 100 A");
    }
  }

  /** NFPA 70 310.12: where another load is fed besides, the feeder is not that of the whole dwelling; 2 AWG aluminum then has 75 A. */
  @Test
  void feederOfPartOfDwelling() {
    String more = " 2+4 30 A two-pole ac\n";
    String plan = meterMain("120/240 V", "100 A", "10 m of 2-2-2-4 Al SER", more)
        + "branch ac by 10/2 UF-B { M --4 m-- yard.ac }\nroom yard is outdoors { ac: air conditioner 18 A }\n";
    assertThat(headlines("us-2023", plan)).containsExactly("feeder of panel H is too small for its breaker: 2-2-2-4 Al SER on 100 A");
  }

  /**
   * NFPA 70 310.12(B): where a factor applies the table may not be used. 83 % of 100 A is 83 A: 2 AWG aluminum at 45 °C has 100 A × 0.87 =
   * 87 A of 90 °C and passes; at 55 °C 100 A × 0.76 = 76 A and does not.
   */
  @Test
  void wholeDwellingAfterFactors() {
    assertThat(headlines("us-2023", meterMain("120/240 V", "100 A", "10 m of 2-2-2-4 Al SER in attic 45 degC", ""))).isEmpty();
    assertThat(headlines("us-2023", meterMain("120/240 V", "100 A", "10 m of 2-2-2-4 Al SER in attic 55 degC", "")))
        .containsExactly("feeder of panel H is too small for its breaker: 2-2-2-4 Al SER on 100 A");
    assertThat(findings("us-2023", meterMain("120/240 V", "100 A", "10 m of 2-2-2-4 Al SER in attic 55 degC", ""))).singleElement()
        .satisfies(f -> assertThat(f.reason()).contains("83 % of 100 A, 83 A", "after its factors this one has 76 A"));
  }
}
