package wattle.emit.media.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.document.findings.FindingMarks;
import wattle.emit.media.drawing.CutLabels;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Marked;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.View;
import wattle.emit.media.picture.Paper;
import wattle.emit.view.branchwiring.BranchWiring;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.plot.LegsPlot;
import wattle.emit.view.rooms.RoomSheet;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.model.Branch;
import wattle.model.House;
import wattle.read.SourceReader;
import wattle.trials.TrialResult;
import wattle.trials.Trials;

/** Every view among the text of a document: it is read at arm's length, and nothing is lost or cut through where it is cut in parts. */
class PagePictureTest {
  /** Letter within margins of 13 mm, in pixels of 1/96 inch. */
  private static final double SHORT = (8.5 - 2 * 13 / 25.4) * 96;
  private static final double LONG = (11 - 2 * 13 / 25.4) * 96;

  /** Nine points. */
  private static final double LEAST = 9 / 0.75;

  private static PagePicture printed(View view) {
    return PagePicture.of(view, view.legend(), Paper.LETTER);
  }

  private static List<String> texts(List<Drawing> drawings) {
    return drawings.stream().flatMap(d -> d.shapes().stream()).filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text())
        .toList();
  }

  private static double smallest(PagePicture picture) {
    return picture.parts().stream().flatMap(p -> p.shapes().stream()).filter(Shape.Text.class::isInstance)
        .mapToDouble(s -> ((Shape.Text) s).size()).min().orElse(Double.MAX_VALUE);
  }

  /** @param edges whether no edge may cross a label: marks of findings stand on edges */
  private static PagePicture check(String name, View view, boolean edges) {
    PagePicture picture = printed(view);
    List<Drawing> parts = picture.parts();
    TreeSet<Integer> named = new TreeSet<>();
    for (int i = 0; i < parts.size(); i++) {
      Drawing part = parts.get(i);
      if (edges) {
        DrawingChecks.check(part);
      }
      assertThat(CutLabels.faults(part)).as(name).isEmpty();
      assertThat(part.width()).as(name).isLessThan(picture.turned() ? LONG : SHORT);
      assertThat(part.height()).as(name).isLessThan(picture.turned() ? SHORT : LONG);
      assertThat(texts(List.of(part)).contains("part " + (i + 1) + " of " + parts.size())).as(name).isEqualTo(parts.size() > 1);
      for (String text : texts(List.of(part))) {
        Matcher place = Pattern.compile("part (\\d+)(?! of)").matcher(text);
        while (place.find()) {
          named.add(Integer.valueOf(place.group(1)));
        }
      }
    }
    assertThat(named).as(name).allMatch(n -> n >= 1 && n <= parts.size());
    return picture;
  }

  /** Those that every report has. */
  private static Map<String, View> views(Compilation plan, FindingMarks marks) {
    House house = plan.house();
    Map<String, View> views = new LinkedHashMap<>();
    views.put("one-line", marks.on(new OneLine(house, plan.figures()).view(), Marked.Side.BESIDE));
    views.put("panel", marks.on(new PanelFront(house), Marked.Side.RIGHT_CORNER));
    views.put("legs", LegsPlot.view(house, plan.figures().loads()));
    return views;
  }

  /** Those that are asked for. */
  private static Map<String, View> more(Compilation plan, FindingMarks marks) {
    House house = plan.house();
    Map<String, View> views = new LinkedHashMap<>();
    views.put("rooms", marks.on(new RoomSheet(house, List.copyOf(house.rooms().values())), Marked.Side.BESIDE));
    TrialResult stated = new Trials(house, plan.library()).stated();
    for (Branch branch : house.branches().values().stream().limit(40).toList()) {
      views.put("branch " + branch.name(), marks.on(BranchWiring.view(house, branch), Marked.Side.LEFT_CORNER));
      views.put("trial " + branch.name(), new TrialPicture(house, branch, stated, "As stated"));
    }
    return views;
  }

  @TestFactory
  Stream<DynamicTest> everyViewOfEveryExample() {
    return Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
          Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(p);
          FindingMarks marks = FindingMarks.inPage(plan);
          views(plan, FindingMarks.none()).forEach((name, view) -> check(name, view, true));
          views(plan, marks).forEach((name, view) -> assertThat(smallest(check(name, view, false))).as(name).isGreaterThan(LEAST - 0.01));
          more(plan, FindingMarks.none()).forEach((name, view) -> {
            assertThat(smallest(check(name, view, true))).as(name).isGreaterThan(LEAST - 0.01);
          });
        }));
  }

  /** What the whole picture says of breakers and findings, its parts say together, once. */
  @TestFactory
  Stream<DynamicTest> nothingIsLost() {
    return Golden.plans("examples").stream().filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
          Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(p);
          views(plan, FindingMarks.inPage(plan)).forEach((name, view) -> {
            List<Drawing> whole = Sheets.of(view, new TitleBlock("", Optional.empty(), Optional.empty()),
                List.of(new Paper(20000, 20000)));
            assertThat(whole).as(name).hasSize(1);
            assertThat(things(printed(view).parts())).as(name).isEqualTo(things(whole));
          });
        }));
  }

  /** Names of breakers and mains at which something is, and how many circles are drawn round numbers of findings. */
  private static List<String> things(List<Drawing> drawings) {
    List<String> things = new ArrayList<>();
    drawings.stream().flatMap(d -> d.shapes().stream()).forEach(s -> {
      if (s instanceof Shape.Spot spot && spot.thing().contains("/")) {
        things.add(spot.thing());
      } else if (s instanceof Shape.Link link) {
        things.add(link.words());
      }
    });
    things.sort(null);
    return things;
  }

  /** A panel that is higher than a page is cut between its rows, and the parts say so. */
  @Test
  void aBigPanelIsCutBetweenItsRows() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("many.wattle", ManyCircuits.plan(84, 3)),
        Path.of("many.wattle"));
    PagePicture picture = check("one-line", new OneLine(plan.house(), plan.figures()).view(), true);
    assertThat(picture.parts()).hasSizeGreaterThan(3);
    List<String> texts = texts(picture.parts());
    assertThat(texts).anyMatch(t -> t.matches("continues on part \\d+")).anyMatch(t -> t.matches("continued from part \\d+"))
        .noneMatch(t -> t.contains("sheet"));
    long taps = picture.parts().stream().flatMap(s -> s.shapes().stream()).filter(s -> s instanceof Shape.Curve).count();
    long rows = plan.house().panels().values().stream().mapToLong(p -> p.breakers().size()).sum();
    long mains = plan.house().panels().values().stream().filter(p -> p.main().isPresent()).count();
    // Each breaker is one arc, and one is that of the legend.
    assertThat(taps).isEqualTo(rows + mains + 1);
    assertThat(picture.parts().get(1).description()).isNotBlank();
  }

  @Test
  void aViewWithoutAnythingIsOnePart() {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source("empty.wattle", "plan \"Empty\"\n"),
        Path.of("empty.wattle"));
    assertThat(printed(new RoomSheet(plan.house(), List.of())).parts()).hasSize(1);
  }
}
