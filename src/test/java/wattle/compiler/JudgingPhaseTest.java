package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.rules.Pace;

class JudgingPhaseTest {
  private static final Source PLAN = new Source("house.wattle", "plan \"House\"\n");

  private static Finding found(String rule) {
    return Finding.error(rule, rule).at(PLAN.span(0, 4), "here").build();
  }

  private static List<Finding> tooDeep() {
    return tooDeep();
  }

  @Test
  void aBugInOnePhaseCostsItsOwnFindingsAndIsOne() {
    List<Finding> findings = JudgingPhase.all(
        List.of(
            new JudgingPhase("rules", () -> List.of(found("a"))),
            new JudgingPhase("available fault current", () -> {
              throw new ArrayIndexOutOfBoundsException(-1);
            }),
            new JudgingPhase("expectations", JudgingPhaseTest::tooDeep),
            new JudgingPhase("calculated load", () -> List.of(found("b")))),
        PLAN, Pace.WHOLE);

    assertThat(findings).extracting(Finding::rule).containsExactly("a", "internal-error", "internal-error", "b");
    assertThat(findings.get(1).headline()).isEqualTo("available fault current not checked: internal error");
    assertThat(findings.get(1).reason()).contains("ArrayIndexOutOfBoundsException").contains("All other checks were made");
  }

  @Test
  void aJudgingThatNobodyWaitsForStopsBeforeItsNextPhase() {
    AtomicBoolean wanted = new AtomicBoolean(true);
    List<String> begun = new ArrayList<>();
    List<JudgingPhase> phases = List.of(
        new JudgingPhase("rules", () -> {
          begun.add("rules");
          wanted.set(false); // a key is struck
          return List.of(found("a"));
        }),
        new JudgingPhase("expectations", () -> {
          begun.add("expectations");
          return List.of();
        }));

    assertThatThrownBy(() -> JudgingPhase.all(phases, PLAN, Pace.beside(wanted::get))).isInstanceOf(CancellationException.class);
    assertThat(begun).containsExactly("rules");
  }

  @Test
  void rulesStopAtTheThingTheyAreAt() {
    Compiler compiler = new Compiler(SourceReader.FROM_DISK);
    Path plan = Path.of("house.wattle");
    Compilation structure = compiler.structure(new Source(plan.toString(), "plan \"House\"\nuse code us-2023\nroom den is office {\n"
        + "  lamp: light 12 W\n  fan: light 12 W\n  sw: switch for lamp\n}\n"), plan);
    AtomicInteger asked = new AtomicInteger();

    assertThatThrownBy(() -> compiler.judgments(structure, Pace.beside(() -> asked.incrementAndGet() < 5)))
        .isInstanceOf(CancellationException.class);
    assertThat(asked).hasValue(5);
  }
}
