package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;

/** The pages of structure findings show a fault and its mend: the faulty plan has the finding, the sound one has none of structure. */
class StructureSampleTest {
  private static final Path PATH = Path.of("sample.wattle");

  private static Set<String> found(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(PATH.toString(), plan), PATH).findings().stream().map(Finding::rule)
        .collect(Collectors.toSet());
  }

  @Test
  void thePlanThatTheyAreMadeOfIsSound() {
    String plan = StructureSample.all().values().iterator().next().plan();
    assertThat(found(plan)).doesNotContainAnyElementsOf(StructurePages.names());
    assertThat(StructureSample.all()).hasSizeGreaterThan(90);
  }

  @TestFactory
  Stream<DynamicTest> theFaultyPlanHasTheFinding() {
    return StructureSample.all().values().stream().map(sample -> DynamicTest.dynamicTest(sample.name(), () -> {
      int at = sample.plan().indexOf(sample.sound());
      assertThat(at).as("the sound text is in the plan").isNotNegative();
      assertThat(sample.plan().indexOf(sample.sound(), at + 1)).as("and once").isNegative();
      assertThat(found(sample.faultyPlan())).contains(sample.name());
      String page = StructurePages.of(sample.name()).orElseThrow();
      assertThat(page).contains("does not pass:\n  ").contains("passes:\n  ");
      sample.sound().lines().filter(l -> !l.isBlank()).forEach(l -> assertThat(page).contains(l));
      sample.faulty().lines().filter(l -> !l.isBlank()).forEach(l -> assertThat(page).contains(l));
    }));
  }

  /** Named by the finding that they show, so that a page and its name cannot part. */
  @Test
  void eachIsOfAFindingThatHasAPage() {
    assertThat(StructurePages.names()).containsAll(StructureSample.all().keySet());
  }
}
