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

/** Grounding electrodes of a service and of another building, on each supply, in new and existing work. */
class ElectrodesTest {
  private static List<Finding> findings(String supply, String status, String service, String outbuilding) {
    String text = "plan \"T\"\nuse code us-2023\nservice main " + supply + " 200 A " + status
        + " { source available 10 kA   run 20 m of 4/0 Al triplex\n"
        + service.replaceAll("  (no )?(footing|steel-frame|buried)", "\n  $1$2") + "\n}\n"
        + "panel P from main { bus 200 A   slots 40   bonded\n main breaker 200 A 22 kA\n 1+3 60 A two-pole G\n}\n"
        + "panel G from P/1 by 20 m of 1 in PVC with 3 x 6 Cu THWN, 10 Cu ground " + status
        + " is outbuilding { bus 60 A slots 8\n main breaker 60 A 22 kA\n"
        + outbuilding.replaceAll(" +(no )?(footing|steel-frame|buried)", "\n  $1$2") + "\n}\nbranch y { Q }\n";
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("t.wattle", text), Path.of("t.wattle")).findings();
  }

  /**
   * NFPA 70 table 250.66: 4 AWG copper for 4/0 aluminum, 8 AWG for a feeder of 6 AWG copper; 250.66(A): no more than 6 AWG to rods, pipes
   * and plates. 250.53(A)(2) and (D)(2): what needs a second one, which is not one that is to be removed. 250.50: what is there is used.
   */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "earth rods by 6 Cu                             | earth rods by 8 Cu                        | ",
      "earth concrete by 4 Cu                         | earth concrete by 8 Cu                    | ",
      "earth ring by 4 Cu                             | earth ring by 8 Cu                        | ",
      "earth steel by 4 Cu                            | earth steel by 8 Cu                       | ",
      "earth plate by 6 Cu 20 ohm                     | earth plate by 8 Cu 20 ohm                | ",
      "earth water-pipe by 4 Cu   earth rods by 6 Cu  | earth water-pipe by 8 Cu earth rods by 8 Cu | ",
      "earth pipe by 6 Cu   earth pipe by 6 Cu        | earth rod by 8 Cu 25 ohm                  | ",
      "earth rods by 8 Cu                             | earth rods by 8 Cu    | electrode-conductor-thin",
      "earth concrete by 6 Cu                         | earth rods by 8 Cu    | electrode-conductor-thin",
      "earth steel by 6 Cu                            | earth rods by 8 Cu    | electrode-conductor-thin",
      "earth rods by 6 Cu                             | earth rods by 10 Cu   | electrode-conductor-thin",
      "earth water-pipe by 4 Cu                       | earth rods by 8 Cu    | water-pipe-alone",
      "earth rods by 6 Cu                             | earth water-pipe by 8 Cu | outbuilding-water-pipe-alone",
      "earth rod by 6 Cu                              | earth rods by 8 Cu    | rod-single",
      "earth plate by 6 Cu 26 ohm                     | earth rods by 8 Cu    | rod-single",
      "earth rods by 6 Cu                             | earth plate by 8 Cu   | outbuilding-rod-single",
      "earth rods by 6 Cu                             | | outbuilding-electrode-missing",
      "earth rods by 6 Cu   earth rods by 6 Cu to-remove | earth rod by 8 Cu  earth rod by 8 Cu to-remove | outbuilding-rod-single",
      "earth water-pipe by 4 Cu   earth rods by 6 Cu to-remove | earth rods by 8 Cu | water-pipe-alone",
      "earth gas-pipe by 4 Cu                         | earth rods by 8 Cu    | electrode",
      "earth rods by 6 Cu  footing-rebar              | earth rods by 8 Cu    | electrode-unused",
      "earth rods by 6 Cu  steel-frame                | earth rods by 8 Cu    | electrode-unused",
      "earth rods by 6 Cu  buried-water-pipe          | earth rods by 8 Cu    | electrode-unused",
      "earth rods by 6 Cu  no buried-water-pipe       | earth rods by 8 Cu no steel-frame | ",
      "earth rods by 6 Cu                             | earth rods by 8 Cu  buried-water-pipe | outbuilding-electrode-unused"})
  void newWork(String service, String outbuilding, String rule) {
    for (String supply : List.of("120/240 V", "120/208 V", "120/208 V three-phase")) {
      List<String> told = findings(supply, "", service, outbuilding == null ? "" : outbuilding).stream().map(Finding::rule)
          .filter(r -> r.contains("electrode") || r.startsWith("rod-") || r.contains("-rod-") || r.contains("water-pipe")
              || r.equals("word-unknown"))
          .distinct().toList();
      if (rule == null) {
        assertThat(told).as(supply).isEmpty();
      } else if (rule.equals("electrode")) {
        assertThat(told).as(supply).isNotEmpty();
      } else {
        assertThat(told).as(supply).containsExactly(rule);
      }
    }
  }

  /** What an edition asks of new work is not asked of old. */
  @Test
  void existingWork() {
    assertThat(findings("120/240 V", "existing", "earth rod by 8 Cu   footing-rebar", "")).extracting(Finding::rule)
        .doesNotContain("rod-single", "electrode-unused", "electrode-conductor-thin", "outbuilding-electrode-missing");
  }
}
