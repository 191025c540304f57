package wattle.emit.view.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.conductors.Conductors;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.Shape;
import wattle.faults.Faults;
import wattle.faults.TimeCurrent;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.quantity.UnitSystem;
import wattle.read.SourceReader;

class TripPlotTest {
  private static final Compilation ALDER_COURT = example("alder-court");

  private static Compilation example(String name) {
    try {
      return new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/" + name + "/house.wattle"));
    } catch (SourceReader.Unreadable e) {
      throw new AssertionError(e);
    }
  }

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static Optional<TimeCurrent> study(Compilation plan, String branch) {
    Faults faults = Faults.of(plan.house(), plan.library(), Conductors.of(plan.house(), plan.library()));
    return TimeCurrent.of(plan.house().branches().get(branch), plan.house(), plan.library(), faults);
  }

  @TestFactory
  List<DynamicTest> everyBranchIsDrawnWell() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Branch branch : ALDER_COURT.house().branches().values()) {
      tests.add(
          DynamicTest.dynamicTest(
              branch.name(),
              () -> {
                Drawing drawing = TripPlot.of(study(ALDER_COURT, branch.name()).orElseThrow(), UnitSystem.METRIC);
                DrawingChecks.check(drawing);
                DrawingChecks.xml(DrawingSvg.document(drawing));
              }));
    }
    assertThat(tests).hasSizeGreaterThan(30);
    return tests;
  }

  /** Many boxes with long names, a length left open, a strong source, a small breaker of a stated type. */
  @Test
  void hardCasesAreDrawnWell() {
    StringBuilder chain = new StringBuilder("P");
    StringBuilder boxes = new StringBuilder();
    for (int i = 0; i < 40; i++) {
      chain.append(" --").append(i % 7).append(" m-- ").append("conservatory.receptacle-behind-the-piano-").append(i);
      boxes.append("receptacle-behind-the-piano-").append(i).append(": receptacle\n");
    }
    String plan = """
        plan "Hard" use code us-2023
        service main 120/240 V 200 A { source available 65 kA }
        panel P from main { bus 200 A slots 20 bonded main breaker 200 A 100 kA
          1 6 A 100 kA type-d long "A very long description of what this branch is there for, in every detail of it"
          2 15 A 100 kA open }
        branch long by 14/2 NM-B { %s }
        branch open by 14/2 NM-B { P --later-- conservatory.tap }
        room conservatory { tap: receptacle
        %s }
        """
        .formatted(chain, boxes);
    Compilation compiled = compile(plan);
    Drawing drawing = TripPlot.of(study(compiled, "long").orElseThrow(), UnitSystem.METRIC);
    DrawingChecks.check(drawing);
    assertThat(texts(drawing)).anyMatch(t -> t.contains("24 more boxes"));
    Drawing open = TripPlot.of(study(compiled, "open").orElseThrow(), UnitSystem.METRIC);
    DrawingChecks.check(open);
    assertThat(texts(open)).contains("No fault current is known");
  }

  private static List<String> texts(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
  }

  @Test
  void thePlotShowsTheFiguresOfTheTable() {
    TimeCurrent study = study(ALDER_COURT, "hall").orElseThrow();
    TimeCurrent.Box end = study.boxes().stream().filter(b -> b.name().equals("stair.lamp")).findFirst().orElseThrow();
    Drawing drawing = TripPlot.of(study, UnitSystem.METRIC);
    assertThat(texts(drawing)).contains(Math.round(end.leastAmperes()) + " A to " + Math.round(end.mostAmperes()) + " A");
    assertThat(drawing.description()).contains("cleared in 0 to 1.2 s").contains("trip at once by 150 A");
    assertThat(study.weakest().orElseThrow().wire().size().toString()).isEqualTo("14 AWG");
    // The slow edge passes the calibration point of UL 489 at 200 %, 120 s, and the band closes at 20 times the rating.
    assertThat(study.slowest()).anySatisfy(p -> {
      assertThat(p.amperes()).isEqualTo(30);
      assertThat(p.seconds()).isCloseTo(120, within(0.001));
    });
    assertThat(study.fastest().get(0).seconds()).isInfinite();
  }

  @Test
  void aFuseIsPlottedByItsStandard() {
    assertThat(study(example("cottage"), "porch")).isPresent();
  }

  @Test
  void aScaleOfLogarithms() {
    LogScale scale = new LogScale(10, 5000, 0, 300);
    assertThat(scale.ticks()).containsExactly(10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0);
    assertThat(scale.decades()).containsExactly(10.0, 100.0, 1000.0);
    assertThat(scale.at(10)).isZero();
    assertThat(scale.at(1e9)).isEqualTo(300);
    assertThat(LogScale.roundDown(19.9)).isEqualTo(10);
    assertThat(LogScale.roundUp(1000)).isEqualTo(1000);
    assertThat(LogScale.roundUp(1001)).isEqualTo(2000);
    assertThat(LogScale.roundUp(5001)).isEqualTo(10000);
  }
}
