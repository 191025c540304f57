package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Finding;
import wattle.finding.Source;

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
        PLAN);

    assertThat(findings).extracting(Finding::rule).containsExactly("a", "internal-error", "internal-error", "b");
    assertThat(findings.get(1).headline()).isEqualTo("available fault current not checked: internal error");
    assertThat(findings.get(1).reason()).contains("ArrayIndexOutOfBoundsException").contains("All other checks were made");
  }
}
