package wattle.emit.sheet.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.emit.media.table.Cell;
import wattle.emit.media.table.Row;
import wattle.emit.media.table.Sheet;
import wattle.finding.Source;
import wattle.read.SourceReader;
import wattle.reference.Reference;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.Worksheet;

/** The sheet that goes to the permit office: the figures of the published example stand in its cells, each with its article. */
class WorksheetSheetsTest {
  private static final String HOUSE = """
      use code us-2023
      dwelling { floor-area 1500 ft2 }
      service main 120/240 V 100 A { run 9 m of 2-2-2 Al USE-2 in 2 in PVC }
      panel P from main {
        bus 125 A slots 20 bonded
        main breaker 100 A
        1+3 50 A two-pole range
        2+4 30 A two-pole dryer
        5   20 A left
        6   20 A right
        7   20 A laundry
      }
      branch range by 6/3 NM-B { P --3 m-- kitchen.range }
      branch dryer by 10/3 NM-B { P --3 m-- laundry.dryer }
      branch left by 12/2 NM-B is small-appliance { P --3 m-- kitchen.c1 }
      branch right by 12/2 NM-B is small-appliance { P --3 m-- kitchen.c2 }
      branch laundry by 12/2 NM-B is laundry { P --3 m-- laundry.w }
      room kitchen { range: range 12 kW   c1: receptacle at counter   c2: receptacle at counter }
      room laundry { dryer: dryer 5.5 kW   w: receptacle }
      """;

  private static Compilation plan;
  private static HouseInputs.Read read;
  private static Worksheet standard;

  @BeforeAll
  static void compile() {
    plan = compile(HOUSE);
    read = plan.figures().worksheets().services().get(0);
    standard = worksheet(plan);
  }

  private static Compilation compile(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static Worksheet worksheet(Compilation plan) {
    var sheets = plan.figures().worksheets();
    return sheets.calculate(sheets.method("standard").orElseThrow(), sheets.services().get(0)).worksheet().orElseThrow();
  }

  private static double published(String item) {
    return Reference.rows("demand.csv").stream()
        .filter(r -> r.get("kind").equals("worked_example_D1a") && r.get("item").startsWith(item))
        .mapToDouble(r -> Double.parseDouble(r.get("value")))
        .findFirst()
        .orElseThrow();
  }

  private static Row row(Sheet sheet, String first) {
    return sheet.rows().stream()
        .filter(r -> text(r, 0).equals(first))
        .findFirst()
        .orElseThrow(() -> new AssertionError(first + " in " + sheet.rows().stream().map(r -> text(r, 0)).toList()));
  }

  private static String text(Row row, int column) {
    return row.cells().get(column) instanceof Cell.Words words ? words.text() : "";
  }

  private static double figure(Row row, int column) {
    return ((Cell.Figure) row.cells().get(column)).value();
  }

  /** NFPA 70 Annex D example D1(a), flylib.com example_no_d1_a (demand.csv). */
  @Test
  void linesOfThePublishedExampleStandInTheirCells() {
    Sheet lines = WorksheetSheets.of(standard, false).get(0);
    assertThat(lines.title()).contains("service main", "220 Part III");
    Row lighting = row(lines, "general lighting");
    assertThat(text(lighting, 1)).as("article").contains("220.41");
    assertThat(figure(lighting, 2)).isEqualTo(published("lighting"), within(1e-6));
    Row dryer = row(lines, "clothes dryers");
    assertThat(text(dryer, 1)).contains("220.54");
    assertThat(figure(dryer, 3)).as("percent").isEqualTo(100, within(1e-9));
    assertThat(figure(dryer, 4)).isEqualTo(published("dryer"), within(1e-6));
    Row rest = row(lines, "general load, from 3000 VA to 120000 VA");
    assertThat(figure(rest, 3)).isEqualTo(35, within(1e-9));
    assertThat(figure(rest, 5)).as("sum so far").isEqualTo(published("after"), within(1e-6));
  }

  /** The running sum of the last line that counts is the result; every figure of it unfolds. */
  @Test
  void sumsRunToTheResult() {
    List<Sheet> sheets = WorksheetSheets.of(standard, false);
    for (int part = 0; part < 2; part++) {
      List<Row> counted = sheets.get(part).rows().stream().filter(r -> r.cells().get(5) instanceof Cell.Figure).toList();
      double sum = 0;
      for (Row row : counted) {
        sum += figure(row, 4);
        assertThat(figure(row, 5)).as(text(row, 0)).isEqualTo(sum, within(1e-6));
        assertThat(((Cell.Figure) row.cells().get(4)).derivation()).as(text(row, 0)).isPresent();
      }
      assertThat(sum).isEqualTo(part == 0 ? standard.total().si() : standard.neutralTotal().si(), within(1e-6));
    }
  }

  /** D1(a): 18,600 VA / 240 V = 78 A, neutral 14,550 VA / 240 V = 61 A; no leg carries less. */
  @Test
  void theResultHasEachLegTheNeutralAndTheNextRating() {
    Sheet result = WorksheetSheets.of(standard, false).get(2);
    assertThat(figure(row(result, "calculated load"), 1)).isEqualTo(published("total"), within(1e-6));
    assertThat(result.rows().stream().map(r -> text(r, 0)).filter(t -> t.contains("leg")).toList()).hasSize(2);
    assertThat(figure(row(result, "load of the neutral"), 1)).isEqualTo(published("neutral"), within(1e-6));
    assertThat(figure(row(result, "next standard rating"), 1)).isEqualTo(100, within(1e-9));
    assertThat(figure(row(result, "rating in the plan"), 1)).isEqualTo(100, within(1e-9));
    assertThat(result.notes()).last().asString().contains("Check that every load of the house is in the plan.");
  }

  @Test
  void longListsOfDevicesAreCutForPeopleOnly() {
    StringBuilder many = new StringBuilder(HOUSE);
    for (int i = 1; i <= 7; i++) {
      many.append("room r" + i + " { f: water heater 1 kW }\n");
    }
    Compilation house = compile(many.toString().replace("P --3 m-- laundry.w }", """
        P --3 m-- laundry.w }
        branch heaters by 10/2 NM-B { P --1 m-- r1.f --1 m-- r2.f --1 m-- r3.f --1 m-- r4.f --1 m-- r5.f --1 m-- r6.f --1 m-- r7.f }
        """).replace("7   20 A laundry", "7   20 A laundry\n  8+10 30 A two-pole heaters"));
    Worksheet sheet = worksheet(house);
    assertThat(WorksheetSheets.of(sheet, true).get(0).rows()).anySatisfy(r -> assertThat(text(r, 6)).endsWith("and 3 more"));
    assertThat(WorksheetSheets.of(sheet, false).get(0).rows()).noneSatisfy(r -> assertThat(text(r, 6)).contains("more"))
        .anySatisfy(r -> assertThat(text(r, 6)).contains("r7.f"));
  }

  /** Beside the result stand the other method of the code and the least number of circuits; a method that does not apply says why. */
  @Test
  void otherMethodsStandBeside() {
    List<String> beside = WorksheetSheets.beside(standard, plan.figures(), read);
    assertThat(beside).anySatisfy(n -> assertThat(n).contains("220.82"));
    Sheet comparison = WorksheetSheets.comparison("main", plan.figures().worksheets().compare(read));
    assertThat(figure(row(comparison, "standard"), 2)).isEqualTo(published("total"), within(1e-6));
    assertThat(comparison.rows()).filteredOn(r -> !(r.cells().get(2) instanceof Cell.Figure)).isNotEmpty()
        .allSatisfy(r -> assertThat(text(r, 7)).isNotEmpty());
  }
}
