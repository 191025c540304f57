package wattle.emit.view.oneline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Shape;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** Both one-lines in one: nothing over anything else, and every line of both revisions with its sign. */
class OneLineDifferenceTest {
  private static final Path FOLDER = Path.of("examples/kitchen-renovation");
  private static final Path ALDER = Path.of("examples/alder-court/house.wattle");

  private static Compilation compile(String text, Path path) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source(path.toString(), text), path);
  }

  private static Compilation read(Path path) {
    try {
      return compile(Files.readString(path), path);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Drawing picture(Compilation before, Compilation after) {
    Comparison comparison = Comparison.of(
        new Plan(before.figures(), before.findings(), true, before.undecided()),
        new Plan(after.figures(), after.findings(), true, after.undecided()));
    return new OneLineDifference(before.figures(), after.figures(), comparison).drawing();
  }

  private static long boxes(Drawing drawing, Shape.Fill fill) {
    // One of each is in the legend.
    return drawing.shapes().stream().filter(s -> s instanceof Shape.Box box && box.fill() == fill).count() - 1;
  }

  private static List<String> texts(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text()).toList();
  }

  @Test
  void aRenovationShowsWhatCameAndWhatChanged() {
    Drawing there = picture(read(FOLDER.resolve("before.wattle")), read(FOLDER.resolve("after.wattle")));
    DrawingChecks.check(there);
    assertThat(boxes(there, Shape.Fill.ADDED)).isEqualTo(3);
    assertThat(boxes(there, Shape.Fill.CHANGED)).isEqualTo(2);
    assertThat(boxes(there, Shape.Fill.REMOVED)).isZero();
    assertThat(texts(there)).contains("What changed from revision A to B: 3 Sorrel Lane, kitchen", "was 40 A, Range (existing)");
    Drawing back = picture(read(FOLDER.resolve("after.wattle")), read(FOLDER.resolve("before.wattle")));
    DrawingChecks.check(back);
    assertThat(boxes(back, Shape.Fill.REMOVED)).isEqualTo(3);
  }

  /** The signs alone tell the three apart, for paper without color. */
  @Test
  void eachDifferenceHasAShapeOfItsOwn() {
    Drawing there = picture(read(FOLDER.resolve("before.wattle")), read(FOLDER.resolve("after.wattle")));
    long triangles = there.shapes().stream().filter(s -> s instanceof Shape.Triangle t && t.y2() == t.y3()).count();
    assertThat(triangles).as("changed").isEqualTo(2 + 1);
    long squares = there.shapes().stream()
        .filter(s -> s instanceof Shape.Box b && b.fill() == Shape.Fill.PAPER && b.width() == Difference.SIGN).count();
    assertThat(squares).as("added").isEqualTo(3 + 1);
    assertThat(
        there.shapes().stream().filter(s -> s instanceof Shape.Box b && b.fill() == Shape.Fill.REMOVED).map(s -> ((Shape.Box) s).stroke()))
        .containsOnly(Shape.Stroke.DASHED);
  }

  /** Several edits as a person would make them: a panel added, one moved and made larger, circuits that came and went. */
  @Test
  void aHouseWithManyEdits() {
    String text = read(ALDER).source().text();
    String[][] edits = {
        {"revision \"C\"", "revision \"D\""},
        {"transformer 50 kVA", "transformer 75 kVA"},
        {"  6+8    50 A", "  6+8    60 A"},
        {"  33     20 A  arc-fault ground-fault           sump       \"Sump pump\"\n", ""},
        {"branch sump     by 12/2 NM-B            { P --8 m-- basement.sump --2 m-- basement.o1 --3 m-- utility.o1 }\n", ""},
        {"  34     20 A  spare                                       \"Spare\"",
            "  36+38  50 A  two-pole  S  \"A workshop panel with a name so long that it must be cut before it runs over the load\""},
    };
    String edited = text;
    for (String[] edit : edits) {
      assertThat(edited).contains(edit[0]);
      edited = edited.replace(edit[0], edit[1]);
    }
    edited += "panel S \"Workshop panel\" from P/36 by 12 m of 6/3 NM-B {\n bus 60 A slots 6\n main lugs\n 1 20 A ground-fault tools\n}\n"
        + "branch tools by 12/2 NM-B { S --3 m-- shop.o1 }\nroom shop { o1: receptacle 20 A tamper-resistant }\n";
    Drawing drawing = picture(read(ALDER), compile(edited, ALDER));
    DrawingChecks.check(drawing);
    // The panel, its one line, and the line of its feeder.
    assertThat(boxes(drawing, Shape.Fill.ADDED)).isEqualTo(3);
    assertThat(boxes(drawing, Shape.Fill.REMOVED)).as("sump pump and spare").isEqualTo(2);
    assertThat(boxes(drawing, Shape.Fill.CHANGED)).as("service and range").isEqualTo(2);
    assertThat(texts(drawing)).contains("was 50 A GFCI", "was source transformer 50 kVA 1.8 %");
    assertThat(drawing.description()).contains("panel P 33 Sump pump: removed", "panel P 6+8 Range: changed, was 50 A GFCI");
  }

  @TestFactory
  Stream<DynamicTest> anyTwoHousesAreDrawnWell() {
    List<Path> plans = Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken")).toList();
    assertThat(plans).hasSizeGreaterThan(8);
    return IntStream.range(0, plans.size()).boxed().map(i -> {
      Path one = plans.get(i);
      Path other = plans.get((i + 1) % plans.size());
      return DynamicTest.dynamicTest(one + " to " + other, () -> DrawingChecks.check(picture(read(one), read(other))));
    });
  }

  @TestFactory
  Stream<DynamicTest> plansOfAnySizeAndNames() {
    return IntStream.of(5, 24, 42, 84).boxed().map(n -> DynamicTest.dynamicTest(n + " circuits", () -> {
      Path path = Path.of("many.wattle");
      Drawing drawing = picture(compile(ManyCircuits.plan(n, n), path), compile(ManyCircuits.plan(n + 3, n + 1), path));
      DrawingChecks.check(drawing);
      assertThat(DrawingChecks.xml(DrawingSvg.document(drawing)).getElementsByTagName("script").getLength()).isZero();
    }));
  }

  /** Plans with errors of every kind, against a house and the other way round: a picture comes, whatever is missing. */
  @TestFactory
  Stream<DynamicTest> brokenPlansAreDrawn() {
    Compilation house = read(FOLDER.resolve("after.wattle"));
    return Golden.plans("examples/broken").stream().map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
      DrawingChecks.check(picture(read(p), house));
      DrawingChecks.check(picture(house, read(p)));
    }));
  }
}
