package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.acceptance.FilledSheet;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.worksheet.Objection;

/**
 * The pages of structure findings show a fault and its mend: the faulty plan has the finding, the sound one has none of structure. What a
 * method of load calculation objects to, and samples of rules, are asked for as the commands do that show them.
 */
class StructureSampleTest {
  private static final Path PATH = Path.of("sample.wattle");

  /** Findings that no change of a plan shows on a page, each with the reason. */
  private static final Map<String, String> WITHOUT = Map.of(
      "method-for-farm-buildings", "only a command that asks for that method gives it",
      "method-missing", "calculated-load-unknown names it as a reason, for a code that has no method",
      "feeders-in-a-row", "fifty panels",
      "switches-too-many", "a hundred switches",
      "plan-empty", "the file has nothing in it",
      "too-many-mistakes", "a hundred mistakes",
      "schedule-unreadable", "a panel schedule is no plan: BeginFromScheduleTest has those that cannot be read",
      "price-unreadable", "a list of prices is no plan: PluggedInTest has one that cannot be read");

  private static Compilation compiled(String plan) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(PATH.toString(), plan), PATH);
  }

  private static List<String> found(Compilation plan) {
    return Stream.concat(plan.findings().stream(), RuleSamples.check(plan).stream()).map(Finding::rule).toList();
  }

  private static List<String> objections(Compilation plan) {
    return Stream.concat(plan.figures().worksheets().services().stream(), plan.figures().worksheets().feeders().stream())
        .flatMap(read -> plan.figures().worksheets().compare(read).stream()).flatMap(o -> o.objections().stream()).map(Objection::rule)
        .toList();
  }

  private static long count(String name, Compilation plan) {
    return Stream.concat(found(plan).stream(), objections(plan).stream()).filter(name::equals).count();
  }

  @TestFactory
  Stream<DynamicTest> theFaultyPlanHasTheFinding() {
    return StructureSample.all().values().stream().map(sample -> DynamicTest.dynamicTest(sample.name(), () -> {
      int at = sample.plan().indexOf(sample.sound());
      assertThat(at).as("the sound text is in the plan").isNotNegative();
      assertThat(sample.plan().indexOf(sample.sound(), at + 1)).as("and once").isNegative();
      Compilation sound = compiled(sample.plan());
      assertThat(found(sound)).as("what the sound plan has").doesNotContainAnyElementsOf(StructurePages.names());
      assertThat(count(sample.name(), compiled(sample.faultyPlan()))).isGreaterThan(count(sample.name(), sound));
      String page = StructurePages.of(sample.name()).orElseThrow();
      assertThat(page).contains("does not pass:\n  ").contains("passes:\n  ");
      sample.sound().lines().filter(l -> !l.isBlank()).forEach(l -> assertThat(page).contains(l));
      sample.faulty().lines().filter(l -> !l.isBlank()).forEach(l -> assertThat(page).contains(l));
    }));
  }

  @TestFactory
  Stream<DynamicTest> theFaultySheetHasTheFinding() {
    Compilation plan = compiled(StructureSample.all().values().iterator().next().plan());
    return SheetSample.all().values().stream().map(sample -> DynamicTest.dynamicTest(sample.name(), () -> {
      List<String> sound = headlines(sample.sound(), plan);
      assertThat(sound).allMatch(h -> h.startsWith("not-measured"));
      assertThat(headlines(sample.faulty(), plan)).anyMatch(h -> h.startsWith(sample.name()) && !sound.contains(h));
      assertThat(StructurePages.of(sample.name()).orElseThrow()).contains(sample.sound().lines().toList().get(1));
    }));
  }

  private static List<String> headlines(String sheet, Compilation plan) {
    return FilledSheet.read(new Source("tests.csv", sheet), plan.figures().measurements()).findings().stream()
        .map(f -> f.rule() + " " + f.headline()).toList();
  }

  /** Named by the finding that they show, so that a page and its name cannot part; the rest say why they show none. */
  @Test
  void everyPageHasAnExampleOrAReason() {
    Set<String> shown = new TreeSet<>(StructureSample.all().keySet());
    shown.addAll(SheetSample.all().keySet());
    shown.addAll(WITHOUT.keySet());
    assertThat(shown).isEqualTo(new TreeSet<>(StructurePages.names()));
    assertThat(StructureSample.all().keySet()).doesNotContainAnyElementsOf(WITHOUT.keySet());
  }
}
