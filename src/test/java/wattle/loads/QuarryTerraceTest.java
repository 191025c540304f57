package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.worksheet.HouseInputs;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Line;
import wattle.worksheet.Worksheet;

/** A block of flats with loads that belong to none of them, against hand figures. */
class QuarryTerraceTest {
  private static final Compilation PLAN = QuarryTerrace.plan();

  private static Worksheet sheet(String method, HouseInputs.Read read) {
    HouseWorksheets sheets = new HouseWorksheets(PLAN.house(), PLAN.library());
    return sheets.calculate(sheets.method(method).orElseThrow(), read).worksheet().orElseThrow();
  }

  private static HouseWorksheets sheets() {
    return new HouseWorksheets(PLAN.house(), PLAN.library());
  }

  private static double result(Worksheet sheet, String name) {
    return sheet.lines().stream().filter(l -> l.name().startsWith(name)).map(Line::result).mapToDouble(r -> r.orElseThrow().si()).sum();
  }

  /**
   * By hand, NFPA 70 Part III: 6 × (60 m² × 33 + 3000) = 29 880, 3000 + 35 % of 26 880 = 12 408; six ranges, two between any two phases:
   * 2 × 2 → column C for 4, 17 kW × 3/2 = 25 500; lights in the corridor and stairwell in full, 2000; two receptacles at 180 VA, 360.
   */
  @Test
  void loadsCommonToTheBuildingAreCountedForWhatTheyAre() {
    Worksheet service = sheet("multifamily", sheets().services().get(0));
    assertThat(result(service, "general load")).isCloseTo(12408, within(0.01));
    assertThat(result(service, "cooking equipment")).isCloseTo(25500, within(0.01));
    assertThat(result(service, "lights outside the dwellings")).isCloseTo(2000, within(0.01));
    assertThat(result(service, "receptacles outside the dwellings")).isCloseTo(360, within(0.01));
    assertThat(service.total().si()).isCloseTo(40268, within(0.01));
  }

  /**
   * By hand: 2000 + 360 VA, leg by leg 1200 on A, 800 on A, 360 on B (slots 1, 2, 3): A carries 2000 / 120 = 16.7 A. The corridor's 1200 VA
   * are continuous: a quarter of them, 300 VA / 120 V = 2.5 A more to size by, NFPA 70 215.2(A)(1).
   */
  @Test
  void theHousePanelIsThatOfItsHeaviestLegWithContinuousLoadsAt125Percent() {
    Worksheet feeder = sheet("standard", sheets().feeder("H").orElseThrow());
    assertThat(feeder.total().si()).isCloseTo(2360, within(0.01));
    assertThat(feeder.current().si()).isCloseTo(16.67, within(0.05));
    assertThat(feeder.sized().si()).isCloseTo(19.17, within(0.05));
  }

  /** NFPA 70 210.12(B) is for dwelling units: the hall of each flat is reported, the corridor and the stairs are not. */
  @Test
  void rulesForDwellingUnitsAreNotCheckedInCorridors() {
    List<String> missing = PLAN.findings().stream().filter(f -> f.rule().equals("arc-fault-missing")).map(Finding::headline).toList();
    assertThat(missing).anySatisfy(h -> assertThat(h).contains("hall"));
    assertThat(missing).noneSatisfy(h -> assertThat(h).contains("corridor")).noneSatisfy(h -> assertThat(h).contains("stairs"));
  }

  /** An even spread has nothing that another would save. */
  @Test
  void anEvenSpreadIsNotRemarked() {
    assertThat(PLAN.findings()).extracting(Finding::rule).doesNotContain("dwellings-unevenly-spread", "unknown-name");
  }
}
