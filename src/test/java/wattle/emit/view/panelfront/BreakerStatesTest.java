package wattle.emit.view.panelfront;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.view.trialpicture.TrialPicture;
import wattle.model.Branch;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.MainDevice;
import wattle.model.Panel;
import wattle.read.SourceReader;
import wattle.trials.Trials;

/** Fronts that tell which breakers are off or carry too much, at all widths, and what of pictures can be pointed at. */
class BreakerStatesTest {
  private static wattle.compiler.Compilation compile(String plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).structure(Path.of("examples", plan));
  }

  private static List<Shape.Spot> spots(Drawing drawing) {
    return drawing.shapes().stream().filter(Shape.Spot.class::isInstance).map(Shape.Spot.class::cast).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"alder-court/house.wattle", "cottage/house.wattle", "duplex/house.wattle", "longcroft/house.wattle",
      "marlow-croft/house.wattle"})
  void statesFitAndSpotsCoverTheirBreakers(String plan) throws SourceReader.Unreadable {
    House house = compile(plan).house();
    for (Panel panel : house.panels().values()) {
      Map<String, BreakerState> states = new HashMap<>();
      List<Breaker> breakers = panel.breakers();
      for (int i = 0; i < breakers.size(); i++) {
        states.put(breakers.get(i).id().toString(),
            i % 2 == 0 ? new BreakerState("OPEN", true) : new BreakerState("carries 1234 A", false));
      }
      boolean opens = panel.main().filter(m -> m.kind() != MainDevice.Kind.LUGS).isPresent();
      if (opens) {
        states.put("main " + panel.name(), new BreakerState("OPEN", true));
      }
      for (double width : new double[]{360, 480, 540, 800, 1500}) {
        Drawing drawing = new PanelFront(house, states).drawing(panel, width);
        DrawingChecks.check(drawing);
        assertThat(drawing.shapes()).filteredOn(s -> s instanceof Shape.Text t && t.text().startsWith("OPEN"))
            .hasSizeGreaterThanOrEqualTo((breakers.size() + 1) / 2);
        List<Shape.Spot> spots = spots(drawing);
        assertThat(spots.stream().map(Shape.Spot::thing).distinct()).containsExactlyInAnyOrderElementsOf(
            Stream.concat(breakers.stream().map(b -> b.id().toString()), Stream.of("main " + panel.name()).filter(m -> opens)).toList());
        for (int i = 0; i < spots.size(); i++) {
          for (int j = i + 1; j < spots.size(); j++) {
            assertThat(spots.get(i).bounds().overlaps(spots.get(j).bounds())).as(spots.get(i) + " " + spots.get(j)).isFalse();
          }
        }
        assertThat(width < 480 || drawing.width() <= Math.max(width, 520)).as(panel.name() + " in " + width + " is " + drawing.width())
            .isTrue();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"alder-court/house.wattle", "cottage/house.wattle"})
  void everyBoxOfABranchIsASpot(String plan) throws SourceReader.Unreadable {
    wattle.compiler.Compilation compiled = compile(plan);
    House house = compiled.house();
    var result = new Trials(house, compiled.library()).stated();
    for (Branch branch : house.branches().values()) {
      List<String> names = new ArrayList<>();
      branch.points().forEach(p -> names.add(p.box().or(branch::panel).orElseThrow()));
      for (double width : new double[]{330, 800, 1500}) {
        Drawing drawing = new TrialPicture(house, branch, result, "x").plate(width).drawing(Math.min(560, width));
        DrawingChecks.check(drawing);
        assertThat(spots(drawing)).extracting(Shape.Spot::thing).containsExactlyInAnyOrderElementsOf(names);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"P/2+4", "<b>\"&'"})
  void spotsAreDrawnOnlyWhereTheyArePointedAt(String thing) {
    Drawing drawing = new Sketch().add(new Shape.Spot(0, 0, 10, 10, thing)).drawing(5, "t", "d");
    assertThat(DrawingSvg.document(drawing)).doesNotContain("spot").doesNotContain("P/2+4");
    String svg = DrawingSvg.pointable(drawing, "x");
    var rects = DrawingChecks.xml(svg).getElementsByTagName("rect");
    assertThat(rects.getLength()).isEqualTo(2);
    assertThat(rects.item(1).getAttributes().getNamedItem("data-thing").getNodeValue()).isEqualTo(thing);
    assertThat(drawing.shapes().get(0).scaled(2).bounds().width()).isEqualTo(20);
  }
}
