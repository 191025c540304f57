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
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.drawing.Bounds;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.drawing.DrawingChecks;
import wattle.emit.media.drawing.DrawingSvg;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.View;
import wattle.emit.media.picture.Paper;
import wattle.emit.view.branchwiring.BranchWiring;
import wattle.emit.view.oneline.OneLine;
import wattle.emit.view.panelfront.PanelFront;
import wattle.emit.view.plot.LegsPlot;
import wattle.emit.view.plot.TripPlot;
import wattle.emit.view.plot.VoltagePlot;
import wattle.emit.view.rooms.RoomSheet;
import wattle.faults.TimeCurrent;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.loads.ConnectedLoads;
import wattle.model.Branch;
import wattle.model.House;
import wattle.read.SourceReader;
import wattle.trials.VoltageProfile;

/** Every view on every paper: nothing overlaps, is cut, leaves its sheet or is too small, and nothing is lost on the way. */
class SheetsTest {
  private static final TitleBlock BLOCK = new TitleBlock("14 Alder Court, the house by the lime trees", Optional.of("C"),
      Optional.of("2026-03-09"));
  /** Of one plan: those of further apartments of a block are much alike. */
  private static final int MOST_BRANCHES = 24;

  private static final List<Paper> PAPERS = List.of(Paper.LETTER, Paper.A4, Paper.A3, Paper.TABLOID);

  private static Compilation compile(String text) {
    return new Compiler(SourceReader.FROM_DISK).compile(new Source("many.wattle", text), Path.of("many.wattle"));
  }

  private static List<Drawing> sheets(View view, Paper paper) {
    List<Drawing> sheets = Sheets.of(view, BLOCK, List.of(paper.turned(), paper));
    assertThat(sheets).as(view.title()).isNotEmpty();
    return sheets;
  }

  private static void check(View view) {
    for (Paper paper : PAPERS) {
      List<Drawing> sheets = sheets(view, paper);
      for (Drawing sheet : sheets) {
        DrawingChecks.checkSheet(sheet);
        assertThat(Math.min(sheet.width(), sheet.height())).isCloseTo(paper.width() / 0.75, org.assertj.core.api.Assertions.within(0.01));
      }
      assertThat(namedSheets(sheets)).isSubsetOf(IntStream.rangeClosed(1, sheets.size()).boxed().toList());
    }
  }

  private static void checkBoth(Plate plate) {
    check(plate);
    DrawingChecks.check(plate.drawing());
  }

  /** Numbers of sheets that are named on sheets. */
  private static List<Integer> namedSheets(List<Drawing> sheets) {
    List<Integer> named = new ArrayList<>();
    for (String text : texts(sheets)) {
      Matcher m = Pattern.compile("sheet (\\d+)").matcher(text);
      while (m.find()) {
        named.add(Integer.valueOf(m.group(1)));
      }
    }
    return named;
  }

  private static List<String> texts(List<Drawing> sheets) {
    return sheets.stream().flatMap(s -> s.shapes().stream()).filter(Shape.Text.class::isInstance).map(s -> ((Shape.Text) s).text())
        .toList();
  }

  private static Map<String, View> views(Compilation plan) {
    House house = plan.house();
    ConnectedLoads loads = ConnectedLoads.of(house);
    Map<String, View> views = new LinkedHashMap<>();
    views.put("one-line", new OneLine(house, plan.figures()).view());
    views.put("panel", new PanelFront(house));
    views.put("legs", LegsPlot.view(house, loads));
    views.put("rooms", new RoomSheet(house, List.copyOf(house.rooms().values())));
    return views;
  }

  @TestFactory
  Stream<DynamicTest> everyViewOfEveryExample() {
    return Golden.plans("examples").stream()
        .filter(p -> !p.toString().contains("broken"))
        .map(p -> DynamicTest.dynamicTest(p.toString(), () -> {
          Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(p);
          views(plan).values().forEach(SheetsTest::check);
          for (Branch branch : plan.house().branches().values().stream().limit(MOST_BRANCHES).toList()) {
            check(BranchWiring.view(plan.house(), branch));
            DrawingChecks.check(BranchWiring.of(plan.house(), branch, BranchWiring.USUAL_WIDTH).drawing());
            TimeCurrent.of(branch, plan.house(), plan.library(), plan.figures().faults())
                .ifPresent(s -> checkBoth(TripPlot.plate(s, plan.house().units())));
            VoltageProfile.of(branch, plan.house(), plan.figures().trials())
                .ifPresent(v -> checkBoth(VoltagePlot.plate(v, plan.library(), plan.house().units())));
          }
        }));
  }

  @TestFactory
  Stream<DynamicTest> plansOfAnySize() {
    return IntStream.of(5, 12, 30, 60, 84).boxed().map(n -> DynamicTest.dynamicTest(n + " circuits", () -> {
      Compilation plan = compile(ManyCircuits.plan(n, n));
      views(plan).values().forEach(SheetsTest::check);
      everyRowIsThereOnce(plan.house(), sheets(views(plan).get("one-line"), Paper.LETTER));
    }));
  }

  /**
   * Nine points or more on a letter sheet, in title block and legend too; eight where a low piece could stand alone
   * otherwise; smaller only where one box or row is wider than the sheet.
   */
  @ParameterizedTest
  @ValueSource(strings = {"cottage/house", "workshop/house", "kitchen-renovation/after"})
  void lettersAreReadableOnLetterSheets(String example) throws Exception {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/" + example + ".wattle"));
    List<View> views = new ArrayList<>(views(plan).values());
    plan.house().branches().values().forEach(b -> views.add(BranchWiring.view(plan.house(), b)));
    for (View view : views) {
      List<Drawing> sheets = sheets(view, Paper.LETTER);
      double smallest = sheets.stream().flatMap(s -> s.shapes().stream()).filter(Shape.Text.class::isInstance)
          .mapToDouble(s -> ((Shape.Text) s).size()).min().orElseThrow() * 0.75;
      // The widest piece at nine points on the wider sheet, whose border and margins take 104 pixels.
      double widest = view.pieces(500, 500).stream().mapToDouble(p -> p.bounds().width()).max().orElse(0) * 12 / 9;
      // A low piece could be alone on a sheet with nine points; eight are better than that.
      boolean low = view.pieces(500, 500).stream().anyMatch(p -> p.bounds().height() * 12 / 9 < 200);
      double least = widest > Paper.LETTER.height() / 0.75 - 104 ? 6 : low ? 8 : 9;
      assertThat(smallest).as(view.title()).isGreaterThanOrEqualTo(least - 1e-6);
    }
  }

  /** The breaker of each row of the one-line diagram is on one sheet, once. */
  private static void everyRowIsThereOnce(House house, List<Drawing> sheets) {
    long rows = house.panels().values().stream().mapToLong(p -> p.breakers().size()).sum();
    long taps = sheets.stream().flatMap(s -> s.shapes().stream()).filter(s -> s instanceof Shape.Curve).count();
    long mains = house.panels().values().stream().filter(p -> p.main().isPresent()).count();
    // Each breaker is one arc; so is that of each sheet's legend.
    assertThat(taps).isEqualTo(rows + mains + sheets.size());
  }

  @Test
  void aBigPanelIsTornWhereNoBreakerIs() {
    StringBuilder ways = new StringBuilder();
    for (int slot = 1; slot <= 81; slot += 4) {
      ways.append(slot).append('+').append(slot + 2).append(" 30 A two-pole spare\n").append(slot + 1).append(" 15 A spare\n");
      ways.append(slot + 3).append(" 15 A spare\n");
    }
    Compilation plan = compile(
        "plan \"Big\"\nservice main 120/240 V 400 A { source available 10 kA }\npanel P from main { bus 400 A slots 84 bonded main"
            + " breaker 400 A 22 kA\n"
            + ways + "}");
    List<Drawing> sheets = sheets(new PanelFront(plan.house()), Paper.LETTER);
    assertThat(sheets).hasSize(3);
    List<String> texts = texts(sheets);
    assertThat(texts).contains("continues on sheet 2", "continued from sheet 1", "continues on sheet 3")
        .noneMatch(t -> t.contains("moves with"));
    TreeSet<String> numbers = new TreeSet<>(texts);
    assertThat(IntStream.rangeClosed(1, 84).mapToObj(Integer::toString)).allMatch(numbers::contains);
  }

  /** Every box of a branch of forty in a row and fork, each on one sheet, and both ends of a cable with one mark. */
  @Test
  void aLongBranchIsTornAtItsCables() {
    StringBuilder runs = new StringBuilder("P");
    StringBuilder room = new StringBuilder();
    for (int i = 0; i < 40; i++) {
      runs.append(" --1 m-- hall.o").append(i);
      room.append("o").append(i).append(": receptacle 180 W\n");
    }
    Compilation plan = compile(
        "plan \"Long\"\nservice main 120/240 V 100 A { source available 5 kA }\npanel P from main { bus 100 A slots 4 bonded main"
            + " breaker 100 A 10 kA\n 1 15 A b }\nbranch b by 14/2 NM-B { "
            + runs + " }\nroom hall {\n" + room + "}");
    View view = BranchWiring.view(plan.house(), plan.house().branches().get("b"));
    for (Paper paper : PAPERS) {
      List<Drawing> sheets = sheets(view, paper);
      sheets.forEach(DrawingChecks::checkSheet);
      assertThat(sheets).hasSizeGreaterThan(3);
      List<String> texts = texts(sheets);
      for (int i = 0; i < 40; i++) {
        String box = "hall.o" + i;
        assertThat(texts.stream().filter(box::equals)).as(box).hasSize(2); // the box and the receptacle in it
      }
      long leaving = texts.stream().filter(t -> t.matches("at \\d+ on sheet \\d+")).count();
      assertThat(texts.stream().filter(t -> t.matches("on sheet \\d+"))).hasSize((int) leaving);
    }
  }

  @Test
  void theTitleBlockSaysWhatItMust() {
    Compilation plan = compile(ManyCircuits.plan(84, 3));
    List<Drawing> sheets = sheets(new OneLine(plan.house(), plan.figures()).view(), Paper.LETTER);
    assertThat(sheets).hasSizeBetween(3, 9);
    for (int i = 0; i < sheets.size(); i++) {
      List<String> texts = texts(sheets.subList(i, i + 1));
      assertThat(texts).contains("One-line diagram", "C", "2026-03-09", "not to scale", (i + 1) + " of " + sheets.size());
      assertThat(texts).anyMatch(t -> t.startsWith("14 Alder Court")).anyMatch(t -> t.contains("licensed person"));
      assertThat(sheets.get(i).title()).endsWith("sheet " + (i + 1) + " of " + sheets.size());
      DrawingChecks.xml(DrawingSvg.document(sheets.get(i)));
    }
  }

  /** ISO 5457 has a border of 10 mm. */
  @Test
  void nothingIsOutsideTheBorder() {
    Compilation plan = compile(ManyCircuits.plan(30, 30));
    for (Drawing sheet : sheets(new PanelFront(plan.house()), Paper.A4)) {
      double margin = 10 / 25.4 * 96;
      Bounds border = new Bounds(0, 0, sheet.width(), sheet.height()).grown(0.5 - margin);
      assertThat(sheet.shapes()).allMatch(s -> border.grown(0.5).contains(s.bounds()));
    }
  }

  @Test
  void whatCannotBeMadeToFitIsNotForced() {
    Paper stamp = new Paper(120, 160);
    Compilation plan = compile(ManyCircuits.plan(5, 5));
    assertThat(Sheets.of(new PanelFront(plan.house()), BLOCK, List.of(stamp))).isEmpty();
  }

  @Test
  void aHouseWithoutPanelsHasASheet() {
    Compilation plan = compile("plan \"Empty\"\nservice main 120/240 V 100 A { source available 5 kA }");
    views(plan).values().forEach(SheetsTest::check);
  }
}
