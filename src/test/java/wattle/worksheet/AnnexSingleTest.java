package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.US;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.connected;
import static wattle.worksheet.Examples.feet;
import static wattle.worksheet.Examples.load;
import static wattle.worksheet.Examples.result;
import static wattle.worksheet.Examples.service;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.reference.Reference;

/** The one-family examples of NFPA 70 Informative Annex D, line by line. */
class AnnexSingleTest {
  private static final Offset<Double> EXACT = within(1e-6);

  private static double published(String example, String item) {
    return Reference.rows("demand.csv").stream()
        .filter(r -> r.get("kind").equals(example) && r.get("item").startsWith(item))
        .map((Map<String, String> r) -> Double.parseDouble(r.get("value")))
        .findFirst()
        .orElseThrow(() -> new AssertionError(example + " " + item));
  }

  /** NFPA 70 Annex D example D1(a), flylib.com example_no_d1_a (demand.csv); the general tiers by the same page. */
  @Test
  void standardMethodOfARangeAndADryer() {
    Worksheet sheet = calculate(
        US, "standard",
        service(feet(1500, 1, load("range", LoadClass.COOKING, 12000), load("dryer", LoadClass.DRYER, 5500))));
    List<Line> lines = sheet.lines();
    assertThat(connected(lines, "general lighting")).isEqualTo(published("worked_example_D1a", "lighting"), EXACT);
    assertThat(connected(lines, "small-appliance circuits")).isEqualTo(published("worked_example_D1a", "small"), EXACT);
    assertThat(connected(lines, "laundry circuits")).isEqualTo(published("worked_example_D1a", "laundry"), EXACT);
    assertThat(connected(lines, "subtotal, general load")).as("printed in the example").isEqualTo(9000, EXACT);
    assertThat(result(lines, "general load, the first 3000 VA")).isEqualTo(3000, EXACT);
    assertThat(result(lines, "general load, from 3000 VA to 120000 VA")).isEqualTo(2100, EXACT);
    assertThat(Examples.line(lines, "general load, from 3000 VA to 120000 VA").runningSum())
        .isEqualTo(published("worked_example_D1a", "after"), EXACT);
    assertThat(result(lines, "cooking equipment, column C, 1")).isEqualTo(published("worked_example_D1a", "range"), EXACT);
    assertThat(result(lines, "clothes dryers")).isEqualTo(published("worked_example_D1a", "dryer"), EXACT);
    assertThat(sheet.total().si()).isEqualTo(published("worked_example_D1a", "total"), EXACT);
    assertThat(sheet.current().si()).isEqualTo(published("worked_example_D1a", "service current"), EXACT);
    assertThat(result(sheet.neutralLines(), "cooking equipment, column C, 1")).isEqualTo(5600, EXACT);
    assertThat(result(sheet.neutralLines(), "clothes dryers")).isEqualTo(3850, EXACT);
    assertThat(sheet.neutralTotal().si()).isEqualTo(published("worked_example_D1a", "neutral"), EXACT);
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(100);
  }

  /**
   * NFPA 70 Annex D example D1(b), flylib.com example_no_d1_b: 99 A on line A, 104 A on line B, service of 110 A. Of the air conditioner on
   * line A and the dishwasher on line B the larger counts for the neutral, the disposer beside it. The edition of 2005 has 83 A there with
   * 2 A for its largest motor, that of 2002 has 84 A with the 3 A of the air conditioner (forums.mikeholt.com
   * 2002-nec-annex-d-example-d1-b).
   */
  @Test
  void standardMethodWithMotors() {
    Worksheet sheet = calculate(
        US, "standard",
        service(
            feet(
                1500, 1, load("range", LoadClass.COOKING, 12000), load("dryer", LoadClass.DRYER, 5500),
                load("ac230", LoadClass.COOLING, 6 * 240), load("ac115", LoadClass.COOLING, 12 * 120).on(Leg.A),
                load("disposer", LoadClass.FIXED_APPLIANCE, 8 * 120).on(Leg.B).asMotor(),
                load("dishwasher", LoadClass.FIXED_APPLIANCE, 10 * 120).on(Leg.B))));
    assertThat(result(sheet.lines(), "cooling")).isEqualTo((6 + 12 / 2.0) * 240, EXACT);
    assertThat(result(sheet.lines(), "fixed appliances")).isEqualTo((8 + 10) * 120, EXACT);
    assertThat(result(sheet.lines(), "largest motor of leg A, in addition")).isEqualTo(3 * 120, EXACT);
    assertThat(result(sheet.lines(), "largest motor of leg B, in addition")).isEqualTo(2 * 120, EXACT);
    double lineA = 77.5 + 6 + 12 + 3;
    double lineB = 77.5 + 6 + 10 + 8 + 2;
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(lineA, EXACT).isCloseTo(99, within(0.51));
    assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(lineB, EXACT).isCloseTo(104, within(0.51));
    assertThat(sheet.current().si()).isEqualTo(lineB, EXACT);
    assertThat(result(sheet.neutralLines(), "largest motor, in addition")).isEqualTo(3 * 120, EXACT);
    assertThat(sheet.neutralCurrent().si()).isEqualTo(14550 / 240.0 + 12 + 8 + 3, EXACT).isCloseTo(84, within(0.51));
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(110);
  }

  /** NFPA 70 Annex D example D2(a), flylib.com example_no_d2_a: total and neutral. */
  @Test
  void optionalMethodWithRoomHeating() {
    Worksheet sheet = calculate(
        US, "optional",
        service(
            feet(
                1500, 1, load("range", LoadClass.COOKING, 12000), load("water", LoadClass.WATER_HEATING, 2500),
                load("dishwasher", LoadClass.FIXED_APPLIANCE, 1200).onNeutral(), load("dryer", LoadClass.DRYER, 5000),
                load("heat", LoadClass.ROOM_HEATING, 1800).times(5), load("ac", LoadClass.COOLING, 6 * 230))));
    List<Line> lines = sheet.lines();
    assertThat(connected(lines, "general lighting")).isEqualTo(4500, EXACT);
    assertThat(connected(lines, "cooking, as rated")).isEqualTo(12000, EXACT);
    assertThat(connected(lines, "water heating, as rated")).isEqualTo(2500, EXACT);
    assertThat(connected(lines, "fixed appliance, as rated")).isEqualTo(1200, EXACT);
    assertThat(connected(lines, "dryer, as rated")).isEqualTo(5000, EXACT);
    assertThat(
        connected(lines, "general loads, the first 10000 VA")
            + connected(lines, "general loads, the part above 10000 VA"))
        .isEqualTo(published("worked_example_D2a", "general connected"), EXACT);
    assertThat(connected(lines, "subtotal, general loads")).isEqualTo(published("worked_example_D2a", "general connected"), EXACT);
    assertThat(result(lines, "general loads, the part above 10000 VA")).isEqualTo(7880, EXACT);
    assertThat(Examples.line(lines, "general loads, the part above 10000 VA").runningSum())
        .isEqualTo(published("worked_example_D2a", "general after"), EXACT);
    assertThat(result(lines, "5 room heaters")).isEqualTo(published("worked_example_D2a", "heat"), EXACT);
    assertThat(connected(lines, "cooling, left out")).isEqualTo(1380, EXACT);
    assertThat(sheet.total().si()).isEqualTo(published("worked_example_D2a", "total"), EXACT);
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(100);
    assertThat(result(sheet.neutralLines(), "cooking equipment, column C, 1")).isEqualTo(5600, EXACT);
    assertThat(result(sheet.neutralLines(), "clothes dryers")).isEqualTo(3500, EXACT);
    assertThat(result(sheet.neutralLines(), "fixed appliances")).isEqualTo(1200, EXACT);
    assertThat(sheet.neutralTotal().si()).isEqualTo(15400, EXACT);
  }

  /** NFPA 70 Annex D example D2(b), flylib.com example_no_d2_b; 122 A by thompsonlearningco.com annex-d. */
  @Test
  void optionalMethodWithCoolingLarger() {
    Worksheet sheet = calculate(
        US, "optional",
        service(
            feet(
                1500, 1, load("ovens", LoadClass.COOKING, 4000).times(2), load("cooktop", LoadClass.COOKING, 5100),
                load("water", LoadClass.WATER_HEATING, 4500),
                load("dishwasher", LoadClass.FIXED_APPLIANCE, 1200).onNeutral(), load("dryer", LoadClass.DRYER, 5000),
                load("ac", LoadClass.COOLING, 7 * 240).times(6), load("bath", LoadClass.ROOM_HEATING, 1500))));
    List<Line> lines = sheet.lines();
    assertThat(
        connected(lines, "general loads, the first 10000 VA")
            + connected(lines, "general loads, the part above 10000 VA"))
        .isEqualTo(32800, EXACT);
    assertThat(result(lines, "general loads, the part above 10000 VA")).isEqualTo(9120, EXACT);
    assertThat(result(lines, "cooling")).isEqualTo(10080, EXACT);
    assertThat(sheet.total().si()).isEqualTo(29200, EXACT);
    assertThat(sheet.current().si()).isEqualTo(121.7, within(0.05));
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(125);
    // 13.1 kVA at 55 % is 7205 VA; the example rounds it to 7200 before the 70 %.
    assertThat(result(sheet.neutralLines(), "cooking equipment, column B, 3")).isEqualTo(5040, within(4.0));
    assertThat(result(sheet.neutralLines(), "clothes dryers")).isEqualTo(3500, EXACT);
    assertThat(sheet.neutralTotal().si()).isEqualTo(5100 + 5040 + 3500 + 1200, within(4.0));
  }

  /** NFPA 70 Annex D example D2(c), flylib.com example_no_d2_c (demand.csv). */
  @Test
  void optionalMethodWithAHeatPump() {
    Worksheet sheet = calculate(
        US, "optional",
        service(
            feet(
                2000, 1, load("range", LoadClass.COOKING, 12000), load("water", LoadClass.WATER_HEATING, 4500),
                load("dishwasher", LoadClass.FIXED_APPLIANCE, 1200).onNeutral(), load("dryer", LoadClass.DRYER, 5000),
                load("pump", LoadClass.HEAT_PUMP, 24 * 240), load("strips", LoadClass.HEATING, 15000))));
    List<Line> lines = sheet.lines();
    assertThat(
        connected(lines, "general loads, the first 10000 VA")
            + connected(lines, "general loads, the part above 10000 VA"))
        .isEqualTo(published("worked_example_D2c", "general connected"), EXACT);
    assertThat(Examples.line(lines, "general loads, the part above 10000 VA").runningSum())
        .isEqualTo(published("worked_example_D2c", "general after"), EXACT);
    assertThat(result(lines, "heat pump") + result(lines, "supplementary heating"))
        .isEqualTo(published("worked_example_D2c", "heat pump"), EXACT);
    assertThat(sheet.total().si()).isEqualTo(published("worked_example_D2c", "total"), EXACT);
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(150);
  }

  /** Training example at jadelearning.com single-family-dwelling-calculation-optional-method (demand.csv): 126 A. */
  @Test
  void optionalMethodWithCentralHeat() {
    Worksheet sheet = calculate(
        US, "optional",
        service(
            feet(
                2800, 1, load("range", LoadClass.COOKING, 14000), load("water", LoadClass.WATER_HEATING, 3000),
                load("dryer", LoadClass.DRYER, 5000), load("dish", LoadClass.FIXED_APPLIANCE, 1500).onNeutral(),
                load("furnace", LoadClass.HEATING, 15000))));
    assertThat(result(sheet.lines(), "central heating")).isEqualTo(published("worked_example_training", "central"), EXACT);
    assertThat(sheet.total().si()).isEqualTo(published("worked_example_training", "total"), EXACT);
    assertThat(Math.round(sheet.current().si())).isEqualTo(126);
  }

  /** ask-the-electrician.com electric-service-calculation: 46 575 VA, 194 A; it leaves the largest motor out. */
  @Test
  void standardMethodOfALargeHouse() {
    Worksheet sheet = calculate(
        US, "standard",
        service(
            feet(
                3000, 1, load("range", LoadClass.COOKING, 12000), load("heat", LoadClass.HEATING, 20000),
                load("water", LoadClass.WATER_HEATING, 5000), load("ac", LoadClass.COOLING, 9000),
                load("dish", LoadClass.FIXED_APPLIANCE, 1000).onNeutral(),
                load("disposal", LoadClass.FIXED_APPLIANCE, 900).onNeutral(), load("dryer", LoadClass.DRYER, 4500))));
    List<Line> lines = sheet.lines();
    assertThat(connected(lines, "general lighting")).isEqualTo(9000, EXACT);
    assertThat(result(lines, "general load, from 3000 VA to 120000 VA")).isEqualTo(3675, EXACT);
    assertThat(result(lines, "fixed appliances")).isEqualTo(6900, EXACT);
    assertThat(result(lines, "clothes dryers")).isEqualTo(5000, EXACT);
    assertThat(result(lines, "heating")).isEqualTo(20000, EXACT);
    assertThat(sheet.total().si()).isEqualTo(46575, EXACT);
    assertThat(Math.round(sheet.current().si())).isEqualTo(194);
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(200);
  }
}
