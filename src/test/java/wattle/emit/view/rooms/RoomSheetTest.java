package wattle.emit.view.rooms;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.paper.Sheets;
import wattle.emit.media.paper.TitleBlock;
import wattle.emit.media.picture.Paper;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.model.DeviceKind;
import wattle.model.House;
import wattle.read.SourceReader;

/** The schedule of rooms: that it is drawn well, and says of each device what the plan says. */
class RoomSheetTest {
  private static House house(Path plan) throws SourceReader.Unreadable {
    return new Compiler(SourceReader.FROM_DISK).compile(plan).house();
  }

  private static House house(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("rooms.wattle", text), Path.of("rooms.wattle")).house();
  }

  private static RoomSheet all(House house) {
    return new RoomSheet(house, List.copyOf(house.rooms().values()));
  }

  private static List<String> texts(List<Drawing> sheets) {
    return sheets.stream().flatMap(s -> s.shapes().stream()).filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text())
        .toList();
  }

  /** The row of a box. */
  private static List<List<String>> row(House house, String box) {
    return house.rooms().values().stream().flatMap(r -> new RoomReader(house).rows(r).stream())
        .filter(r -> r.cells().get(0).stream().findFirst().equals(Optional.of(box))).findFirst().orElseThrow().cells();
  }

  @TestFactory
  Stream<DynamicTest> everyExampleIsDrawnWellAndWhole() {
    return Golden.plans("examples").stream()
        .filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
          House house = house(p);
          Drawing drawing = all(house).plate().drawing();
          DrawingChecks.check(drawing);
          List<String> texts = texts(List.of(drawing));
          house.boxes().keySet().forEach(b -> assertThat(texts.stream().filter(b::equals)).as(b).hasSize(1));
          assertThat(texts(Sheets.of(all(house), new TitleBlock("P", Optional.empty(), Optional.empty()), List.of(Paper.LETTER))))
              .as("words that were cut").noneMatch(t -> t.endsWith("…"));
        }));
  }

  /** The two circuits of a split receptacle are told apart; an appliance of 240 V is on both its slots. */
  @Test
  void alderCourtSaysWhatFeedsWhat() throws SourceReader.Unreadable {
    House house = house(Path.of("examples/alder-court/house.wattle"));
    assertThat(row(house, "kitchen.c1"))
        .containsExactly(
            List.of("kitchen.c1"), List.of("split receptacle, tamper-resistant", "at counter"), List.of(),
            List.of("counter, 12/3 NM-B"), List.of("P/2+4, 20 A 2-pole"), List.of("upper: slot 2, leg A", "lower: slot 4, leg B"),
            List.of("arc-fault: breaker", "ground-fault: breaker"));
    assertThat(row(house, "kitchen.range").get(2)).containsExactly("12000 VA");
    assertThat(row(house, "kitchen.range").get(5)).containsExactly("slot 6, leg A", "slot 8, leg B");
    assertThat(row(house, "hall.sw").get(1)).containsExactly("switch", "works hall.lamp, stair.lamp");
    assertThat(house.devices().values().stream().filter(d -> d.kind().family() != DeviceKind.Family.JUNCTION).count()).isGreaterThan(60);
  }

  /** A receptacle that guards what is wired onward is named where it guards, and not before it. NFPA 70 210.8 allows either way. */
  @Test
  void whatGuardsADeviceIsNamed() throws SourceReader.Unreadable {
    House house = house(Path.of("src/test/resources/drawings/hard-boxes.wattle"));
    String guard = house.devices().values().stream().filter(d -> d.traits().contains("protects-onward")).findFirst().orElseThrow().name();
    assertThat(row(house, guard).get(6)).contains("ground-fault: breaker, itself");
    assertThat(row(house, "kitchen.r1").get(6)).contains("ground-fault: breaker, " + guard);
  }

  @Test
  void whatNothingFeedsSaysSo() {
    House house = house(
        "plan \"Lone\"\nservice main 120/240 V 100 A { source available 5 kA }\npanel P from main { bus 100 A slots 4 bonded }\nroom"
            + " hall { lamp: light 10 W }");
    assertThat(row(house, "hall.lamp").get(3)).containsExactly("not fed");
    DrawingChecks.check(all(house).plate().drawing());
  }

  /** A room of eighty boxes with names that mean harm takes several sheets, and no box is lost between them. */
  @Test
  void aLargeRoomIsTornBetweenBoxes() {
    House house = house(ManyCircuits.plan(84, 2).replace("room hall \"Hall\"", "room hall \"<b>Hall</b> & ]]> \u202Eback\""));
    List<Drawing> sheets = Sheets.of(all(house), new TitleBlock("P", Optional.empty(), Optional.empty()),
        List.of(Paper.LETTER, Paper.LETTER.turned()));
    assertThat(sheets).hasSizeGreaterThan(2);
    sheets.forEach(DrawingChecks::checkSheet);
    sheets.forEach(s -> DrawingChecks.xml(DrawingSvg.document(s)));
    List<String> texts = texts(sheets);
    assertThat(texts).contains("continues on sheet 2", "from sheet 1").anyMatch(t -> t.startsWith("<b>Hall</b> & ]]>"))
        .noneMatch(t -> t.contains("\u202E"));
    house.boxes().keySet().forEach(b -> assertThat(texts.stream().filter(b::equals)).as(b).hasSize(1));
  }
}
