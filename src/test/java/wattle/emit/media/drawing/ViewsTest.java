package wattle.emit.media.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.panelfront.PanelGraph;
import wattle.finding.Severity;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.loads.ConnectedLoads;
import wattle.model.House;
import wattle.model.Panel;
import wattle.quantity.Quantity;
import wattle.read.SourceReader;
import wattle.worksheet.HouseInputs;

/** The one-line diagram and the panel front, on every example and on plans of 5 to 84 circuits. */
class ViewsTest {
  private static final DotEngine ENGINE = DotEngine.builtIn();

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("many.wattle", text), Path.of("many.wattle"));
  }

  private static Compilation example(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan);
  }

  private static Drawing oneLine(Compilation plan) {
    return new OneLine(plan.house(), plan.figures()).drawing();
  }

  @TestFactory
  Stream<DynamicTest> everyExampleIsDrawnWell() {
    return Golden.plans("examples").stream()
        .filter(p -> !p.toString().contains("broken"))
        .flatMap(p -> Stream.of(
            DynamicTest.dynamicTest(p + " one-line", () -> DrawingChecks.check(oneLine(example(p)))),
            DynamicTest.dynamicTest(p + " panel", () -> DrawingChecks.check(new PanelFront(example(p).house()).drawing()))));
  }

  @TestFactory
  Stream<DynamicTest> plansOfAnySizeAreDrawnWell() {
    return IntStream.of(5, 12, 24, 30, 42, 60, 84).boxed().map(n -> DynamicTest.dynamicTest(n + " circuits", () -> {
      Compilation plan = compile(ManyCircuits.plan(n, n));
      assertThat(plan.count(Severity.ERROR)).as(() -> plan.findings().toString()).isZero();
      DrawingChecks.check(oneLine(plan));
      DrawingChecks.check(new PanelFront(plan.house()).drawing());
    }));
  }

  /** Feeders neither cross nor run over each other. */
  @Test
  void feedersDoNotCross() {
    for (int seed = 1; seed <= 12; seed++) {
      Drawing drawing = oneLine(compile(ManyCircuits.plan(40, seed)));
      List<Shape.Line> upright = lines(drawing)
          .filter(l -> l.x1() == l.x2() && Math.abs(l.y1() - l.y2()) > 60 && l.stroke() == Shape.Stroke.THIN).toList();
      List<Shape.Line> level = lines(drawing).filter(l -> l.y1() == l.y2() && l.stroke() == Shape.Stroke.THIN).toList();
      for (Shape.Line u : upright) {
        for (Shape.Line l : level) {
          boolean through = l.x1() < u.x1() - 0.01 && u.x1() + 0.01 < l.x2()
              && Math.min(u.y1(), u.y2()) < l.y1() - 0.01 && l.y1() + 0.01 < Math.max(u.y1(), u.y2());
          assertThat(through).as(u + " crosses " + l).isFalse();
        }
      }
    }
  }

  private static Stream<Shape.Line> lines(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Line.class::isInstance).map(Shape.Line.class::cast);
  }

  @Test
  void theCheckSeesAnOverlap() {
    Drawing bad = new Sketch().text(0, 0, "one", 12).text(5, 2, "two", 12).drawing(4, "bad", "");
    assertThat(DrawingChecks.faults(bad)).hasSize(1);
    assertThat(DrawingChecks.faults(new Sketch().text(0, 0, "one", 12).line(-5, -4, 50, -4).drawing(4, "bad", ""))).hasSize(1);
    assertThat(DrawingChecks.faults(new Sketch().text(0, 0, "one", 6).drawing(4, "bad", ""))).hasSize(1);
  }

  /** Whatever names say, the pictures are well-formed, and the names are text in them. */
  @Test
  void hostileNamesStayText() {
    Compilation plan = compile(ManyCircuits.plan(60, 7));
    House house = plan.house();
    for (Drawing drawing : List.of(oneLine(plan), new PanelFront(house).drawing())) {
      String svg = DrawingSvg.document(drawing);
      assertThat(DrawingChecks.xml(svg).getElementsByTagName("script").getLength()).isZero();
      assertThat(svg).doesNotContain("\u202E").contains("&lt;script&gt;");
    }
    for (String dot : List.of(new OneLine(house, plan.figures()).dot(), PanelGraph.dot(house, ConnectedLoads.of(house)))) {
      String svg = ENGINE.render(dot, Engine.DOT, Format.SVG).text();
      assertThat(DrawingChecks.xml(svg).getElementsByTagName("script").getLength()).isZero();
    }
  }

  /** Both legs of every two-pole breaker, and the one leg of every other, are dots on the bars. */
  @Test
  void everyPoleIsTapped() throws SourceReader.Unreadable {
    Compilation plan = example(Path.of("examples/alder-court/house.wattle"));
    House house = plan.house();
    long poles = house.panels().values().stream().flatMap(p -> p.breakers().stream()).mapToLong(b -> b.poles().size()).sum();
    long entries = house.panels().values().stream().mapToLong(p -> p.legs().size()).sum();
    long dots = oneLine(plan).shapes().stream().filter(s -> s instanceof Shape.Circle c && c.fill() == Shape.Fill.INK).count();
    // One more where the earth conductor leaves the service, and one in the legend.
    assertThat(dots).isEqualTo(poles + entries + 2);
  }

  /**
   * Of a block on three phases: the system, a meter for each flat and none at the service, the calculated load and the fault current of
   * each panel as the worksheets and the table of faults have them, and every feeder with its whole size and length.
   */
  @Test
  void aBlockShowsItsMetersLoadsAndFeeders() throws SourceReader.Unreadable {
    Compilation plan = example(Path.of("examples/mill-quay/house.wattle"));
    List<String> texts = oneLine(plan).shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
    assertThat(texts).contains("120/208 V, three-phase, four wires, 600 A");
    assertThat(texts.stream().filter("M"::equals)).as("one for each of twelve flats, and one in the legend").hasSize(13);
    for (Panel panel : plan.house().panels().values()) {
      // Long wiring stands in lines beneath each other.
      panel.feeder()
          .ifPresent(f -> assertThat(String.join(" ", texts)).containsPattern(Pattern.quote(f.wiring().text() + ", ") + "[0-9.]+ m\\b"));
      double tenths = Math.round(plan.figures().faults().panel(panel.name()).mostAmperes() / 100) / 10.0;
      assertThat(texts).anyMatch(t -> t.endsWith("available fault current " + Quantity.plain(tenths, 6) + " kA"));
    }
    HouseInputs.Read flat = plan.figures().worksheets().feeder("floor2.flat1").orElseThrow();
    double load = plan.figures().worksheets().least(flat).orElseThrow().current().si();
    assertThat(texts).anyMatch(t -> t.startsWith("calculated load " + Math.round(load * 10) / 10.0 + " A, "));
  }

  /** The cottage as it is drawn, shape by shape. */
  @Test
  void theCottageIsDrawnAsBefore() throws SourceReader.Unreadable {
    Compilation plan = example(Path.of("examples/cottage/house.wattle"));
    Golden.check(Path.of("src/test/resources/drawings/cottage-one-line.shapes"), Shapes.text(oneLine(plan)));
    Golden.check(Path.of("src/test/resources/drawings/cottage-panel.shapes"), Shapes.text(new PanelFront(plan.house()).drawing()));
  }
}
