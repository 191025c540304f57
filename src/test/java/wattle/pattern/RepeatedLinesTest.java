package wattle.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Mark;
import wattle.finding.Source;
import wattle.model.Panel;
import wattle.read.SourceReader;

/** A slot line that stands for several: a mistake in it is one, however far its numbers go. */
class RepeatedLinesTest {
  private static Compilation compiled(int last) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("lines.wattle", """
        plan "Lines"
        service main 120/240 V 400 A { source available 10 kA }
        panel P from main {
          bus 400 A   slots 12   bonded
          main breaker 400 A 22 kA
          (2 * n - 1)  20 A  r{n}  "Room {n}" for n from 1 to %d
        }
        pattern room(n) {
          branch r{n} by 12/2 NM-B { P --5 m-- a{n}.c }
          room a{n} { c: receptacle }
        }
        place room(n) as r for n from 1 to 6
        """.formatted(last)), Path.of("lines.wattle"));
  }

  private static List<Finding> of(String rule, Compilation plan) {
    return plan.findings().stream().filter(f -> f.rule().equals(rule)).toList();
  }

  @Test
  void slotsThatThePanelDoesNotHaveAreToldOnceFromTheFirstOn() {
    assertThat(of("slot-out-of-range", compiled(6))).isEmpty();
    Compilation plan = compiled(60);
    assertThat(of("slot-out-of-range", plan)).singleElement().satisfies(f -> {
      assertThat(f.headline()).isEqualTo("panel 'P' has no slot 13");
      assertThat(f.related()).extracting(Mark::words).contains("n is 7 here; the same for 53 more");
    });
  }

  @Test
  void aRepetitionThatGoesBeyondAllSlotsIsToldAndReadNoFurther() {
    assertThat(SupplyPlacer.MOST_SLOTS).isEqualTo(Panel.MOST_SLOTS);
    assertThat(of("count-out-of-range", compiled(2 * Panel.MOST_SLOTS))).isEmpty();
    Compilation plan = compiled(10_000);
    assertThat(of("count-out-of-range", plan)).singleElement()
        .satisfies(f -> assertThat(f.headline()).isEqualTo("a repetition from 1 to 10000 is too long"));
    assertThat(plan.house().panels().get("P").breakers()).hasSize(2 * Panel.MOST_SLOTS);
    assertThat(of("slot-out-of-range", plan)).hasSize(1);
  }
}
