package wattle.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Mender;
import wattle.emit.document.findings.TextFindings;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Source;
import wattle.library.StandardLibrary;
import wattle.read.SourceReader;

/** Each plan of the broken set gives exactly the findings beside it; a pair dropped in is a test more. */
class FindingsGoldenTest {
  private static final List<String> FOLDERS = List.of("examples/broken", "examples/kitchen-renovation", "examples/workshop",
      "examples/marlow-croft", "examples/hollin-farm", "examples/tern-court", "examples/mill-quay", "examples/weir-lane",
      "src/test/resources/plans/findings");

  private static final Set<String> RULES = StandardLibrary.library(StandardLibrary.packNames()).rules().keySet();

  private static List<Path> plans() {
    return FOLDERS.stream().filter(f -> Files.isDirectory(Path.of(f))).flatMap(f -> Golden.plans(f).stream()).toList();
  }

  private static Compilation compile(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan);
  }

  @TestFactory
  Stream<DynamicTest> findingsAreTheGoldenOnes() {
    return plans().stream()
        .map(
            plan -> DynamicTest.dynamicTest(
                plan.toString(),
                () -> {
                  List<Finding> findings = compile(plan).facts();
                  String text = new TextFindings(false).render(findings);
                  Golden.check(Golden.beside(plan, "findings"), text);
                }));
  }

  @Test
  void everyGoldenFileHasItsPlan() throws IOException {
    List<Path> lone = new ArrayList<>();
    for (String folder : FOLDERS) {
      if (Files.isDirectory(Path.of(folder))) {
        try (Stream<Path> files = Files.walk(Path.of(folder))) {
          files
              .filter(f -> f.toString().endsWith(".findings"))
              .filter(f -> !Files.exists(Path.of(f.toString().replaceFirst("\\.findings$", ".wattle"))))
              .forEach(lone::add);
        }
      }
    }
    assertThat(lone).isEmpty();
    assertThat(plans()).hasSizeGreaterThan(25);
  }

  /** The broken set is one file for each fault: its name is the rule that it breaks, and breaks once. */
  @TestFactory
  Stream<DynamicTest> aBrokenPlanBreaksTheRuleOfItsNameOnce() {
    return Golden.plans("examples/broken").stream()
        .filter(plan -> !plan.endsWith("ten-mistakes.wattle"))
        .map(
            plan -> DynamicTest.dynamicTest(
                plan.toString(),
                () -> {
                  String name = plan.getFileName().toString().replaceFirst("\\.wattle$", "");
                  // Rules of the packs may have more to say of so small a plan, and what it lacks for a computation is said too;
                  // both have tests of their own.
                  assertThat(compile(plan).findings())
                      .extracting(Finding::rule)
                      .filteredOn(rule -> !RULES.contains(rule))
                      .filteredOn(rule -> rule.equals(name) || !rule.endsWith("-unknown") || !Compiler.COMPUTED.contains(rule))
                      .containsExactly(name);
                }));
  }

  @Test
  void tenMistakesGiveTenFindings() throws SourceReader.Unreadable {
    List<Finding> findings = compile(Path.of("examples/broken/ten-mistakes.wattle")).findings();
    assertThat(findings).hasSize(10);
    assertThat(findings).extracting(f -> f.place().orElseThrow().span().line()).doesNotHaveDuplicates();
  }

  /** A safe fix, applied, removes its finding and adds none. */
  @TestFactory
  Stream<DynamicTest> safeFixesMend() {
    return plans().stream()
        .map(
            plan -> DynamicTest.dynamicTest(
                plan.toString(),
                () -> {
                  Compilation before = compile(plan);
                  for (Finding finding : before.findings()) {
                    for (Fix fix : finding.fixes()) {
                      if (fix.safety() == Fix.Safety.SAFE && finding.fixes().size() == 1) {
                        Source mended = new Source(plan.toString(), Mender.apply(before.source().text(), fix.edits()));
                        List<Finding> after = new Compiler(SourceReader.FROM_DISK).compile(mended, plan).findings();
                        assertThat(after).as(fix.order()).hasSize(before.findings().size() - 1);
                      }
                    }
                  }
                }));
  }
}
