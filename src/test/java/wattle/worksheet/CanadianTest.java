package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.CA;
import static wattle.worksheet.Examples.SPLIT;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.feeder;
import static wattle.worksheet.Examples.load;
import static wattle.worksheet.Examples.meters;
import static wattle.worksheet.Examples.part;
import static wattle.worksheet.Examples.result;
import static wattle.worksheet.Examples.service;

import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.model.LoadClass;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** CSA C22.1 8-200 and 8-202. */
class CanadianTest {
  private static final Offset<Double> EXACT = within(1e-6);

  /**
   * Published example, scribd.com 205290785 MEP-Load-Cal: 269 m², gas heat. Its lines are 7000, 6000, 6000, 8000, 7200 and
   * 2375 W; the 173.1 A that it prints are more than the lines come to, so that the sum is not compared.
   */
  @Test
  void publishedHouseWithCoolingAndAHotTub() {
    Worksheet sheet = calculate(
        CA, "single",
        service(
            meters(
                269, load("ac", LoadClass.COOLING, 6000), load("range", LoadClass.COOKING, 11000),
                load("tub", LoadClass.POOL_HEATING, 8000), load("car", LoadClass.VEHICLE_CHARGING, 7200),
                load("dryer", LoadClass.DRYER, 5000), load("disposal", LoadClass.FIXED_APPLIANCE, 800).onNeutral(),
                load("micro", LoadClass.FIXED_APPLIANCE, 1500).onNeutral(),
                load("dish", LoadClass.FIXED_APPLIANCE, 1200).onNeutral(),
                load("water", LoadClass.WATER_HEATING, 4500))));
    List<Line> lines = sheet.lines();
    assertThat(result(lines, "basic load")).isEqualTo(7000, EXACT);
    assertThat(result(lines, "cooling")).isEqualTo(6000, EXACT);
    assertThat(result(lines, "range")).isEqualTo(6000, EXACT);
    assertThat(result(lines, "tankless water heaters, steamers, pools, hot tubs and spas")).isEqualTo(8000, EXACT);
    assertThat(result(lines, "vehicle charging")).isEqualTo(7200, EXACT);
    assertThat(result(lines, "other loads above 1500 W")).isEqualTo(2375, EXACT);
    assertThat(sheet.total().si()).isEqualTo(36575, EXACT);
  }

  /** Published example, dakotaprep.com demand-factors-residential-guide: 900 m² a floor, two floors, and a basement. */
  @Test
  void publishedMansionsFloorArea() {
    DwellingUnit unit = new DwellingUnit(
        "mansion", Optional.of(Quantity.of(1800, Units.SQUARE_METER)), Optional.of(Quantity.of(900, Units.SQUARE_METER)),
        Circuits.NONE, Circuits.NONE, List.of(), List.of(), 1);
    Worksheet sheet = calculate(CA, "single", service(unit));
    // 2475 m² − 90 m² = 2385 m², which is 26.5 and so 27 parts of 90 m².
    assertThat(result(sheet.lines(), "basic load")).isEqualTo(5000 + 27 * 1000, EXACT);
  }

  /** CSA C22.1 8-200 1) a) iv) (demand.csv); dakotaprep.com: a 17 kW range counts 8000 W. */
  @Test
  void rangeAboveTwelveKilowatts() {
    Worksheet sheet = calculate(CA, "single", service(meters(90, load("range", LoadClass.COOKING, 17000))));
    assertThat(result(sheet.lines(), "basic load")).isEqualTo(5000, EXACT);
    assertThat(result(sheet.lines(), "range")).isEqualTo(8000, EXACT);
  }

  /** CSA C22.1 62-118 3) (demand.csv) and 8-106 3). */
  @Test
  void roomHeatingAgainstCooling() {
    Worksheet sheet = calculate(
        CA, "single",
        service(meters(150, load("heat", LoadClass.ROOM_HEATING, 2000).times(7), load("ac", LoadClass.COOLING, 4000))));
    assertThat(result(sheet.lines(), "room heating, the first 10000 W")).isEqualTo(10000, EXACT);
    assertThat(result(sheet.lines(), "room heating, the part above 10000 W")).isEqualTo(3000, EXACT);
    assertThat(Examples.line(sheet.lines(), "cooling, left out").result()).isEmpty();
  }

  /** CSA C22.1 8-200 1) a) vii) without a range, from memory (demand.csv). */
  @Test
  void otherLoadsWithoutARange() {
    Worksheet sheet = calculate(
        CA, "single",
        service(
            meters(
                150, load("water", LoadClass.WATER_HEATING, 4500), load("dryer", LoadClass.DRYER, 5500),
                load("small", LoadClass.FIXED_APPLIANCE, 1500))));
    assertThat(result(sheet.lines(), "other loads, the first 6000 W")).isEqualTo(6000, EXACT);
    assertThat(result(sheet.lines(), "other loads, the part above 6000 W")).isEqualTo(1000, EXACT);
  }

  /** CSA C22.1 8-200 1) b): 24 000 W from 80 m² on, technicalsafetybc.ca IB-EL 2016-07 (demand.csv); below from memory. */
  @Test
  void leastLoadOfADwelling() {
    assertThat(calculate(CA, "single", service(meters(80))).total().si()).isEqualTo(24000, EXACT);
    assertThat(calculate(CA, "single", service(meters(80))).current().si()).isEqualTo(100, EXACT);
    assertThat(calculate(CA, "single", service(meters(79))).current().si()).isEqualTo(60, EXACT);
    assertThat(calculate(CA, "single", part(meters(79))).total().si()).isEqualTo(5000, EXACT);
  }

  /** CSA C22.1 8-202 1), from memory. */
  @Test
  void basicLoadOfAnApartment() {
    assertThat(calculate(CA, "multi", feeder(SPLIT, meters(45))).current().si()).as("the least").isEqualTo(60, EXACT);
    assertThat(apartment(45)).isEqualTo(3500, EXACT);
    assertThat(apartment(46)).isEqualTo(5000, EXACT);
    assertThat(apartment(90)).isEqualTo(5000, EXACT);
    assertThat(apartment(91)).isEqualTo(6000, EXACT);
    assertThat(apartment(181)).isEqualTo(7000, EXACT);
  }

  private static double apartment(double area) {
    return result(calculate(CA, "multi", feeder(SPLIT, meters(area))).lines(), "basic load");
  }

  /** CSA C22.1 8-202 3), from memory: 100, 65, 65, 40, 40, then 25 % to the twentieth and 10 % beyond. */
  @Test
  void manyApartments() {
    DwellingUnit unit = meters(
        80, load("range", LoadClass.COOKING, 12000), load("dryer", LoadClass.DRYER, 5000),
        load("heat", LoadClass.ROOM_HEATING, 2000).times(2));
    // With its heat of 4000 W a unit is above the least of 14 400 W, so that nothing is made up.
    double own = 5000 + 6000 + 0.25 * 5000;
    Worksheet sheet = calculate(CA, "multi", service(unit.times(25)));
    double dwellings = own * (1 + 2 * 0.65 + 2 * 0.40 + 15 * 0.25 + 5 * 0.10);
    double heat = 10000 + 0.75 * (25 * 4000 - 10000);
    assertThat(sheet.total().si()).isEqualTo(dwellings + heat, EXACT);
    assertThat(sheet.lines()).filteredOn(l -> l.name().startsWith("house") && l.result().isPresent()).hasSize(5);
  }
}
