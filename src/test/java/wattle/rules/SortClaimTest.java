package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import java.nio.file.Path;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** Rules that are asked of a sort once find what they find when they are asked of each thing. */
class SortClaimTest {
  static Stream<Path> plans() {
    return Stream.concat(Golden.plans("examples").stream(),
        Golden.plans("src/test/resources/plans/canada").stream());
  }

  @ParameterizedTest
  @MethodSource("plans")
  void aSortHidesNoFinding(Path plan) throws Exception {
    Compilation compiled = new Compiler(SourceReader.FROM_DISK).structure(plan);
    List<Rule> rules = RuleLoader.load(compiled.library()).value();
    assertThat(rules.stream().filter(r -> r.sort().isPresent())).hasSizeGreaterThan(10);
    List<Rule> eachAsked = rules.stream().map(SortClaimTest::withoutSort).toList();
    assertThat(shown(RuleBook.run(compiled.figures(), rules))).isEqualTo(shown(RuleBook.run(compiled.figures(), eachAsked)));
  }

  private static Rule withoutSort(Rule r) {
    return new Rule(r.name(), r.pack(), r.title(), r.severity(), r.kind(), r.work(), r.size(), r.filter(), Optional.empty(), r.lets(),
        r.letsFirst(), r.requirements(), r.telling(), r.reason(), r.citations(), r.accept(), r.reject(), r.span(), r.tree());
  }

  private static List<String> shown(List<Finding> findings) {
    return findings.stream().map(f -> f.rule() + " " + f.headline()).toList();
  }
}
