package wattle.emit.view.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Bounds;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.Shape;
import wattle.faults.TimeCurrent;
import wattle.finding.Source;
import wattle.loads.ConnectedLoads;
import wattle.model.Branch;
import wattle.read.SourceReader;
import wattle.trials.VoltageProfile;

/** Every point and line of a plot is within its frame, and every limit line has its words beside it, whatever the figures. */
class PlotFrameTest {
  private static final double WIDE = 560;

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  @TestFactory
  List<DynamicTest> plotsOfTheExamples() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    try (Stream<Path> folders = Files.list(Path.of("examples"))) {
      for (Path plan : folders.map(f -> f.resolve("house.wattle")).filter(Files::exists).sorted().toList()) {
        tests.add(DynamicTest.dynamicTest(plan.toString(), () -> assertThat(check(example(plan))).isPositive()));
      }
    }
    assertThat(tests).hasSizeGreaterThan(8);
    return tests;
  }

  private static Compilation example(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan);
  }

  /** From a centimeter to ten kilometers of cable, from 1 A of available fault current to 500 kA, from no load to a large one. */
  @TestFactory
  List<DynamicTest> plotsOfVerySmallAndVeryLargeFigures() {
    List<DynamicTest> tests = new ArrayList<>();
    for (String length : List.of("0 m", "0.01 m", "3 ft", "80 m", "10000 m")) {
      for (String source : List.of("1 A", "40 A", "5 kA", "500 kA")) {
        for (String[] branch : new String[][]{{"5 A", "14/2 NM-B", "receptacle draws 0.001 W"},
            {"20 A", "12/2 NM-B", "receptacle draws 90 kW"},
            {"200 A", "14/2 NM-B", "receptacle draws 1 W"}}) {
          tests.add(DynamicTest.dynamicTest(length + ", " + source + ", " + String.join(", ", branch), () -> assertThat(check(compile("""
              plan "Figures" use code us-2023
              service main 120/240 V 200 A { source available %s }
              panel P from main { bus 200 A slots 4 bonded main breaker 200 A 22 kA
                1 %s b }
              branch b "What is far away" by %s { P --%s-- hall.one --%s-- hall.two --0 m-- hall.three }
              room hall { one: receptacle two: %s three: receptacle }
              """.formatted(source, branch[0], branch[1], length, length, branch[2])))).isEqualTo(2)));
        }
      }
    }
    return tests;
  }

  /** A main that is too small: its mark has its rating on it, and what is above it is in the color of alarm. */
  @Test
  void aLegAboveItsMainIsRed() {
    Compilation plan = compile("""
        plan "Small main" use code us-2023
        service main 120/240 V 100 A { source available 5 kA }
        panel P from main { bus 100 A slots 4 bonded main breaker 30 A 10 kA
          1+3 50 A two-pole range }
        branch range by 6/3 NM-B { P --3 m-- kitchen.range }
        room kitchen { range: range 12 kW }
        """);
    Drawing legs = LegsPlot.of(plan.house(), ConnectedLoads.of(plan.house()));
    DrawingChecks.check(legs);
    assertThat(texts(legs)).contains("main 30 A", "above the rating of the main");
    assertThat(legs.shapes().stream().filter(s -> s instanceof Shape.Box b && b.fill() == Shape.Fill.ALARM && b.height() == 16)).hasSize(2);
  }

  /** @return how many plots there were */
  private static int check(Compilation plan) {
    int plots = 0;
    for (Branch branch : plan.house().branches().values()) {
      Optional<TimeCurrent> study = TimeCurrent.of(branch, plan.house(), plan.library(), plan.figures().faults());
      if (study.isPresent()) {
        Drawing trip = TripPlot.of(study.get(), plan.house().units());
        inFrame(trip, branch.name() + " trip");
        boolean line = trip.shapes().stream()
            .anyMatch(s -> s instanceof Shape.Line l && l.stroke() == Shape.Stroke.THICK && l.x1() != l.x2()
                && l.y1() != l.y2());
        assertThat(texts(trip).contains("withstands")).as(branch.name()).isEqualTo(line);
        plots++;
      }
      Optional<VoltageProfile> profile = VoltageProfile.of(branch, plan.house(), plan.figures().trials());
      if (profile.isPresent()) {
        Drawing voltage = VoltagePlot.of(profile.get(), plan.library(), plan.house().units());
        inFrame(voltage, branch.name() + " voltage");
        assertThat(texts(voltage)).anyMatch(t -> t.endsWith("along the branch")).anyMatch(t -> t.endsWith("from the service"));
        plots++;
      }
    }
    Drawing legs = LegsPlot.of(plan.house(), ConnectedLoads.of(plan.house()));
    DrawingChecks.check(legs);
    return plots;
  }

  private static void inFrame(Drawing drawing, String name) {
    DrawingChecks.check(drawing);
    assertThat(texts(drawing)).as(name).noneMatch(t -> t.contains("NaN") || t.contains("Infinity"));
    Bounds frame = drawing.shapes().stream()
        .filter(s -> s instanceof Shape.Box b && Math.abs(b.width() - WIDE) < 1e-6).map(Shape::bounds).findFirst().orElseThrow();
    // The legend is beneath the frame and the lanes, under a faint line as wide as the drawing.
    double legend = drawing.shapes().stream()
        .filter(s -> s instanceof Shape.Line l && l.stroke() == Shape.Stroke.FAINT && l.y1() == l.y2() && l.y1() > frame.bottom() + 1)
        .mapToDouble(s -> ((Shape.Line) s).y1()).min().orElseThrow();
    int points = 0;
    for (Shape shape : drawing.shapes()) {
      List<double[]> places = places(shape);
      for (double[] place : places) {
        if (place[1] < legend) {
          points++;
          assertThat(place[0]).as(name + " " + shape).isBetween(frame.left() - 1e-6, frame.right() + 1e-6);
          boolean lane = place[1] > frame.bottom() + 1e-6 && !(shape instanceof Shape.Area);
          assertThat(place[1]).as(name + " " + shape).isBetween(frame.top() - 1e-6, (lane ? legend : frame.bottom()) + 1e-6);
        }
      }
    }
    assertThat(points).as(name).isGreaterThan(10);
  }

  private static List<double[]> places(Shape shape) {
    if (shape instanceof Shape.Circle circle) {
      return List.of(new double[]{circle.x(), circle.y()});
    }
    if (shape instanceof Shape.Line line) {
      return List.of(new double[]{line.x1(), line.y1()}, new double[]{line.x2(), line.y2()});
    }
    if (shape instanceof Shape.Area area) {
      return area.corners().stream().map(c -> new double[]{c.x(), c.y()}).toList();
    }
    return List.of();
  }

  private static List<String> texts(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
  }
}
