package wattle.emit.view.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Shape;
import wattle.finding.Source;
import wattle.loads.ConnectedLoads;
import wattle.model.Branch;
import wattle.model.Leg;
import wattle.model.SupplySystem;
import wattle.read.SourceReader;
import wattle.trials.VoltageProfile;

/** Voltage along branches and load of legs: drawn well whatever the plan, and with the figures of the tables. */
class PlotsTest {
  private static Compilation example(String name) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/" + name + "/house.wattle"));
  }

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static List<String> texts(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
  }

  @TestFactory
  List<DynamicTest> everyBranchOfTheExamples() throws SourceReader.Unreadable {
    List<DynamicTest> tests = new ArrayList<>();
    for (String name : List.of("alder-court", "cottage")) {
      Compilation plan = example(name);
      for (Branch branch : plan.house().branches().values()) {
        tests.add(
            DynamicTest.dynamicTest(
                name + " " + branch.name(),
                () -> {
                  VoltageProfile profile = VoltageProfile.of(branch, plan.house(), plan.figures().trials()).orElseThrow();
                  Drawing drawing = VoltagePlot.of(profile, plan.library(), plan.house().units());
                  DrawingChecks.check(drawing);
                  DrawingChecks.xml(DrawingSvg.document(drawing));
                }));
      }
      tests.add(
          DynamicTest.dynamicTest(name + " legs", () -> DrawingChecks.check(LegsPlot.of(plan.house(), ConnectedLoads.of(plan.house())))));
    }
    assertThat(tests).hasSizeGreaterThan(35);
    return tests;
  }

  /** One box right at the panel; fifty in a row; a branch so long that nearly nothing is left. */
  @TestFactory
  List<DynamicTest> hardBranches() {
    StringBuilder fifty = new StringBuilder("P");
    StringBuilder devices = new StringBuilder();
    for (int i = 0; i < 50; i++) {
      fifty.append(" --0.5 m-- hall.light-of-the-long-corridor-").append(i);
      devices.append("light-of-the-long-corridor-").append(i).append(": light 10 W\n");
    }
    List<DynamicTest> tests = new ArrayList<>();
    for (String chain : List.of("P --0 m-- hall.light-of-the-long-corridor-0", fifty.toString(),
        "P --900 m-- hall.light-of-the-long-corridor-0")) {
      tests.add(
          DynamicTest.dynamicTest(
              chain.substring(0, 12),
              () -> {
                Compilation plan = compile(
                    """
                        plan "Hard" use code us-2023
                        service main 120/240 V 100 A { source available 5 kA }
                        panel P from main { bus 100 A slots 4 bonded main breaker 100 A 10 kA
                          1 15 A b }
                        branch b "The corridor <&> what lies beyond" by 14/2 NM-B { %s }
                        room hall { %s }
                        """
                        .formatted(chain, devices));
                VoltageProfile profile = VoltageProfile.of(plan.house().branches().get("b"), plan.house(), plan.figures().trials())
                    .orElseThrow();
                Drawing drawing = VoltagePlot.of(profile, plan.library(), plan.house().units());
                DrawingChecks.check(drawing);
                DrawingChecks.xml(DrawingSvg.document(drawing));
                assertThat(texts(drawing)).noneMatch(t -> t.contains("NaN") || t.contains("Infinity"));
              }));
    }
    return tests;
  }

  @Test
  void legsOfHousesOfAnySize() {
    for (int circuits : new int[]{5, 24, 60}) {
      Compilation plan = compile(ManyCircuits.plan(circuits, circuits));
      DrawingChecks.check(LegsPlot.of(plan.house(), ConnectedLoads.of(plan.house())));
    }
    Compilation empty = compile(
        "plan \"Empty\"\nservice main 120/240 V 100 A { source available 5 kA }\npanel P from main { bus 100 A slots 4 bonded }");
    Drawing nothing = LegsPlot.of(empty.house(), ConnectedLoads.of(empty.house()));
    DrawingChecks.check(nothing);
    assertThat(texts(nothing)).contains("0 VA, 0 A");
  }

  @Test
  void theBarsAreTheLoads() throws SourceReader.Unreadable {
    Compilation plan = example("alder-court");
    ConnectedLoads loads = ConnectedLoads.of(plan.house());
    Drawing drawing = LegsPlot.of(plan.house(), loads);
    List<Shape.Box> bars = drawing.shapes().stream()
        .filter(Shape.Box.class::isInstance).map(Shape.Box.class::cast).filter(b -> b.height() == 16).toList();
    assertThat(bars).hasSize(4);
    SupplySystem system = plan.house().panels().get("P").system();
    double ratio = loads.panel("P").amperes(Leg.A, system) / loads.panel("G").amperes(Leg.B, system);
    assertThat(bars.get(0).width() / bars.get(3).width()).isCloseTo(ratio, org.assertj.core.api.Assertions.within(1e-9));
  }
}
