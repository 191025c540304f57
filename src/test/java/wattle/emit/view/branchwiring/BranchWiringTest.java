package wattle.emit.view.branchwiring;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.Insulation;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Shapes;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Role;
import wattle.read.SourceReader;

/** The wiring of branches: that it can be read, and that it joins what must be joined. */
class BranchWiringTest {
  private static final Path HARD = Path.of("src/test/resources/drawings/hard-boxes.wattle");
  private static final Path ALDER = Path.of("examples/alder-court/house.wattle");

  private static House house(Path plan) {
    try {
      return new Compiler(SourceReader.FROM_DISK).compile(plan).house();
    } catch (SourceReader.Unreadable e) {
      throw new AssertionError(e);
    }
  }

  private static Drawing drawing(House house, String branch) {
    return BranchWiring.of(house, house.branches().get(branch), BranchWiring.USUAL_WIDTH).drawing();
  }

  private static BoxWiring box(House house, String branch, String box) {
    Branch found = house.branches().get(branch);
    int point = IntStream.range(0, found.points().size()).filter(p -> found.points().get(p).box().equals(Optional.of(box))).findFirst()
        .orElseThrow();
    return new BoxReader(house, found).read(point);
  }

  /** What the named terminals of a device are joined to. */
  private static List<String> joined(House house, String branch, String box, String device) {
    Fixture fixture = box(house, branch, box).fixtures().stream().filter(f -> f.title().equals(device)).findFirst().orElseThrow();
    List<String> all = new ArrayList<>();
    for (Terminal terminal : fixture.terminals()) {
      String role = terminal.net().map(k -> Role.text(k.role(), house.branches().get(branch).hots()) + (k.onward() ? " onward" : ""))
          .orElse("nothing");
      all.add(terminal.name() + " = " + role);
    }
    return all;
  }

  /** The red of a 14/3 between alarms joins them; where one of them is unlinked, or no alarm is beyond, it is spare. */
  @Test
  void alarmsAreJoinedByTheirInterconnect() {
    House house = house(Path.of("examples/mill-quay/house.wattle"));
    String flat = "floor1.flat1.";
    assertThat(joined(house, flat + "bed", flat + "hall.alarm", flat + "hall.alarm")).contains("interconnect = interconnect of alarms");
    assertThat(box(house, flat + "bed", flat + "hall.alarm").loose()).isEmpty();
    assertThat(box(house, flat + "bed", flat + "bed.alarm").loose()).isEmpty();
    for (String instead : List.of("alarm: smoke alarm 3 W unlinked", "alarm: light 3 W")) {
      House other = new Compiler(SourceReader.FROM_DISK).compile(new Source("alarms.wattle", """
          service main 120/240 V 100 A { earth rods by 6 Cu }
          panel P from main { bus 100 A slots 4 bonded
            1 15 A a }
          branch a by 14/3 NM-B { P --4 m-- hall.alarm --4 m-- bed.alarm }
          room hall { alarm: smoke alarm 3 W }
          room bed { INSTEAD }
          """.replace("INSTEAD", instead)), Path.of("alarms.wattle")).house();
      assertThat(box(other, "a", "bed.alarm").loose()).as(instead).extracting(c -> c.use().role()).containsExactly(new Role.Spare());
    }
  }

  @TestFactory
  Stream<DynamicTest> everyBranchIsDrawnWell() {
    return Stream.of(HARD, ALDER, Path.of("examples/cottage/house.wattle"))
        .flatMap(plan -> {
          House house = house(plan);
          return house.branches().keySet().stream().map(b -> DynamicTest.dynamicTest(plan + " " + b, () -> {
            Drawing drawing = drawing(house, b);
            DrawingChecks.check(drawing);
            DrawingChecks.xml(DrawingSvg.document(drawing));
            assertThat(sheathsThatCross(drawing)).isEmpty();
          }));
        });
  }

  /** A plan with faults still has a picture: what could not be derived is drawn as joined to nothing. */
  @TestFactory
  Stream<DynamicTest> brokenPlansAreDrawnToo() {
    return Golden.plans("examples/broken").stream().map(plan -> DynamicTest.dynamicTest(plan.toString(), () -> {
      House house = house(plan);
      house.branches().keySet().forEach(b -> DrawingChecks.check(drawing(house, b)));
    }));
  }

  @Test
  void hostileNamesAreText() {
    House house = new Compiler(SourceReader.FROM_DISK).compile(new Source("many.wattle", ManyCircuits.plan(30, 3)), Path.of("many.wattle"))
        .house();
    for (String branch : house.branches().keySet()) {
      Drawing drawing = drawing(house, branch);
      DrawingChecks.check(drawing);
      assertThat(DrawingChecks.xml(DrawingSvg.document(drawing)).getElementsByTagName("script").getLength()).isZero();
    }
  }

  private static List<String> sheathsThatCross(Drawing drawing) {
    List<Shape.Wire> sheaths = drawing.shapes().stream()
        .filter(s -> s instanceof Shape.Wire w && w.insulation() == Insulation.SHEATH)
        .map(Shape.Wire.class::cast)
        .toList();
    List<String> crossing = new ArrayList<>();
    for (int i = 0; i < sheaths.size(); i++) {
      for (int j = i + 1; j < sheaths.size(); j++) {
        for (Shape.Line a : sheaths.get(i).pieces()) {
          for (Shape.Line b : sheaths.get(j).pieces()) {
            if (java.awt.geom.Line2D.linesIntersect(a.x1(), a.y1(), a.x2(), a.y2(), b.x1(), b.y1(), b.x2(), b.y2())) {
              crossing.add(a + " x " + b);
            }
          }
        }
      }
    }
    return crossing;
  }

  /**
   * Wires cross only where they must. Where one cable ends nothing does; of two that leave a panel side by side, each
   * conductor of one may cross one of the other. Where three conductors pass a device that is
   * joined to all three, at least one crossing is needed (three conductors joined to three things are the graph K3,3,
   * which no plane drawing has), and one is drawn; a fourth, which joins alarms, is passed by the first one's way to its lead.
   */
  @Test
  void wiresDoNotCrossAvoidably() {
    House house = house(ALDER);
    for (Branch branch : house.branches().values()) {
      BoxReader reader = new BoxReader(house, branch);
      for (int p = 0; p < branch.points().size(); p++) {
        BoxWiring box = reader.read(p);
        int crossings = BoxCard.of(branch, box, Spacing.USUAL).crossings();
        if (box.arriving().isEmpty() && box.leaving().size() == 2) {
          assertThat(crossings).as(branch.name() + " " + box.title()).isLessThanOrEqualTo(3);
        } else if (box.leaving().isEmpty() || box.arriving().isEmpty()) {
          assertThat(crossings).as(branch.name() + " " + box.title()).isZero();
        } else if (box.leaving().size() == 1 && box.fixtures().size() == 1 && branch.hots().size() == 1) {
          boolean joinsAlarms = box.nets().stream().anyMatch(n -> n.key().role() instanceof Role.Interconnect);
          assertThat(crossings).as(branch.name() + " " + box.title()).isLessThanOrEqualTo(joinsAlarms ? 2 : 1);
        }
      }
    }
  }

  /** Both ends of every conductor are named, by color and by what it does. */
  @Test
  void everyConductorIsNamedAtBothEnds() {
    for (Path plan : List.of(HARD, ALDER)) {
      House house = house(plan);
      for (Branch branch : house.branches().values()) {
        long ends = 2L * branch.sections().stream().mapToInt(s -> s.conductors().size()).sum();
        long labels = BranchWiring.of(house, branch, BranchWiring.USUAL_WIDTH).shapes().stream()
            .filter(s -> s instanceof Shape.Text t && t.text().contains(": ") && !t.bold() && t.size() == ConductorLabel.SIZE).count();
        assertThat(labels).as(branch.name()).isEqualTo(ends);
      }
    }
  }

  // ---- What is joined; common practice of the trade

  @Test
  void aSwitchTakesTheFeedAndSendsTheSwitchLeg() {
    House house = house(ALDER);
    assertThat(joined(house, "hall", "hall.sw", "hall.sw"))
        .containsExactly("brass, feed = hot A", "brass, switched = switch leg of hall.sw", "green = ground");
    assertThat(joined(house, "hall", "stair.lamp", "stair.lamp"))
        .containsExactly("black lead = switch leg of hall.sw", "white lead = neutral", "ground lead = ground");
  }

  @Test
  void threeWayPairsHaveTravelers() {
    House house = house(ALDER);
    assertThat(joined(house, "upstairs", "landing.sw1", "landing.sw1"))
        .containsExactly(
            "common, dark = hot B", "brass, trav. 1 = traveler 1 between landing.sw1 and landing.sw2",
            "brass, trav. 2 = traveler 2 between landing.sw1 and landing.sw2", "green = ground");
    assertThat(joined(house, "upstairs", "landing.sw2", "landing.sw2"))
        .contains("common, dark = switch leg of landing.sw2", "brass, trav. 1 = traveler 1 between landing.sw1 and landing.sw2");
    assertThat(joined(house(HARD), "four", "den.b", "den.b"))
        .contains("in, trav. 1 = traveler 1 between den.a and den.b", "out, trav. 1 = traveler 1 between den.b and den.c");
  }

  @Test
  void aSplitReceptacleOnTwoHotsHasItsTabBroken() {
    House house = house(ALDER);
    assertThat(joined(house, "counter", "kitchen.c1", "kitchen.c1"))
        .containsExactly("brass, upper = hot A", "brass, lower = hot B", "silver = neutral", "green = ground");
    assertThat(box(house, "counter", "kitchen.c1").fixtures().get(0).tab()).isEqualTo(Fixture.Tab.BROKEN);
    // The neutral of two hots is joined by a connector: taking out the receptacle must not open it (NFPA 70 300.13(B)).
    Net neutral = box(house, "counter", "kitchen.c1").nets().stream().filter(n -> n.key().role() instanceof Role.Neutral).findFirst()
        .orElseThrow();
    assertThat(neutral.isSpliced()).isTrue();
    assertThat(neutral.ends()).isEqualTo(3);
  }

  @Test
  void aSwitchedHalfHasItsTabBroken() {
    House house = house(HARD);
    assertThat(joined(house, "half", "living.s1", "living.s1"))
        .containsExactly("brass, upper = switch leg of living.sw", "brass, lower = hot A", "silver = neutral", "green = ground");
    assertThat(box(house, "half", "living.s1").fixtures().get(0).tab()).isEqualTo(Fixture.Tab.BROKEN);
  }

  /** In a switch loop the white conductor brings the feed and is marked; NFPA 70 200.7(C). */
  @Test
  void theWhiteOfASwitchLoopIsMarked() {
    House house = house(HARD);
    List<String> texts = drawing(house, "loop").shapes().stream().filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text())
        .toList();
    assertThat(texts).contains("white, marked as a hot: hot A", "black: switch leg of den.sw");
    assertThat(drawing(house, "loop").shapes()).anyMatch(s -> s instanceof Shape.Wire w && w.insulation() == Insulation.MARKED_WHITE);
  }

  @Test
  void onwardWiresHangOnTheScrewsOnlyWhereTheyAreSaidTo() {
    House house = house(HARD);
    assertThat(joined(house, "guard", "kitchen.g", "kitchen.g"))
        .containsExactly("brass, line = hot B", "brass, onward = hot B onward", "silver, line = neutral", "silver, onward = neutral onward",
            "green = ground");
    assertThat(box(house, "guard", "kitchen.r1").nets().stream().filter(Net::isSpliced).count()).isEqualTo(3);
    assertThat(box(house, "guard", "kitchen.g").nets().stream().filter(Net::isSpliced).count()).isEqualTo(1);
  }

  /** Metal is bonded; NFPA 70 314.4. A box with another branch in it says so. */
  @Test
  void aMetalBoxIsBondedAndOtherBranchesAreNamed() {
    BoxWiring box = box(house(HARD), "gang", "bath.b1");
    assertThat(box.fixtures())
        .anyMatch(f -> f.title().equals("metal box") && f.terminals().get(0).net().get().role() instanceof Role.Ground);
    assertThat(box.notes()).containsExactly("Branch other is in this box too: open P/11 as well.");
  }

  @Test
  void branchesAreDrawnAsBefore() {
    Golden.check(Path.of("src/test/resources/drawings/upstairs-branch.shapes"), Shapes.text(drawing(house(ALDER), "upstairs")));
    Golden.check(Path.of("src/test/resources/drawings/counter-branch.shapes"), Shapes.text(drawing(house(ALDER), "counter")));
  }
}
