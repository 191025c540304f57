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

/** Published examples of sources that run beside the utility, NFPA 70 705.11 to 705.28, each named. */
class InterconnectionTest {
  private static final List<String> RULES = List.of("source-overloads-bus", "source-not-at-end", "source-conductors-thin",
      "feeder-below-sources", "sources-above-service", "supply-side-conductors-thin", "source-breaker-small");

  /** A panel of 40 slots with more load breakers than its bus, so that the sum of all breakers never helps. */
  private static String house(int bus, int main, String panel, String ways, String more) {
    return """
        plan "Invented" use code us-2023
        dwelling { floor-area 150 m2 }
        service main 120/240 V 200 A { source available 10 kA   run 20 m of 4/0 Al triplex   earth water-pipe by 4 Cu   earth rods by 6 Cu }
        panel P from main { bus %d A   slots 40   bonded   %s
          main breaker %d A 22 kA
          17+19  100 A  two-pole  X
          18+20  100 A  two-pole  Y
          21+23  100 A  two-pole  Z
          %s
        }
        panel X from P/17 by 3 m of 1-1-1-6 Cu SER { bus 100 A slots 8 }
        panel Y from P/18 by 3 m of 1-1-1-6 Cu SER { bus 100 A slots 8 }
        panel Z from P/21 by 3 m of 1-1-1-6 Cu SER { bus 100 A slots 8 }
        %s
        """.formatted(bus, panel, main, ways, more);
  }

  private static List<String> found(String text) {
    List<Finding> findings = new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"))
        .findings();
    assertThat(findings).noneMatch(f -> f.rule().equals("unit-as-name") || f.rule().equals("unknown-name"));
    return findings.stream().filter(f -> RULES.contains(f.rule())).map(f -> f.rule() + " " + f.subject().orElse("")).sorted().toList();
  }

  private static String solar(String from, String cable, int amperes) {
    return "branch pv by " + cable + " { " + from + " --5 m-- store.pv }\nroom store { pv: solar inverter " + amperes + " A }\n";
  }

  /**
   * solardesignlab.com, solar 120 percent rule: a 200 A bus with a 200 A main takes a 40 A breaker and an inverter of 32 A (7.6 kW) at its
   * far end; 1.25 × 32 A + 200 A = 240 A.
   */
  @ParameterizedTest
  @CsvSource({"32, 37+39, ''", "33, 37+39, source-breaker-small|source-overloads-bus", "32, 3+5, source-not-at-end"})
  void ofTheBusAFifthMore(int amperes, String slots, String expected) {
    String plan = house(200, 200, "", slots + "  40 A  two-pole back-fed  pv", solar("P", "8/2 NM-B", amperes));
    assertThat(found(plan)).extracting(f -> f.split(" ")[0]).containsExactly(expected.isEmpty() ? new String[0] : expected.split("\\|"));
  }

  /**
   * forums.mikeholt.com 2580629, page 2: 64 A of inverters on a 200 A main need a bus of 280 A by 705.12(B)(1), where they may be anywhere,
   * and of 233 A by (B)(2) at the end of it.
   */
  @ParameterizedTest
  @CsvSource({"280, 3+5, true", "279, 3+5, false", "234, 37+39, true", "233, 37+39, false"})
  void twoInvertersOnOneBus(int bus, String slots, boolean lawful) {
    String plan = house(bus, 200, "", slots + "  80 A  two-pole back-fed  pv", solar("P", "2/2 NM-B", 64));
    assertThat(found(plan).isEmpty()).isEqualTo(lawful);
  }

  /** 705.12(B)(4): either end of a center-fed panel, at 120 % of its bus, in dwellings; not both ends. */
  @Test
  void centerFedAtOneEnd() {
    String both = "branch pw by 12/2 NM-B { P --5 m-- attic.pw }\nroom attic { pw: solar inverter 8 A }\n";
    String one = "1+3  30 A  two-pole back-fed  pv";
    assertThat(found(house(200, 200, "center-fed", one, solar("P", "10/2 NM-B", 20)))).isEmpty();
    assertThat(found(house(200, 200, "center-fed", "37+39  30 A  two-pole back-fed  pv", solar("P", "10/2 NM-B", 20)))).isEmpty();
    assertThat(found(house(200, 200, "", one, solar("P", "10/2 NM-B", 20)))).containsExactly("source-not-at-end P/1+3");
    assertThat(found(house(200, 200, "center-fed", one + "\n37+39  15 A  two-pole back-fed  pw", solar("P", "10/2 NM-B", 20) + both)))
        .containsExactly("source-not-at-end P/1+3", "source-not-at-end P/37+39");
    assertThat(found(house(200, 200, "center-fed", "9+11  30 A  two-pole back-fed  pv", solar("P", "10/2 NM-B", 20))))
        .containsExactly("source-not-at-end P/9+11");
  }

  /**
   * forums.mikeholt.com 2563593, cases 1, 3 and 4: a subpanel without a main, bus 125 A, fed at 100 A, takes a 30 A or a 50 A solar breaker
   * (100 + 50 = 150 A). Of 50 A the main panel with bus and main of 200 A does not (250 A of 240 A), with a main of 175 A it does.
   */
  @ParameterizedTest
  @CsvSource({"24, 30, 200, ''", "40, 50, 200, source-overloads-bus P", "40, 50, 175, ''"})
  void behindASubpanel(int amperes, int breaker, int main, String expected) {
    String sub = "panel S from P/37 by 3 m of 1-1-1-6 Cu SER { bus 125 A slots 8\n 5+7 " + breaker + " A two-pole back-fed pv\n"
        + "1+3 100 A two-pole R\n 2+4 100 A two-pole T }\n"
        + "panel R from S/1 by 3 m of 1-1-1-6 Cu SER { bus 100 A slots 8 }\n"
        + "panel T from S/2 by 3 m of 1-1-1-6 Cu SER { bus 100 A slots 8 }\n";
    String plan = house(200, main, "", "37+39  100 A  two-pole  S", sub + solar("S", "6/2 NM-B", amperes));
    assertThat(found(plan)).containsExactly(expected.isEmpty() ? new String[0] : new String[]{expected});
  }

  /** The feeder of a panel with sources comes in at the end of the bus as they would, wherever in the house they are. */
  @Test
  void theFeederOfASubpanelWithSourcesIsASource() {
    String sub = "panel S from P/1 by 3 m of 1-1-1-6 Cu SER { bus 125 A slots 8\n 5+7 30 A two-pole back-fed pv }\n";
    assertThat(found(house(200, 200, "", "1+3  100 A  two-pole  S", sub + solar("S", "10/2 NM-B", 24))))
        .containsExactly("source-not-at-end P/1+3");
  }

  /**
   * iaeimagazine.org 2020-09, "It's always the basics", photo 1: an inverter of 7.6 kW needs a 40 A breaker, for which 10 AWG, with 30 A at
   * most, is too thin. 31.7 A × 1.25 = 39.6 A.
   */
  @Test
  void conductorsOfAnInverter() {
    String ways = "37+39  40 A  two-pole back-fed  pv";
    String inverter = "branch pv by %s { P --5 m-- store.pv }\nroom store { pv: solar inverter 7.6 kW }\n";
    assertThat(found(house(200, 200, "", ways, inverter.formatted("8/2 NM-B")))).isEmpty();
    assertThat(found(house(200, 200, "", ways.replace("40 A", "35 A"), inverter.formatted("8/2 NM-B"))))
        .containsExactly("source-breaker-small store.pv");
    List<String> thin = new Compiler(SourceReader.FROM_DISK)
        .compile(new Source("house.wattle", house(200, 200, "", ways, inverter.formatted("10/2 NM-B"))), Path.of("house.wattle")).findings()
        .stream().map(Finding::rule).toList();
    assertThat(thin).contains("source-conductors-thin").contains("breaker-above-conductor");
  }

  /** On two legs of a wye 4.9 kW are 23.6 A, and 29.4 A by 705.28; 5 kW are 24.04 A and 30.05 A. By hand. */
  @ParameterizedTest
  @CsvSource({"4.9 kW, ''", "5 kW, source-breaker-small store.pv"})
  void onTwoLegsOfAWye(String rating, String expected) {
    String plan = house(400, 200, "", "37+39  30 A  two-pole back-fed  pv",
        "branch pv by 10/2 NM-B { P --5 m-- store.pv }\nroom store { pv: solar inverter " + rating + " 208 V }\n")
        .replace("120/240 V", "120/208 V");
    assertThat(found(plan)).containsExactly(expected.isEmpty() ? new String[0] : new String[]{expected});
  }

  /** 705.11(B), as mayfield.energy code corner 705.11 tells it: no smaller than 6 AWG copper or 4 AWG aluminum ahead of the main. */
  @ParameterizedTest
  @CsvSource({"6 Cu, true", "8 Cu, false", "4 Al, true", "6 Al, false"})
  void aheadOfTheMain(String size, boolean lawful) {
    String disconnect = "panel D from main by 2 m of 1 in PVC with 3 x " + size
        + " THWN-2 { bus 60 A slots 4 bonded\n main fuse 40 A 200 kA\n"
        + "1+3 40 A two-pole back-fed pv }\n";
    assertThat(found(house(200, 200, "", "", disconnect + solar("D", "8/2 NM-B", 32))).isEmpty()).isEqualTo(lawful);
  }
}
