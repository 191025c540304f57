package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.CA;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.load;
import static wattle.worksheet.Examples.meters;
import static wattle.worksheet.Examples.result;
import static wattle.worksheet.Examples.service;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.read.SourceReader;

/** Canadian houses from plans: watts, measured demand, energy management, and the least load of a suite. */
class CanadianHouseTest {
  private static final String HOUSE = """
      use code ca-2021
      dwelling { floor-area 150 m2 }
      service main 120/240 V 100 A existing { peak-demand 9 kW run 9 m of 3 Cu triplex }
      panel P from main existing { bus 125 A slots 24 bonded
        main breaker 100 A
        1+3 40 A two-pole range
        2+4 20 A two-pole water
        5   20 A new motor
        6+8 50 A two-pole new car
      }
      branch range by 8/3 NMD90 existing { P --5 m-- kitchen.range }
      branch water by 12/2 NMD90 existing { P --5 m-- kitchen.water }
      branch motor by 12/2 NMD90 { P --5 m-- kitchen.vac }
      branch car by 6/3 NMD90 { P --5 m-- garage.car }
      room kitchen existing { range: range 12 kW   water: water heater 3 kW   vac: disposal 1450 W new }
      room garage existing { car: vehicle charger 7.2 kW new }
      """;

  private static Compilation compile(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static Worksheet sheet(String text, String method) {
    Compilation plan = compile(text);
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    Outcome outcome = worksheets.calculate(worksheets.method(method).orElseThrow(), worksheets.services().get(0));
    return outcome.worksheet().orElseThrow(() -> new AssertionError(outcome.objections().toString()));
  }

  /**
   * By hand, 8-200 1) a): 6000 W for 150 m², 6000 W for the range, 7200 W for the charger, 25 % of the water heater; the disposal of 1450 W
   * is below 1500 W, whatever its power factor, so that it is in the basic load.
   */
  @Test
  void wattsStayWatts() {
    for (String disposal : List.of("disposal 1450 W", "disposal 1450 W power-factor 0.8")) {
      Worksheet sheet = sheet(HOUSE.replace("disposal 1450 W", disposal), "single");
      assertThat(result(sheet.lines(), "other loads above 1500 W")).isEqualTo(750, within(1e-6));
      assertThat(sheet.lines()).flatExtracting(Line::devices).doesNotContain("kitchen.vac");
      assertThat(sheet.lines().stream().flatMap(l -> l.result().stream()).map(d -> d.value().text())).allMatch(t -> t.endsWith(" W"));
      assertThat(sheet.total().value().text()).isEqualTo("24000 W");
    }
    assertThat(result(sheet(HOUSE.replace("1450 W", "1600 W"), "single").lines(), "other loads above 1500"
        + " W")).isEqualTo(1150, within(1e-6));
  }

  /** 8-200 1) b): 24 000 W, which are 100 A at 240 V; 19 950 W calculated are made up to it. */
  @Test
  void theLeastLoadIsShownInAmperes() {
    Line line = Examples.line(sheet(HOUSE, "single").lines(), "up to the minimum load of a dwelling");
    assertThat(line.result().orElseThrow().si()).isEqualTo(24000 - 19950, within(1e-6));
    assertThat(line.remark()).contains("24000 W, 100 A at 240 V");
  }

  /** technicalsafetybc.ca IB-EL 2023-01, 8-106 8): 9000 W measured and 7200 and 1450 W added, 73.5 A; by 8-104 on a rating of 91.9 A. */
  @Test
  void loadAddedToAMeasuredDemand() {
    Worksheet sheet = sheet(HOUSE, "measured");
    assertThat(sheet.total().si()).isEqualTo(9000 + 7200 + 1450, within(1e-6));
    assertThat(sheet.current().si()).isEqualTo(17650 / 240.0, within(1e-6));
    assertThat(sheet.sized().si()).isEqualTo(17650 / 240.0 / 0.8, within(1e-6));
    assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(100);
    Compilation plan = compile(HOUSE);
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    assertThat(worksheets.applicable(worksheets.services().get(0)).stream().map(w -> w.method().name()))
        .containsExactly("measured", "single");
    assertThat(plan.findings()).extracting(Finding::rule).doesNotContain("service-below-load");
  }

  private static Inputs measured(DwellingUnit... units) {
    Inputs inputs = service(units);
    return new Inputs(
        inputs.name(), inputs.scope(), inputs.system(), inputs.rating(), inputs.dwellings(), inputs.common(),
        Optional.of(Quantity.of(9000, Units.WATT)));
  }

  private static ConnectedLoad standing(String name, LoadClass loadClass, double watts) {
    return load(name, loadClass, watts);
  }

  private static ConnectedLoad added(String name, LoadClass loadClass, double watts) {
    return load(name, loadClass, watts).asAdded();
  }

  /**
   * By hand, 8-106 8) with the factors of 8-200 1) a): beside a range that is there an oven of 4 kW and a dryer of 5 kW count 25 %, a hot
   * tub of 6 kW and a charger of 7.2 kW in full, and a fan of 900 W in full, since the basic load that has it in it is not counted.
   */
  @Test
  void addedLoadsHaveTheirDemandFactors() {
    DwellingUnit unit = meters(
        150, standing("range", LoadClass.COOKING, 12000), standing("water", LoadClass.WATER_HEATING, 3000),
        added("oven", LoadClass.COOKING, 4000), added("dryer", LoadClass.DRYER, 5000), added("tub", LoadClass.POOL_HEATING, 6000),
        added("car", LoadClass.VEHICLE_CHARGING, 7200), added("fan", LoadClass.FIXED_APPLIANCE, 900));
    Worksheet sheet = calculate(CA, "measured", measured(unit));
    assertThat(result(sheet.lines(), "other loads above 1500 W")).isEqualTo(0.25 * 9000, within(1e-6));
    assertThat(result(sheet.lines(), "tankless water heaters, steamers, pools, hot tubs and spas")).isEqualTo(6000, within(1e-6));
    assertThat(result(sheet.lines(), "vehicle charging")).isEqualTo(7200, within(1e-6));
    assertThat(result(sheet.lines(), "other loads up to 1500 W, in full")).isEqualTo(900, within(1e-6));
    assertThat(sheet.total().si()).isEqualTo(9000 + 2250 + 6000 + 7200 + 900, within(1e-6));
    assertThat(sheet.lines()).allSatisfy(l -> assertThat(l.article()).as(l.name()).isNotEqualTo(""));
    assertThat(sheet.lines()).flatExtracting(Line::devices).doesNotContain("range", "water");
  }

  /** By hand: a first range of 14 kW is 6000 W and 40 % of 2000 W; a water heater beside it 25 %. */
  @Test
  void anAddedRange() {
    DwellingUnit unit = meters(150, added("range", LoadClass.COOKING, 14000), added("water", LoadClass.WATER_HEATING, 3000));
    Worksheet sheet = calculate(CA, "measured", measured(unit.with(standing("dryer", LoadClass.DRYER, 5000))));
    assertThat(result(sheet.lines(), "range")).isEqualTo(6800, within(1e-6));
    assertThat(result(sheet.lines(), "other loads above 1500 W")).isEqualTo(750, within(1e-6));
    assertThat(sheet.total().si()).isEqualTo(9000 + 6800 + 750, within(1e-6));
  }

  /** By hand: without a range 6000 W in full and 25 % of the rest; of 14 kW of room heat 10 kW and 75 % of 4 kW, the cooling left out. */
  @Test
  void addedLoadsWithoutARange() {
    DwellingUnit unit = meters(
        150, added("dryer", LoadClass.DRYER, 5500), added("water", LoadClass.WATER_HEATING, 4500),
        added("heat", LoadClass.ROOM_HEATING, 2000).times(7), added("ac", LoadClass.COOLING, 4000),
        standing("ac1", LoadClass.COOLING, 20000));
    Worksheet sheet = calculate(CA, "measured", measured(unit));
    assertThat(sheet.total().si()).isEqualTo(9000 + 6000 + 0.25 * 4000 + 10000 + 0.75 * 4000, within(1e-6));
    assertThat(Examples.line(sheet.lines(), "cooling, left out").devices()).containsExactly("ac");
  }

  /** 8-106 8) is of any service: of two suites one gets a charger, and three alike get one each. */
  @Test
  void severalDwellingsThatAreMeasured() {
    DwellingUnit one = meters(80, standing("range", LoadClass.COOKING, 12000));
    DwellingUnit other = new DwellingUnit(
        "suite", one.floorArea(), one.basementArea(), one.smallAppliance(), one.laundry(),
        List.of(added("car", LoadClass.VEHICLE_CHARGING, 7200)), List.of(), 3);
    Worksheet sheet = calculate(CA, "measured", measured(one, other));
    assertThat(result(sheet.lines(), "vehicle charging, suite, 3 alike")).isEqualTo(3 * 7200, within(1e-6));
    assertThat(sheet.total().si()).isEqualTo(9000 + 3 * 7200, within(1e-6));
    assertThat(sheet.neutralTotal().si()).isPositive();
    HouseWorksheets worksheets = worksheets(
        HOUSE.replace("dwelling { floor-area 150 m2 }", "dwelling { floor-area 150 m2 dwellings 2 }"));
    assertThat(worksheets.applicable(worksheets.services().get(0)).stream().map(w -> w.method().name())).contains("measured", "row");
  }

  private static HouseWorksheets worksheets(String text) {
    Compilation plan = compile(text);
    return new HouseWorksheets(plan.house(), plan.library());
  }

  /** rmwb.ca safety-codes-bulletin-summer-2026: what a system by 8-500 controls, a hot tub too, is not in the calculated load. */
  @Test
  void aManagedHotTub() {
    String tub = HOUSE.replace("7.2 kW new }", "7.2 kW new tub: hot tub 25 A new load-managed }")
        .replace("6+8 50 A two-pole new car", "6+8 50 A two-pole new car\n    10+12 40 A two-pole new tub")
        + "branch tub by 8/3 NMD90 { P --5 m-- garage.tub }\n";
    Line line = Examples.line(sheet(tub, "measured").lines(), "other loads under energy management, left out");
    assertThat(line.result()).isEmpty();
    assertThat(line.article()).isEqualTo("8-500");
    assertThat(line.devices()).containsExactly("garage.tub");
    assertThat(sheet(tub, "measured").total().si()).isEqualTo(17650, within(1e-6));
    assertThat(sheet(tub, "single").lines()).extracting(Line::name).contains("other loads under energy management, left out");
    assertThat(sheet(tub.replace(" load-managed", ""), "measured").total().si()).isEqualTo(17650 + 25 * 240, within(1e-6));
  }

  /** By hand: 24 000 W are 66.6 A on each of three legs of 120/208 V, and 115.4 A between two. */
  @Test
  void theLeastLoadInAmperesOnEachSupply() {
    DwellingUnit unit = meters(150);
    assertThat(remark(calculate(CA, "single", new Inputs(
        "main", Inputs.Scope.SERVICE, Examples.WYE, Optional.empty(), List.of(unit), List.of(), Optional.empty()))))
        .contains("24000 W, 66.6 A at 208 V, three-phase");
    SupplySystem two = new SupplySystem(SupplySystem.Kind.TWO_LEGS_OF_WYE, 120, 208);
    assertThat(remark(calculate(CA, "single", new Inputs(
        "main", Inputs.Scope.SERVICE, two, Optional.empty(), List.of(unit), List.of(), Optional.empty()))))
        .contains("24000 W, 115.4 A at 208 V");
  }

  private static String remark(Worksheet sheet) {
    return Examples.line(sheet.lines(), "up to the minimum load of a dwelling").remark();
  }

  /** 8-106 11): a charger that a system holds back by the load of the service does not count; the sheet still names it. */
  @Test
  void aManagedCharger() {
    Worksheet sheet = sheet(HOUSE.replace("7.2 kW new", "7.2 kW new load-managed"), "single");
    Line line = Examples.line(sheet.lines(), "vehicle charging under energy management, left out");
    assertThat(line.result()).isEmpty();
    assertThat(line.article()).isEqualTo("8-106 11)");
    assertThat(sheet(HOUSE.replace("7.2 kW new", "7.2 kW new load-managed"), "measured").total().si()).isEqualTo(10450, within(1e-6));
  }

  /**
   * By hand: a suite of 60 m² with a range and 6 kW of heat is 5000 + 6000 W and its heat, above the least of 14 400 W, so that 11 000 W
   * and not 14 400 W stand beside the heat; without heat it is made up to the least.
   */
  @Test
  void theLeastLoadIsThatOfTheWholeSuite() {
    DwellingUnit warm = meters(60, load("range", LoadClass.COOKING, 12000), load("heat", LoadClass.ROOM_HEATING, 6000));
    DwellingUnit cold = meters(60, load("range", LoadClass.COOKING, 12000));
    assertThat(calculate(CA, "row", service(warm, warm)).total().si()).isEqualTo(1.65 * 11000 + 10000 + 0.75 * 2000, within(1e-6));
    assertThat(calculate(CA, "row", service(cold, cold)).total().si()).isEqualTo(1.65 * 14400, within(1e-6));
  }

  private static Worksheet deciding(String example, String panel) throws SourceReader.Unreadable {
    Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(Path.of("examples/" + example + "/house.wattle"));
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    return worksheets.least(panel.isEmpty() ? worksheets.services().get(0) : worksheets.feeder(panel).orElseThrow()).orElseThrow();
  }

  /**
   * By hand, 8-202 1): a suite of 58 m² has 3500 and 1500 W, its range of 8 kW 6000 W, 2500 W of room heating, made up to 14 400 W,
   * which are 60 A at 240 V. The house beside it: 6000 W for 128 m², a range 6000 W, a hot tub of 40 A and a charger of 32 A in full, 25 %
   * of a dryer of 5.5 kW and of a water heater of 3 kW; by 8-202 3) the house in full, 65 % of the suite without its heat, and the heat.
   */
  @Test
  void aHouseWithASuite() throws SourceReader.Unreadable {
    Worksheet suite = deciding("tamarack-road", "S");
    assertThat(suite.method().title() + ", " + suite.method().source().place()).isEqualTo("Suite or apartment, 8-202 1)");
    assertThat(suite.lines()).extracting(Line::name).containsExactly(
        "basic load", "range", "room heating, the first 10000 W", "up to the minimum load of a dwelling");
    assertThat(suite.lines()).extracting(Line::article).allMatch(a -> a.matches("(8-20[02] 1\\)|62-118 3).*"));
    assertThat(suite.total().si()).isEqualTo(14400, within(1e-6));
    assertThat(suite.current().si()).isEqualTo(60, within(1e-6));
    Worksheet whole = deciding("tamarack-road", "");
    double house = 6000 + 6000 + 40 * 240 + 32 * 240 + 0.25 * 8500;
    double own = 14400 - 2500;
    assertThat(whole.total().si()).isEqualTo(house + 0.65 * own + 2500, within(1e-6));
    // The lines of each dwelling are listed above what they make.
    assertThat(Examples.line(whole.lines(), "house: vehicle charging").article()).isEqualTo("8-200 1) a) vi)");
    assertThat(Examples.line(whole.lines(), "suite: basic load").connected().orElseThrow().si()).isEqualTo(5000, within(1e-6));
    assertThat(Examples.line(whole.lines(), "suite: basic load").result()).isEmpty();
  }

  /** Units of a duplex are single dwellings: 8-200 1) b) i), 24 000 W for 96 m², which are 100 A at 240 V. */
  @Test
  void aUnitOfADuplexIsASingleDwelling() throws SourceReader.Unreadable {
    Worksheet unit = deciding("kestrel-lane", "L");
    assertThat(unit.method().source().place()).isEqualTo("8-200 1)");
    assertThat(unit.total().si()).isEqualTo(24000, within(1e-6));
    assertThat(result(unit.lines(), "basic load")).isEqualTo(6000, within(1e-6));
  }

  /**
   * What feeds such units is calculated as they are, by 8-200 2), and not as apartments, which would come to less. By hand: each has
   * 24 000 W with its 3000 W of heating, so 21 000 W without it; one in full, one at 65 %; 6000 W of heating; 75 % of the 260 W outside.
   */
  @Test
  void theServiceOfADuplexIsNoneOfApartments() throws SourceReader.Unreadable {
    Worksheet whole = deciding("kestrel-lane", "");
    assertThat(whole.method().source().place()).isEqualTo("8-200 2)");
    assertThat(whole.total().si()).isEqualTo(21000 + 0.65 * 21000 + 6000 + 0.75 * 260, within(1e-6));
    assertThat(whole.current().si()).isEqualTo(40845 / 240.0, within(1e-6));
  }
}
