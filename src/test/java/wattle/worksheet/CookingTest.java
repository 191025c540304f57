package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.SPLIT;
import static wattle.worksheet.Examples.US;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.feeder;
import static wattle.worksheet.Examples.feet;
import static wattle.worksheet.Examples.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.model.LoadClass;
import wattle.reference.Reference;

/** Table 220.55 of NFPA 70 and its notes; table 220.54. */
class CookingTest {
  private static double demand(LoadClass loadClass, String start, ConnectedLoad... loads) {
    assertThat(loads).allMatch(l -> l.loadClass() == loadClass);
    Worksheet sheet = calculate(US, "standard", feeder(SPLIT, feet(1000, 0, loads)));
    return sheet.lines().stream().filter(l -> l.name().startsWith(start)).mapToDouble(l -> l.result().orElseThrow().si()).sum();
  }

  private static double cooking(ConnectedLoad... loads) {
    return demand(LoadClass.COOKING, "cooking equipment", loads);
  }

  private static ConnectedLoad range(double kilowatts, int count) {
    return load("range", LoadClass.COOKING, 1000 * kilowatts).times(count);
  }

  /** Every row of demand.csv for table 220.55, each with its own source there. */
  @TestFactory
  List<DynamicTest> everyPublishedCell() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("demand.csv")) {
      if (!row.get("kind").startsWith("range_column_") || !row.get("item").matches("\\d+ appliances")) {
        continue;
      }
      int count = Integer.parseInt(row.get("item").split(" ")[0]);
      double value = Double.parseDouble(row.get("value"));
      double kilowatts = row.get("kind").endsWith("A") ? 3 : row.get("kind").endsWith("B") ? 5 : 12;
      double columnC = cooking(range(12, count));
      double expected = row.get("unit").equals("kW") ? 1000 * value : Math.min(columnC, count * kilowatts * 1000 * value / 100);
      tests.add(
          DynamicTest.dynamicTest(
              row.get("kind") + ", " + row.get("item"),
              () -> assertThat(cooking(range(kilowatts, count))).isEqualTo(expected, within(1e-6))));
    }
    assertThat(tests).hasSizeGreaterThan(30);
    return tests;
  }

  /** NFPA 70 Annex D example D6, flylib.com example_no_d6 (demand.csv). */
  @Test
  void rangesAboveTwelveKilowatts() {
    assertThat(cooking(range(16, 24))).isEqualTo(46800, within(1e-6));
    assertThat(cooking(range(14, 1))).isEqualTo(8800, within(1e-6));
    assertThat(cooking(range(14, 10))).isEqualTo(27500, within(1e-6));
    assertThat(cooking(range(12, 30))).isEqualTo(45000, within(1e-6));
  }

  /** NFPA 70 Annex D example D6, flylib.com example_no_d6: 5 of 11, 2 of 12, 20 of 13.5, 3 of 18 kW; mean 13.5, note 2. */
  @Test
  void rangesOfUnequalRatings() {
    double mean = (7 * 12 + 20 * 13.5 + 3 * 18) / 30;
    assertThat(mean).isEqualTo(13.6, within(1e-9));
    assertThat(cooking(range(11, 5), range(12, 2), range(13.5, 20), range(18, 3)))
        .isEqualTo(45000 * 1.10, within(1e-6));
  }

  /** Table 220.55: what is not above 1.75 kW is an appliance; what is above 27 kW is not in the table. */
  @Test
  void beyondTheTable() {
    assertThat(cooking(range(1.75, 1))).isZero();
    assertThat(cooking(range(28, 1))).isEqualTo(28000, within(1e-6));
  }

  /** Every row of demand.csv for table 220.54, each with its own source there; above 11 by its formula. */
  @Test
  void dryersByTheirNumber() {
    int seen = 0;
    for (Map<String, String> row : Reference.rows("demand.csv")) {
      if (row.get("kind").equals("dryer_factor") && row.get("item").matches("\\d+ dryers")) {
        int count = Integer.parseInt(row.get("item").split(" ")[0]);
        assertThat(dryers(count)).isEqualTo(Double.parseDouble(row.get("value")), within(1e-6));
        seen++;
      }
    }
    assertThat(seen).isEqualTo(8);
    assertThat(dryers(4)).isEqualTo(100, within(1e-6));
    assertThat(dryers(12)).isEqualTo(46, within(1e-6));
    assertThat(dryers(23)).isEqualTo(35, within(1e-6));
    assertThat(dryers(42)).isEqualTo(25.5, within(1e-6));
    assertThat(dryers(43)).isEqualTo(25, within(1e-6));
  }

  private static double dryers(int count) {
    return demand(LoadClass.DRYER, "clothes dryers", load("dryer", LoadClass.DRYER, 4000).times(count)) / (5000 * count) * 100;
  }
}
