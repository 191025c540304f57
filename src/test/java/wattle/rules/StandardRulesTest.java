package wattle.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Mender;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/**
 * Every rule that ships is its own test: its accepted plan passes, its rejected plan raises it once and nothing more. One rule is
 * run alone with {@code -Drule=NAME}.
 */
class StandardRulesTest {
  private static final Map<String, Checked<List<Rule>>> LOADED = new HashMap<>();
  private static final Compiler COMPILER = new Compiler(SourceReader.FROM_DISK);
  private static final Map<String, Compilation> BOUND = new HashMap<>();

  private static List<Rule> rules(String pack) {
    return LOADED.computeIfAbsent(pack, p -> RuleLoader.load(StandardLibrary.written(List.of("common", p)).value())).value();
  }

  private static Stream<Rule> allRules() {
    return StandardLibrary.packNames().stream().flatMap(p -> rules(p).stream().filter(r -> r.pack().equals(p)));
  }

  /** A test of each rule, or of the one that was asked for, whose failure names it. */
  private static Stream<DynamicTest> ofEach(Predicate<Rule> which, Consumer<Rule> test) {
    Optional<String> asked = Optional.ofNullable(System.getProperty("rule"));
    asked.ifPresent(name -> assertThat(allRules().map(Rule::name)).as("names of rules").contains(name));
    return allRules().filter(r -> asked.isEmpty() || asked.get().equals(r.name())).filter(which)
        .map(rule -> DynamicTest.dynamicTest(rule.pack() + " " + rule.name(), () -> {
          try {
            test.accept(rule);
          } catch (AssertionError | RuntimeException e) {
            throw new AssertionError("rule " + rule.name() + " of " + rule.pack() + ": " + e.getMessage(), e);
          }
        }));
  }

  /** A sample as it is bound; most are asked for by several tests. */
  private static Compilation bind(String sample, String pack) {
    return BOUND.computeIfAbsent(Sample.complete(sample, pack),
        text -> COMPILER.structure(new Source("sample.wattle", text), Path.of("sample.wattle")));
  }

  /** How often each rule is raised; a plan that cannot be bound fails the test. */
  private static Map<String, Long> raised(String sample, Rule rule, List<Rule> rules) {
    Compilation bound = bind(sample, rule.pack());
    assertThat(bound.findings()).as(rule.name() + ": the sample\n" + sample).filteredOn(f -> f.severity() == Severity.ERROR).isEmpty();
    return RuleBook.run(bound.figures(), rules).stream().map(Finding::rule).collect(Collectors.groupingBy(n -> n, Collectors.counting()));
  }

  private static List<Rule> rulesOfItsPlan(Rule rule) {
    return rules(rule.pack().equals("common") ? "us-2023" : rule.pack());
  }

  @Test
  void allRulesLoad() {
    for (String pack : StandardLibrary.packNames()) {
      assertThat(RuleLoader.load(StandardLibrary.written(List.of("common", pack)).value()).findings()).as(pack).isEmpty();
    }
    assertThat(allRules().map(Rule::name).distinct()).hasSizeGreaterThanOrEqualTo(80);
  }

  @TestFactory
  Stream<DynamicTest> acceptPassesAndRejectIsRaisedOnce() {
    return ofEach(r -> true, rule -> {
      assertThat(rule.accept()).as("an accept sample").isPresent();
      assertThat(rule.reject()).as("a reject sample").isPresent();
      assertThat(rule.reject()).as("the edit of the reject changes something").isNotEqualTo(rule.accept());
      assertThat(rule.reason()).as("a because line").isNotEmpty();
      assertThat(rule.citations()).as("a source").isNotEmpty();
      assertThat(rule.title()).as("a title").isNotEmpty();
      Map<String, Long> accepted = raised(rule.accept().get(), rule, rulesOfItsPlan(rule));
      assertThat(accepted).as("accept").doesNotContainKey(rule.name());
      Map<String, Long> rejected = new HashMap<>(raised(rule.reject().get(), rule, rulesOfItsPlan(rule)));
      assertThat(rejected.remove(rule.name())).as("reject").isEqualTo(1L);
      assertThat(rejected).as("nothing else is raised by the edit").isEqualTo(accepted);
    });
  }

  /** What an exception of the article allows raises nothing. */
  @TestFactory
  Stream<DynamicTest> exceptionsPass() {
    return ofEach(r -> r.exceptions().stream().anyMatch(e -> !e.denied()), rule -> rule.exceptions().stream().filter(e -> !e.denied())
        .forEach(e -> assertThat(raised(e.plan().orElseThrow().value(), rule, rulesOfItsPlan(rule))).as(e.article().value())
            .doesNotContainKey(rule.name())));
  }

  /** Taking any one requirement away must let the reject pass: no condition is idle. */
  @TestFactory
  Stream<DynamicTest> everyConditionMatters() {
    return ofEach(r -> true, rule -> assertThat(raised(rule.reject().orElseThrow(), rule, List.of(rule.withoutRequirements()))).isEmpty());
  }

  @Test
  void manyRulesOfferAnEdit() {
    assertThat(allRules().filter(StandardRulesTest::statesAnEdit)).hasSizeGreaterThanOrEqualTo(20);
  }

  private static boolean statesAnEdit(Rule rule) {
    return rule.telling().get().fixes().stream().anyMatch(f -> !f.edits().isEmpty());
  }

  /** An edit that a rule offers makes its reject pass, and raises nothing that the accepted plan does not raise. */
  @TestFactory
  Stream<DynamicTest> editsMendTheReject() {
    return ofEach(StandardRulesTest::statesAnEdit, rule -> {
      Compilation bound = bind(rule.reject().orElseThrow(), rule.pack());
      Finding finding = RuleBook.run(bound.figures(), List.of(rule)).get(0);
      String rejected = bound.house().source().text();
      Map<String, Long> accepted = raised(rule.accept().orElseThrow(), rule, rulesOfItsPlan(rule));
      for (int i = 0; i < rule.telling().get().fixes().size(); i++) {
        Fix fix = finding.fixes().get(i);
        assertThat(fix.edits()).as(fix.order()).hasSameSizeAs(rule.telling().get().fixes().get(i).edits());
        if (!fix.edits().isEmpty()) {
          assertThat(fix.safety()).isEqualTo(Fix.Safety.OFFERED);
          String mended = Mender.apply(rejected, fix.edits());
          assertThat(raised(mended, rule, rulesOfItsPlan(rule))).as(mended).isEqualTo(accepted);
        }
      }
    });
  }

  @TestFactory
  Stream<DynamicTest> everyFindingIsWhole() {
    return ofEach(r -> true, rule -> {
      Compilation bound = bind(rule.reject().orElseThrow(), rule.pack());
      List<Finding> found = RuleBook.run(bound.figures(), List.of(rule));
      for (Finding finding : found) {
        assertThat(finding.place()).as("a place").isPresent();
        assertThat(finding.headline()).as("headline").doesNotContain("?").doesNotEndWith(".").isNotEmpty();
        assertThat(finding.reason()).as("reason").isNotEmpty().doesNotContain("?");
        assertThat(finding.fixes()).as("a fix").isNotEmpty();
        assertThat(finding.fixes().get(0).order()).doesNotContain("?");
      }
    });
  }
}
