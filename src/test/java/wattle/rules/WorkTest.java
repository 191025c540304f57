package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.figures.HouseFigures;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** Whom a rule binds: new work, or all of it. */
class WorkTest {
  private static final String HOUSE = """
      plan "Sample"
      service main 120/240 V 100 A { source transformer 25 kVA 2 %%   run 20 m of 4 Cu triplex   earth rods by 6 Cu }
      panel P from main existing { bus 100 A   slots 8   bonded   main breaker 100 A 10 kA
        1  15 A %s  a
      }
      branch a by 14/2 NM-B %s { P --4 m-- hall.r }
      room hall existing { r: receptacle %s }
      """;

  private static List<String> found(String plan, String rule) {
    Source source = new Source("sample.wattle", plan + rule);
    Compilation bound = new Compiler(SourceReader.FROM_DISK).structure(source, Path.of("sample.wattle"));
    return RuleBook.of(bound.library()).judge(new HouseFigures(bound.house(), bound.library()), Pace.WHOLE).findings().stream()
        .map(Finding::rule)
        .toList();
  }

  private static String rule(String kind, String clause) {
    return "rule odd \"Odd\" {\n  for each " + kind + " x\n  " + clause
        + "\n  require x.name is \"?\"\n  otherwise error \"odd\"\n  at x\n}\n";
  }

  private static String house(String breaker, String branch, String device) {
    return HOUSE.formatted(breaker, branch, device);
  }

  @Test
  void newWorkIsWhatIsNewItself() {
    assertThat(found(house("", "existing", ""), rule("device", "for new work"))).isEmpty();
    assertThat(found(house("", "existing", "new"), rule("device", "for new work"))).containsExactly("odd");
    assertThat(found(house("", "", ""), rule("branch", "for new work"))).containsExactly("odd");
    assertThat(found(house("new", "existing", ""), rule("breaker", "for new work"))).containsExactly("odd");
    assertThat(found(house("", "existing", ""), rule("panel", "for new work"))).isEmpty();
  }

  @Test
  void allWorkIsOldAndNewButNotWhatGoes() {
    assertThat(found(house("", "existing", ""), rule("device", "for all work"))).containsExactly("odd");
    assertThat(found(house("", "existing", "to-remove"), rule("device", "for all work"))).isEmpty();
    assertThat(found(house("", "existing", "new"), rule("branch", "for all work"))).containsExactly("odd");
  }

  @Test
  void whatIsExtendedIsNewWorkWhereTheRuleSaysSo() {
    String extended = rule("branch", "for new work where x.status is \"new\" or some d in x.devices has d.status is \"new\"");
    assertThat(found(house("", "existing", "new"), extended)).containsExactly("odd");
    assertThat(found(house("", "existing", ""), extended)).isEmpty();
    String block = "dwelling { floor-area 90 m2 }\n";
    assertThat(found(block + house("", "existing", ""), rule("dwelling", "for new work where some d in x.devices has d.status is \"new\"")))
        .isEmpty();
    assertThat(
        found(block + house("", "existing", "new"), rule("dwelling", "for new work where some d in x.devices has d.status is \"new\"")))
        .containsExactly("odd");
  }

  @Test
  void everyRuleSaysWhomItBinds() {
    assertThat(found(house("", "existing", ""), rule("device", ""))).containsExactly("rule-incomplete");
    assertThat(found(house("", "existing", ""), rule("dwelling", "for new work"))).containsExactly("rule-incomplete");
    assertThat(found(house("", "existing", ""), rule("dwelling", "for all work"))).isEmpty();
  }

  /**
   * Rules of old work alone: 250.140, and 250.32(B)(1) exception 1, which leave three wires only where they are already there; 240.51(B),
   * which leaves fuse holders; 406.4(D), on what is put in the place of an old receptacle.
   */
  private static final Set<String> OF_OLD_WORK = Set.of("range-on-three-wires", "old-feeder-bond-barred", "metal-grounded-by-neutral",
      "edison-base-kept", "arc-fault-missing-replacement");

  /** No rule hides in a condition whether it is asked of existing work. */
  @TestFactory
  Stream<DynamicTest> noConditionSpeaksOfStatus() {
    return StandardLibrary.packNames().stream()
        .flatMap(
            p -> RuleLoader.load(StandardLibrary.written(List.of("common", p)).value()).value().stream().filter(r -> r.pack().equals(p)))
        .map(rule -> DynamicTest.dynamicTest(rule.pack() + " " + rule.name(), () -> {
          String filter = rule.tree().scope().orElseThrow().filter().map(f -> f.span().text()).orElse("");
          if (!OF_OLD_WORK.contains(rule.name())) {
            assertThat(filter).doesNotContain("status");
          }
          assertThat(RulePage.text(rule)).containsPattern("\\n  for (all|new) work");
        }));
  }
}
