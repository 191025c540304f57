package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Bond and ground of a panel in another building, on each supply, in new and existing work, beside a mistake elsewhere. */
class OutbuildingsTest {
  private static final List<String> BONDS = List.of("neutral-bonded-twice", "feeder-ground-missing", "feeder-bonded-without-ground",
      "old-feeder-bond-barred", "metal-grounded-by-neutral");

  /** What a supply is called, the slots of the feeder, its cable, and the slots of two loads to the neutral. */
  private record On(String supply, String slots, String cable, String first, String second, double volts) {
    static On of(String supply) {
      return switch (supply) {
        case "120/240 V", "120/208 V" -> new On(supply, "1+3 60 A two-pole", "6/3 UF-B", "1 20 A", "3 20 A", 120);
        case "120/208 V three-phase" -> new On(supply, "1+3+5 60 A three-pole", "6/4 UF-B", "1 20 A", "3 20 A", 120);
        case "230 V" -> new On(supply, "1 60 A", "6/2 UF-B", "1 20 A", "3 20 A", 230);
        default -> throw new AssertionError(supply);
      };
    }
  }

  private static List<Finding> findings(String supply, boolean ground, String panel, String loads) {
    On on = On.of(supply);
    String text = "plan \"T\"\nuse code us-2023\nservice main " + on.supply
        + " 200 A { source transformer 25 kVA 2 %   run 20 m of 4/0 Al triplex   earth rods by 6 Cu }\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n " + on.slots
        + " G\n}\npanel G from P/1 by 75 m of "
        + on.cable + (ground ? "" : " without ground") + " buried 0.7 m " + panel + "   slots 12   bus 100 A\n main breaker 60 A 10 kA\n "
        + on.first + " a\n " + on.second + " b\n}\nbranch a by 12/2 NM-B { G --4 m-- shop.a }\nbranch b by 12/2 NM-B { G --4 m-- shop.b }\n"
        + "room shop is workshop { " + loads + " }\nbranch y { Q }\n";
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", text), Path.of("t.wattle")).findings().stream()
        .filter(f -> BONDS.contains(f.rule())).toList();
  }

  /** NFPA 70 250.32(B)(1) and its exception 1. No path back is an error whatever the age of the work; what the exception allows is said. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "true  | is outbuilding {                                 | ",
      "true  | is outbuilding { bonded                          | neutral-bonded-twice",
      "false | is outbuilding { bonded                          | feeder-bonded-without-ground",
      "false | is outbuilding {                                 | feeder-ground-missing",
      "true  | existing is outbuilding { bonded                 | neutral-bonded-twice",
      "false | existing is outbuilding {                        | feeder-ground-missing",
      "false | existing is outbuilding { bonded   no metal-path | metal-grounded-by-neutral",
      "false | existing is outbuilding { bonded   metal-path    | old-feeder-bond-barred metal-grounded-by-neutral"})
  void eachWayOfWiring(boolean ground, String panel, String rules) {
    for (String supply : List.of("120/240 V", "120/208 V", "120/208 V three-phase", "230 V")) {
      List<Finding> found = findings(supply, ground, panel, "a: light 1000 VA   b: light 500 VA");
      assertThat(found).as(supply).extracting(Finding::rule)
          .containsExactlyInAnyOrder(rules == null ? new String[0] : rules.split(" "));
      // Three wires without a path back, and a new bond, are errors that name the volts; what old work may keep is advice.
      found.stream().filter(f -> f.rule().equals("feeder-ground-missing") || f.rule().equals("feeder-bonded-without-ground"))
          .forEach(f -> {
            assertThat(f.severity()).isEqualTo(Severity.ERROR);
            assertThat(f.reason()).contains((int) On.of(supply).volts + " V");
          });
    }
  }

  /**
   * Kirchhoff: the neutral of 6 AWG and the ground of 10 AWG share what returns as 1.21 to 0.491 Ω each 1000 ft (chapter 9 table 8),
   * so that 0.2887 of it is on the ground. 1200 VA on leg A and 600 VA on leg B at 120 V: 10 A - 5 A = 5 A on 120/240 V; on two legs
   * of a wye, 120° apart, √(10² + 5² - 10 × 5) = 8.66 A, as with the third leg of three idle. On one leg of 230 V: 5.22 A + 2.61 A =
   * 7.83 A.
   */
  @ParameterizedTest
  @CsvSource({"120/240 V,5 A,1.4 A", "120/208 V,8.7 A,2.5 A", "120/208 V three-phase,8.7 A,2.5 A", "230 V,7.8 A,2.3 A"})
  void neutralCurrentOnTheGroundOfFourWires(String supply, String returns, String onGround) {
    for (String status : List.of("", "existing ")) {
      List<Finding> found = findings(supply, true, status + "is outbuilding { bonded", "a: light 1200 VA   b: light 600 VA");
      assertThat(found).singleElement()
          .satisfies(f -> assertThat(f.reason()).contains("Of the " + returns).contains(onGround + " returns"));
    }
  }
}
