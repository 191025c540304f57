package wattle.emit.view.trialpicture;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.Shape;
import wattle.golden.Golden;
import wattle.model.Branch;
import wattle.model.Trial;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/** Pictures of branches in trials: nothing over another, nothing cut, and the figures of the tables on them. */
class TrialPictureTest {
  private static Compilation compile(String plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of(plan));
  }

  private static TrialResult run(Compilation plan, String trial) {
    return new Trials(plan.house(), plan.library()).run(plan.house().trials().get(trial)).value();
  }

  private static Drawing draw(Compilation plan, TrialResult result, String branch, double widest) {
    return new TrialPicture(plan.house(), plan.house().branches().get(branch), result, "A trial").plate(widest).drawing();
  }

  private static List<String> texts(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
  }

  @TestFactory
  Stream<DynamicTest> everyBranchInEveryTrialIsDrawnWell() {
    return Golden.plans("examples").stream()
        .filter(p -> !p.toString().contains("broken"))
        .map(
            p -> DynamicTest.dynamicTest(
                p.toString(),
                () -> {
                  Compilation plan = compile(p.toString());
                  Trials trials = new Trials(plan.house(), plan.library());
                  drawAll(plan, trials.stated());
                  for (Trial trial : plan.house().trials().values()) {
                    drawAll(plan, trials.run(trial).value());
                  }
                }));
  }

  private static void drawAll(Compilation plan, TrialResult result) {
    for (Branch branch : plan.house().branches().values()) {
      DrawingChecks.check(draw(plan, result, branch.name(), TrialPicture.USUAL_WIDTH));
      DrawingChecks.check(draw(plan, result, branch.name(), 600));
    }
  }

  @Test
  void theFiguresAreThoseOfTheTrial() throws SourceReader.Unreadable {
    Compilation plan = compile("examples/alder-court/house.wattle");
    assertThat(texts(draw(plan, run(plan, "toaster-alone"), "counter", 1500)))
        .contains("hot A: 10 A, 5.7 W", "neutral: 10 A, 5.7 W", "hot B: 0 A", "ground: 0 A", "upper 118.6 V, 1.2 % low", "draws 10 A");
    assertThat(texts(draw(plan, run(plan, "open-neutral"), "counter", 1500))).contains("neutral: open", "lower 179.4 V, 50 % high");
    assertThat(texts(draw(plan, run(plan, "warm-joint"), "micro", 1500))).contains("joint, neutral: 37.7 W", "at full load 80 W");
    assertThat(texts(draw(plan, run(plan, "far-fault"), "outdoor", 1500)))
        .contains("fault, hot to ground: 483 A", "carries 483 A, 2415 % of its rating", "opens in 0 to 0.1 s");
    assertThat(texts(draw(plan, run(plan, "washer-ground"), "laundry", 1500))).anyMatch(t -> t.startsWith("through a person 5."));
  }

  /** The worst outlet has a disc and the hottest conductor a square, and each sign that is used is explained. */
  @Test
  void theWorstHaveSignsOfTheirOwn() throws SourceReader.Unreadable {
    Compilation plan = compile("examples/alder-court/house.wattle");
    Drawing drawing = draw(plan, run(plan, "toaster-alone"), "counter", 1500);
    long discs = drawing.shapes().stream().filter(s -> s instanceof Shape.Circle c && c.fill() == Shape.Fill.ALARM).count();
    long squares = drawing.shapes().stream().filter(s -> s instanceof Shape.Box b && b.fill() == Shape.Fill.ALARM).count();
    assertThat(discs).isEqualTo(2);
    assertThat(squares).as("two wires that are heated alike, and the legend").isEqualTo(3);
    assertThat(texts(drawing)).contains(Sign.VOLTAGE.words(), Sign.HEAT.words()).doesNotContain(Sign.JOINT.words());
    assertThat(drawing.description()).contains("Hottest: ").contains("10 A");
    DrawingChecks.xml(DrawingSvg.document(drawing));
  }

  @Test
  void theBranchOfTheEventsIsTheOneDrawn() throws SourceReader.Unreadable {
    Compilation plan = compile("examples/alder-court/house.wattle");
    assertThat(run(plan, "warm-joint").mainBranch()).contains("micro");
    assertThat(run(plan, "far-fault").mainBranch()).contains("outdoor");
    assertThat(run(plan, "open-neutral").mainBranch()).contains("counter");
    assertThat(run(plan, "evening").mainBranch()).contains("range");
  }
}
