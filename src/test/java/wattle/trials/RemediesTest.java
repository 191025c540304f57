package wattle.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** What a person is told to do where a figure fails: something in the house, never to expect less. */
class RemediesTest {
  private static List<Finding> of(String rule, String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("r.wattle", "plan \"r\"\n" + plan), Path.of("r.wattle")).findings()
        .stream()
        .filter(f -> f.rule().equals(rule)).toList();
  }

  private static final String LONG = """
      service main 120/240 V 100 A { run 30 m of 2 Al triplex  earth rods by 6 Cu }
      panel P from main { bus 100 A slots 8 bonded
        main breaker 100 A 22 kA
        1  20 A  saw
      }
      branch saw by 12/2 NM-B { P --60 m-- shop.saw }
      room shop is workshop { saw: receptacle 20 A 1.9 kW }
      trial leak { lift ground at shop.saw leaking 5 kohm }
      """;

  private static String remedy(String expectation) {
    List<Finding> found = of("expectation-failed", LONG + expectation + "\n");
    assertThat(found).as(expectation).hasSize(1);
    List<String> fixes = found.get(0).fixes().stream().map(Fix::order).toList();
    assertThat(fixes).as(expectation).isNotEmpty().noneMatch(f -> f.contains("expect"));
    return fixes.get(0);
  }

  @Test
  void aFailedExpectationIsMendedInTheHouse() {
    assertThat(remedy("expect voltage at shop.saw is at least 118 V")).contains("larger wire");
    assertThat(remedy("expect voltage fall at shop.saw is at most 1 %")).contains("larger wire");
    assertThat(remedy("expect hot of saw is at most 5 A")).contains("take load off");
    assertThat(remedy("expect neutral of saw is at most 5 A")).contains("take load off");
    assertThat(remedy("expect current of shop.saw is 3 A")).contains("what differs");
    assertThat(remedy("expect touch voltage at shop.saw is at most 10 V in leak")).contains("ground that trips the breaker");
    assertThat(remedy("expect P/1 trips in leak")).contains("protection that opens");
  }

  @Test
  void hotsWhoseLegsAreStatedAreNotSentToSlotsOfTheSameLeg() {
    String plan = """
        service main 120/240 V 60 A existing { earth rods by 6 Cu }
        panel F from main existing { bus 60 A slots 4 bonded order one-column
          main fuse 60 A 10 kA
          3  20 A  fuse leg %s  wet
          4  20 A  fuse leg %s  wet
        }
        branch wet by 12/3 NM-B existing { F --5 m-- bath.heater --4 m-- wash.machine }
        room bath existing { heater: wall heater 1.5 kW 120 V on red }
        room wash existing { machine: washer 10 A on black }
        """;
    assertThat(of("shared-neutral-same-leg", plan.formatted("A", "A"))).singleElement()
        .satisfies(
            f -> assertThat(f.fixes().get(0).order()).doesNotContain("3+4").contains("another leg").contains("neutral for each hot"));
    assertThat(of("shared-neutral-two-breakers", plan.formatted("A", "B"))).singleElement()
        .satisfies(f -> assertThat(f.fixes().get(0).order()).doesNotContain("breaker").contains("takes both out together"));
  }
}
