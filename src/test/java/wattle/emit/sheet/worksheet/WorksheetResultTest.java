package wattle.emit.sheet.worksheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Worksheet;

/** What people read off the result of a worksheet: legs, rounding, the next standard rating and its conductors, subtotals. */
class WorksheetResultTest {
  private static String plan(String supply, String devices) {
    return """
        use code us-2023
        dwelling { floor-area 1500 ft2 }
        service main SUPPLY 200 A { run 30 ft of 3/0 Cu triplex }
        panel P from main {
          bus 200 A slots 20 bonded
          main breaker 200 A
          1+3 50 A two-pole range
          2+4 40 A two-pole water
        }
        branch range by 6/3 NM-B { P --9 ft-- kitchen.range }
        branch water by 8/2 NM-B { P --9 ft-- kitchen.water }
        room kitchen { DEVICES }
        """.replace("SUPPLY", supply).replace("DEVICES", devices);
  }

  private record Result(Map<String, Double> figures, List<String> notes, Sheet lines) {}

  private static Result result(String text, String method) {
    Compilation plan = new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
    HouseWorksheets worksheets = plan.figures().worksheets();
    HouseInputs.Read read = worksheets.services().get(0);
    Worksheet sheet = worksheets.calculate(worksheets.method(method).orElseThrow(), read).worksheet().orElseThrow();
    List<Sheet> sheets = WorksheetSheets.of(sheet, WorksheetSheets.beside(sheet, plan.figures(), read), true);
    Map<String, Double> figures = new LinkedHashMap<>();
    for (Row row : sheets.get(2).rows()) {
      figures.put(text(row, 0), number(row, 1).orElseThrow());
    }
    return new Result(figures, sheets.get(2).notes(), sheets.get(0));
  }

  private static String text(Row row, int column) {
    return row.cells().get(column) instanceof Cell.Words words ? words.text() : "";
  }

  private static Optional<Double> number(Row row, int column) {
    return row.cells().get(column) instanceof Cell.Figure figure ? Optional.of(figure.value()) : Optional.empty();
  }

  private static String published(String amperes, String metal) {
    return Reference.rows("ampacity.csv").stream()
        .filter(r -> r.get("table").startsWith("NEC 310.12") && r.get("ampacity_a").equals(amperes) && r.get("material").equals(metal))
        .map(r -> r.get("size")).findFirst().orElseThrow();
  }

  /**
   * By hand, 220.5(B): 5100 VA of general load and 8000 VA of a range are 54.6 A at 240 V; with 10.9 kW of water heating 100 A;
   * 24 100 VA are 100.4 A, whose fraction may be dropped; 24 120 VA are 100.5 A, which take the next rating.
   */
  @Test
  void aFractionBelowHalfAnAmpereIsDropped() {
    Result whole = result(plan("120/240 V", "range: range 12 kW   water: water heater 10.9 kW"), "standard");
    assertThat(whole.figures.get("service current, leg A")).isEqualTo(100);
    assertThat(whole.figures).containsEntry("next standard rating", 100.0).doesNotContainKey("fraction below 0.5 A dropped, 220.5(B)");
    Result below = result(plan("120/240 V", "range: range 12 kW   water: water heater 11 kW"), "standard");
    assertThat(below.figures).containsEntry("fraction below 0.5 A dropped, 220.5(B)", 100.0).containsEntry("next standard rating", 100.0);
    Result half = result(plan("120/240 V", "range: range 12 kW   water: water heater 11.02 kW"), "standard");
    assertThat(half.figures).containsEntry("next standard rating", 110.0).doesNotContainKey("fraction below 0.5 A dropped, 220.5(B)");
  }

  /** Table 310.12 (ampacity.csv, elliottelectric.com): the conductors of a whole dwelling by its rating, on two legs of a wye too. */
  @Test
  void theConductorsOfTheNextRating() {
    Map<String, String> heaters = Map.of("100", "10.9", "110", "12", "125", "16", "150", "22");
    heaters.forEach((rating, kilowatts) -> {
      Result result = result(plan("120/240 V", "range: range 12 kW   water: water heater " + kilowatts + " kW"), "standard");
      assertThat(result.figures).containsEntry("next standard rating", Double.valueOf(rating));
      assertThat(result.notes).anyMatch(
          n -> n.startsWith("Conductors for " + rating + " A: " + published(rating, "copper") + " AWG copper or "
              + published(rating, "aluminum") + " AWG aluminum, Table 310.12"));
    });
    Result wye = result(plan("120/208 V", "range: range 12 kW   water: water heater 10 kW"), "standard");
    assertThat(wye.figures).containsEntry("next standard rating", 125.0);
    assertThat(wye.notes).anyMatch(n -> n.startsWith("Conductors for 125 A: 2 AWG copper or 1/0 AWG aluminum, Table 310.12"));
  }

  /** Two dwellings share the service, so that Table 310.12 does not hold: 125 A by the column of 75 °C are 1 copper or 2/0 aluminum. */
  @Test
  void theConductorsOfTwoDwellings() {
    String two = plan("120/240 V", "range: range 12 kW   water: water heater 5 kW")
        .replace("floor-area 1500 ft2", "floor-area 1500 ft2 dwellings 2");
    Result result = result(two, "multifamily");
    assertThat(result.figures).containsEntry("next standard rating", 125.0);
    assertThat(result.notes).anyMatch(n -> n.startsWith("Conductors for 125 A: 1 AWG copper or 2/0 AWG aluminum by the column of 75 °C"));
  }

  /** The subtotal that published sheets print, example D1(a): 9000 VA before the demand; it adds nothing to the running sum. */
  @Test
  void theSubtotalIsShown() {
    Sheet lines = result(plan("120/240 V", "range: range 12 kW   water: water heater 5 kW"), "standard").lines;
    Row subtotal = lines.rows().stream().filter(r -> text(r, 0).equals("subtotal, general load")).findFirst().orElseThrow();
    assertThat(number(subtotal, 2)).contains(9000.0);
    assertThat(number(subtotal, 4)).isEmpty();
    assertThat(text(subtotal, 1)).isNotEmpty();
  }
}
