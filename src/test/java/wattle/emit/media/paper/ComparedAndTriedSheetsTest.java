package wattle.emit.media.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compare.Comparison;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.View;
import wattle.emit.media.picture.Paper;
import wattle.emit.view.oneline.OneLineDifference;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.model.Branch;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/** Pictures of changes and of trials on sheets, and what follows each other on the pages of a report. */
class ComparedAndTriedSheetsTest {
  private static final TitleBlock BLOCK = new TitleBlock("14 Alder Court", Optional.of("C"), Optional.empty());

  /** Of one plan: those of further apartments of a block are much alike. */
  private static final int MOST_BRANCHES = 24;

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("many.wattle", text), Path.of("many.wattle"));
  }

  private static Compilation read(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan);
  }

  private static List<Drawing> sheets(View view, Paper paper) {
    List<Drawing> sheets = Sheets.of(view, BLOCK, List.of(paper.turned(), paper));
    assertThat(sheets).as(view.title()).isNotEmpty();
    sheets.forEach(DrawingChecks::checkSheet);
    return sheets;
  }

  private static List<String> texts(List<Drawing> drawings) {
    return drawings.stream().flatMap(s -> s.shapes().stream()).filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text())
        .toList();
  }

  private static OneLineDifference difference(Compilation before, Compilation after) {
    Plan one = new Plan(before.figures(), before.findings(), true, before.undecided());
    Plan other = new Plan(after.figures(), after.findings(), true, after.undecided());
    return new OneLineDifference(before.figures(), after.figures(), Comparison.of(one, other));
  }

  @TestFactory
  Stream<DynamicTest> examples() {
    List<Path> plans = Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken")).toList();
    assertThat(plans).hasSizeGreaterThan(8);
    return IntStream.range(0, plans.size()).boxed().map(i -> DynamicTest.dynamicTest(plans.get(i).toString(), () -> {
      Compilation plan = read(plans.get(i));
      Compilation next = read(plans.get((i + 1) % plans.size()));
      sheets(difference(plan, next), Paper.LETTER);
      sheets(difference(plan, next), Paper.A3);
      TrialResult stated = new Trials(plan.house(), plan.library()).stated();
      for (Branch branch : plan.house().branches().values().stream().limit(MOST_BRANCHES).toList()) {
        TrialPicture picture = new TrialPicture(plan.house(), branch, stated, "As stated");
        sheets(picture, Paper.LETTER);
        sheets(picture, Paper.TABLOID);
      }
    }));
  }

  /** Every line of both revisions is on one sheet, once, whatever they are torn into, and the sheets that are named are there. */
  @Test
  void aLargeHouseIsTornBetweenItsRows() {
    OneLineDifference view = difference(compile(ManyCircuits.plan(84, 3)), compile(ManyCircuits.plan(80, 4)));
    List<Drawing> sheets = sheets(view, Paper.LETTER);
    assertThat(sheets).hasSizeGreaterThan(3);
    List<String> whole = new ArrayList<>(texts(List.of(view.drawing())));
    List<String> torn = texts(sheets);
    for (String slot : new TreeSet<>(whole)) {
      if (slot.matches("\\d+[ab]?(\\+\\d+[ab]?)+")) {
        assertThat(torn.stream().filter(slot::equals).count()).as(slot).isEqualTo(whole.stream().filter(slot::equals).count());
      }
    }
    assertThat(torn).anyMatch(t -> t.matches("continues on sheet \\d+")).anyMatch(t -> t.matches("continued from sheet \\d+"));
    assertThat(torn).anyMatch(t -> t.matches("to panel .* sheet \\d+"));
  }

  /** Both ends of a run that goes on elsewhere bear one mark, and name each other's sheets. */
  @Test
  void aLongBranchIsTornBetweenItsBoxes() {
    StringBuilder runs = new StringBuilder("P");
    StringBuilder room = new StringBuilder();
    for (int i = 0; i < 40; i++) {
      runs.append(" --1 m-- hall.o").append(i);
      room.append("o").append(i).append(": receptacle 18 W\n");
    }
    Compilation plan = compile(
        "plan \"Long\"\nservice main 120/240 V 100 A { source available 5 kA }\npanel P from main { bus 100 A slots 4 bonded main"
            + " breaker 100 A 10 kA\n 1 15 A b }\nbranch b by 14/2 NM-B { "
            + runs + " }\nroom hall {\n" + room + "}");
    TrialPicture picture = new TrialPicture(plan.house(), plan.house().branches().get("b"),
        new Trials(plan.house(), plan.library()).stated(), "As stated");
    List<Drawing> sheets = sheets(picture, Paper.LETTER);
    assertThat(sheets).hasSizeGreaterThan(1);
    List<String> texts = texts(sheets);
    for (int i = 0; i < 40; i++) {
      assertThat(texts.stream().filter(("hall.o" + i)::equals)).hasSize(1);
    }
    long leaving = texts.stream().filter(t -> t.matches("to hall\\.o\\d+, at \\d+ on sheet \\d+")).count();
    assertThat(leaving).isPositive();
    assertThat(texts.stream().filter(t -> t.matches("from hall\\.o\\d+ on sheet \\d+"))).hasSize((int) leaving);
  }
}
