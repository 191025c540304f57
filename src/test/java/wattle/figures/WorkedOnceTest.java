package wattle.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compare.Comparison;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.emit.document.permit.PermitPage;
import wattle.emit.document.report.PaperEdition;
import wattle.emit.document.report.Report;
import wattle.emit.sheet.figures.PlanFigures;
import wattle.finding.Source;
import wattle.model.Trial;
import wattle.quantity.UnitSystem;
import wattle.read.SourceReader;

/** Counts what is worked out for a plan: once, whoever asks and however often. */
class WorkedOnceTest {
  private static final Path ALDER_COURT = Path.of("examples/alder-court/house.wattle");

  private static Compilation compile(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan);
  }

  private static List<String> trials(Compilation plan) {
    return plan.house().trials().keySet().stream().map(n -> "trial " + n).toList();
  }

  @Test
  void aCheckSolvesEachTrialOnceAndMakesNothingThatNoRuleAsksFor() throws SourceReader.Unreadable {
    Compilation plan = compile(ALDER_COURT);
    assertThat(trials(plan)).hasSizeGreaterThan(5);
    List<String> expected = new ArrayList<>(trials(plan));
    expected.addAll(List.of("conductors", "connected loads", "box fill", "faults", "fault findings", "worksheets"));
    if (plan.house().expectations().stream().anyMatch(e -> e.trial().isEmpty())) {
      expected.add("stated house");
    }
    assertThat(plan.figures().worked()).containsExactlyInAnyOrderElementsOf(expected);
  }

  @Test
  void aStructureThatNobodyJudgesWorksNothingOut() throws SourceReader.Unreadable {
    assertThat(new Compiler(SourceReader.FROM_DISK).structure(ALDER_COURT).figures().worked()).isEmpty();
  }

  @Test
  void aReportTakesWhatTheCheckBeforeItHasSolved() throws SourceReader.Unreadable {
    Compilation plan = compile(ALDER_COURT);
    Report report = Report.of(plan);
    assertThat(report.html()).contains("Trials and expectations");
    List<String> expected = new ArrayList<>(trials(plan));
    expected.addAll(
        List.of("conductors", "connected loads", "box fill", "faults", "fault findings", "worksheets", "stated house", "materials"));
    assertThat(plan.figures().worked()).containsExactlyInAnyOrderElementsOf(expected);
    report.paper(PaperEdition.WHOLE);
    new PermitPage(plan).page("letter");
    PlanFigures.of(plan, UnitSystem.METRIC).find("voltage of kitchen.c1");
    assertThat(plan.figures().worked()).as("after everything else that is shown of it").hasSameSizeAs(expected);
  }

  @Test
  void aTrialThatWasSolvedForTheExpectationsIsTheOneThatIsShown() throws SourceReader.Unreadable {
    Compilation plan = compile(ALDER_COURT);
    int solved = plan.figures().worked().size();
    for (Trial trial : plan.house().trials().values()) {
      assertThat(plan.figures().trials().result(trial)).isSameAs(plan.figures().trials().result(trial));
    }
    assertThat(plan.figures().worked()).hasSize(solved);
    Trial breakfast = plan.house().trials().get("breakfast");
    plan.figures().trials().result(breakfast.name(), breakfast.events());
    assertThat(plan.figures().worked()).as("events of the moment are no trial of the plan").hasSize(solved + 1).endsWith("events");
  }

  @Test
  void aTrialOfAnotherPlanIsRefused() throws SourceReader.Unreadable {
    Trial stranger = compile(ALDER_COURT).house().trials().get("breakfast");
    Compilation plan = compile(ALDER_COURT);
    assertThatThrownBy(() -> plan.figures().trials().result(stranger)).isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("breakfast");
  }

  @Test
  void bothRevisionsOfAComparisonAreWorkedOutOnce() throws SourceReader.Unreadable {
    Compilation before = compile(Path.of("examples/kitchen-renovation/before.wattle"));
    Compilation after = compile(Path.of("examples/kitchen-renovation/after.wattle"));
    Comparison.of(plan(before), plan(after));
    Comparison.of(plan(after), plan(before));
    for (Compilation revision : List.of(before, after)) {
      assertThat(revision.figures().worked()).contains("stated house", "faults", "fault findings", "materials").doesNotHaveDuplicates();
    }
  }

  private static wattle.compare.Plan plan(Compilation plan) {
    return new wattle.compare.Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  @Test
  void whatATextBesideThePlanAddsIsOfTheSameCompilation() {
    Source house = new Source("house.wattle", """
        plan "Beside" use code us-2023
        service main 120/240 V 100 A { source available 10 kA }
        panel P from main { bus 100 A slots 12 bonded main breaker 100 A 10 kA  1 20 A b }
        branch b by 12/2 NM-B { P --5 m-- r.one }
        room r { one: receptacle }
        trial low { r.one draws 5 A }
        """);
    Source beside = new Source("--event", "trial asked { r.one draws 10 A }\n");
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(house, Path.of("house.wattle"), List.of(beside));
    assertThat(plan.figures().worked()).containsOnlyOnce("trial low", "trial asked");
  }
}
