package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.read.SourceReader;

/**
 * Farm loads, NFPA 70 220.102 and 220.103, by hand. The steps of the tables as electrical-knowhow.com (2013, load calculations for farms)
 * and a reprint at scribd.com 687690966 have them; 50 % and 25 % of table 220.102 from memory.
 */
class FarmTest {
  private static String farm(String dwelling, String loads) {
    return """
        use code us-2023
        %s
        service main 120/240 V 400 A { run 60 ft of 500 kcmil Al triplex }
        panel P from main { bus 400 A slots 40 bonded
          main breaker 400 A
          1+3 200 A two-pole B
          2   15 A arc-fault living
        }
        panel B from P/1 by 90 ft of 2 in PVC with 3 x 3/0 Cu THWN-2, 6 Cu ground buried 24 in is outbuilding { farm bus 200 A slots 20
          main breaker 200 A
          1+3 100 A two-pole b1
          5+7 100 A two-pole b2
          9+11 100 A two-pole b3
        }
        branch living by 14/2 NM-B { P --20 ft-- living.o1 }
        branch b1 by 1/2 MC { B --10 ft-- barn.a }
        branch b2 by 1/2 MC { B --10 ft-- barn.b }
        branch b3 by 1/2 MC { B --10 ft-- barn.c }
        room living { o1: receptacle }
        room barn is livestock { %s }
        """.formatted(dwelling, loads);
  }

  private static HouseWorksheets worksheets(String text) {
    Compilation plan = new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("farm.wattle", text), Path.of("farm.wattle"));
    return new HouseWorksheets(plan.house(), plan.library());
  }

  private static Worksheet feeder(String text) {
    HouseWorksheets worksheets = worksheets(text);
    return worksheets.least(worksheets.feeder("B").orElseThrow()).orElseThrow();
  }

  /**
   * 150 A connected. The first 60 A, half of the next 60 A, a quarter of 30 A: 97.5 A. Of which 80 A run together: 80 + 30 + 10 / 4 = 112.5
   * A. A motor of 52 A, 65 A with a quarter more, is above 60 A: 65 + 30 + 38 / 4 = 104.5 A. 50 A in all count whole.
   */
  @ParameterizedTest
  @CsvSource({"'a: heater 50 A   b: heater 50 A   c: heater 50 A', 97.5",
      "'a: heater 40 A simultaneous   b: heater 40 A simultaneous   c: heater 70 A', 112.5",
      "'a: motor 52 A 240 V   b: heater 49 A   c: heater 49 A', 104.5", "'a: heater 20 A   b: heater 20 A   c: heater 10 A', 50",
      "'a: heater 20 A simultaneous   b: heater 20 A   c: heater 10 A', 50"})
  void aBuilding(String loads, double amperes) {
    Worksheet sheet = feeder(farm("", loads.replace("heater", "electric furnace")));
    assertThat(sheet.method().name()).isEqualTo("farm");
    assertThat(sheet.current().si()).isCloseTo(amperes, within(0.05));
  }

  /** A barn is a farm load in its feeder's worksheet and in the service's: 97.5 A × 240 V = 23,400 VA beside the house. */
  @Test
  void theServiceCountsTheBarnAsItsFeederDoes() {
    String text = farm("dwelling { floor-area 1800 ft2 }",
        "a: electric furnace 50 A   b: electric furnace 50 A   c: electric furnace 50 A");
    HouseWorksheets worksheets = worksheets(text);
    assertThat(feeder(text).total().si()).isCloseTo(23_400, within(1.0));
    Worksheet service = worksheets.calculate(worksheets.method("standard").orElseThrow(), worksheets.services().get(0)).worksheet()
        .orElseThrow();
    HouseWorksheets without = worksheets(
        text.replace("farm bus", "bus").replaceAll("[abc]: electric furnace 50 A", "").replace("1+3 200 A two-pole B", ""));
    Worksheet house = without.calculate(without.method("standard").orElseThrow(), without.services().get(0)).worksheet().orElseThrow();
    assertThat(service.total().si() - house.total().si()).isCloseTo(23_400, within(1.0));
    Worksheet optional = worksheets.calculate(worksheets.method("optional").orElseThrow(), worksheets.services().get(0)).worksheet()
        .orElseThrow();
    assertThat(optional.lines()).anyMatch(l -> l.name().equals("farm building B") && Math.abs(l.result().orElseThrow().si() - 23_400) < 1);
  }

  /** Table 220.103: 60 A, 75 % of 40 A, 65 % of 30 A, half of 20 A and of 10 A: 60 + 30 + 19.5 + 10 + 5 = 124.5 A. */
  @Test
  void severalBuildings() {
    StringBuilder text = new StringBuilder("use code us-2023\nservice main 120/240 V 400 A { run 60 ft of 500 kcmil Al triplex }\n");
    text.append("panel P from main { bus 400 A slots 40 bonded\n main breaker 400 A\n");
    List<Integer> amperes = List.of(40, 60, 20, 30, 10);
    for (int i = 0; i < 5; i++) {
      text.append((4 * i + 1) + "+" + (4 * i + 3) + " 100 A two-pole B" + i + "\n");
    }
    text.append("}\n");
    for (int i = 0; i < 5; i++) {
      text.append(("panel B# from P/" + (4 * i + 1)
          + " by 90 ft of 2 in PVC with 3 x 3/0 Cu THWN-2, 6 Cu ground is outbuilding { farm bus 200 A slots 8\n"
          + "main breaker 100 A\n 1+3 60 A two-pole a#\n 5+7 60 A two-pole b# }\n"
          + "branch a# by 4/2 MC { B# --5 ft-- r#.a }\nbranch b# by 4/2 MC { B# --5 ft-- r#.b }\n"
          + "room r# is workshop { a: electric furnace " + amperes.get(i) / 2 + " A   b: electric furnace " + amperes.get(i) / 2 + " A }\n")
          .replace("#", String.valueOf(i)));
    }
    HouseWorksheets worksheets = worksheets(text.toString());
    assertThat(worksheets.least(worksheets.services().get(0)).orElseThrow().current().si()).isCloseTo(124.5, within(0.05));
  }

  /** A building with one branch circuit has no demand factor (220.102(B)): two circuits or more do. */
  @Test
  void oneCircuitCountsWhole() {
    String one = farm("", "a: electric furnace 90 A   b: junction   c: junction")
        .replace("branch b2 by 1/2 MC { B --10 ft-- barn.b }\n", "")
        .replace("branch b3 by 1/2 MC { B --10 ft-- barn.c }\n", "");
    assertThat(feeder(one).current().si()).isCloseTo(90, within(0.05));
  }
}
