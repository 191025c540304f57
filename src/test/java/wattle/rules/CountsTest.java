package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** Counts and sums that are compared with no parentheses around them. */
class CountsTest {
  /** A den with two receptacles and a light of 40 W on a branch of its own. */
  private static List<Finding> under(String claim) {
    String plan = """
        plan "Counts"
        service main 120/240 V 100 A { source available 10 kA   earth water-pipe by 4 Cu   earth rods by 6 Cu }
        panel P from main { bus 100 A   slots 20   bonded
          main breaker 100 A 10 kA
          1 15 A arc-fault b "Den"
        }
        branch b by 14/2 NM-B { P --5 m-- den.a --2 m-- den.b --2 m-- den.lamp }
        room den is living { a: receptacle tamper-resistant   b: receptacle tamper-resistant   lamp: light 40 W }
        rule tried "Tried" {
          for each room r
          for all work
          require %s
          otherwise error "refused"
          at r "here"
          source "common practice"
          because "It is tried."
        }
        """;
    Source source = new Source("counts.wattle", plan.formatted(claim));
    return new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("counts.wattle")).findings();
  }

  private record Case(String claim, boolean holds) {}

  @TestFactory
  Stream<DynamicTest> theLastComparisonIsOfTheCount() {
    String receptacles = "count of d in r.devices where d.family is \"receptacle\"";
    return Stream.of(
        new Case(receptacles + " is at least 2", true),
        new Case(receptacles + " is at least 3", false),
        new Case("(" + receptacles + ") is at least 3", false),
        new Case(receptacles + " and d.traits includes \"tamper-resistant\" is 2", true),
        new Case(receptacles + " and d.traits includes \"weatherproof\" is 2", false),
        new Case(receptacles + " or d.family is \"light\" is at least 3", true),
        new Case(receptacles + " is at least 2 and r.use is \"living\"", true),
        new Case(receptacles + " is at least 2 and r.use is \"kitchen\"", false),
        new Case(receptacles + " is at least 3 or r.use is \"living\"", true),
        new Case("sum of d.load for d in r.devices where d.family is \"light\" is at most 50 VA", true),
        new Case("sum of d.load for d in r.devices where d.family is \"light\" is above 50 VA", false),
        new Case("most of d.load for d in r.devices where d.height is not stated is at least 40 W", true),
        new Case("if r.use is \"living\" then " + receptacles + " is at least 3", false))
        .map(c -> DynamicTest.dynamicTest(c.claim, () -> {
          List<Finding> found = under(c.claim);
          assertThat(found).extracting(Finding::rule).isEqualTo(c.holds ? List.of() : List.of("tried"));
        }));
  }

  @Test
  void aTruthBeforeTheComparisonIsTold() {
    List<Finding> found = under("count of d in r.devices where d.outlet is at least 2");
    assertThat(found).extracting(Finding::headline).containsExactly("what is true or false is compared with a figure");
    assertThat(found.get(0).fixes().get(0).order()).contains("parentheses");
    assertThat(under("(count of d in r.devices where d.outlet) is at least 2")).isEmpty();
  }

  @Test
  void orBesideAndIsRefusedWithoutParentheses() {
    List<Finding> found = under("r.use is \"den\" or r.use is \"living\" and r.name is \"den\"");
    assertThat(found).extracting(Finding::rule).contains("rule-or-beside-and");
    Finding refused = found.stream().filter(f -> f.rule().equals("rule-or-beside-and")).findFirst().orElseThrow();
    assertThat(refused.place().orElseThrow().span().text()).isEqualTo("r.use is \"living\" and r.name is \"den\"");
    assertThat(refused.fixes()).hasSize(1);
    for (String clear : List.of(
        "r.use is \"den\" or (r.use is \"living\" and r.name is \"den\")",
        "(r.use is \"den\" or r.use is \"living\") and r.name is \"den\"",
        "r.use is \"living\" and not (r.use is \"den\" or r.name is \"x\")")) {
      assertThat(under(clear)).as(clear).extracting(Finding::rule).doesNotContain("rule-or-beside-and");
    }
  }
}
