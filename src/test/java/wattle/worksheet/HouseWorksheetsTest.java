package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import wattle.read.SourceReader;

/** From plans to worksheets. */
class HouseWorksheetsTest {
  private static final String HOUSE = """
      use code us-2023
      dwelling { floor-area 100 m2 }
      service main 120/240 V 100 A { run 9 m of 4/0 Al triplex }
      panel P from main {
        bus 200 A slots 20 bonded
        main breaker 100 A
        1+3 50 A two-pole range
        2+4 20 A two-pole counter
        5   20 A laundry
        6   20 A dish
        7+9 30 A two-pole water
        8+10 40 A two-pole G
      }
      panel G from P/8 by 9 m of 8/3 NM-B {
        bus 60 A slots 8
        1   20 A bench
        2+4 20 A two-pole car
      }
      branch range by 6/3 NM-B { P --3 m-- kitchen.range }
      branch counter by 12/3 NM-B is small-appliance { P --3 m-- kitchen.c }
      branch laundry by 12/2 NM-B is laundry { P --3 m-- kitchen.w }
      branch dish by 12/2 NM-B { P --3 m-- kitchen.dish }
      branch water by 10/2 NM-B { P --3 m-- kitchen.water }
      branch bench by 12/2 NM-B { G --3 m-- garage.o }
      branch car by 12/2 NM-B { G --3 m-- garage.car }
      room kitchen { range: range 12 kW   c: split receptacle at counter   w: washer 900 W   dish: dishwasher 1200 W
        water: water heater 4.5 kW }
      room garage { o: receptacle   car: vehicle charger 16 A }
      """;

  private static Compilation compile(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  /** What the rules of the packs say of so bare a house, and what cannot be worked out of it, is no matter of worksheets. */
  private static List<Finding> structure(Compilation plan) {
    return wattle.Structure.findings(plan);
  }

  private static HouseWorksheets worksheets(String text) {
    Compilation plan = compile(text);
    assertThat(structure(plan)).filteredOn(f -> !f.rule().endsWith("-below-load")).extracting(Finding::headline).isEmpty();
    return new HouseWorksheets(plan.house(), plan.library());
  }

  private static Outcome service(String text, String method) {
    HouseWorksheets worksheets = worksheets(text);
    return worksheets.calculate(worksheets.method(method).orElseThrow(), worksheets.services().get(0));
  }

  private static List<String> rules(Outcome outcome) {
    return outcome.objections().stream().map(Objection::rule).toList();
  }

  @Test
  void loadsComeFromDevicesAndCircuitsFromBranches() {
    Worksheet sheet = service(HOUSE, "standard").worksheet().orElseThrow();
    assertThat(Examples.connected(sheet.lines(), "general lighting")).isEqualTo(3300, within(1e-6));
    assertThat(Examples.connected(sheet.lines(), "small-appliance circuits")).isEqualTo(3000, within(1e-6));
    assertThat(Examples.line(sheet.lines(), "small-appliance circuits").devices()).containsExactly("counter");
    assertThat(Examples.result(sheet.lines(), "fixed appliances")).isEqualTo(5700, within(1e-6));
    assertThat(Examples.line(sheet.lines(), "fixed appliances").devices()).containsExactly("kitchen.dish", "kitchen.water");
    assertThat(Examples.result(sheet.neutralLines(), "fixed appliances")).isEqualTo(1200, within(1e-6));
    assertThat(Examples.result(sheet.lines(), "vehicle charging")).as("7200 VA at least").isEqualTo(7200, within(1e-6));
    assertThat(sheet.rating().orElseThrow().si()).isEqualTo(100);
    double total = 3000 + 0.35 * 4800 + 5700 + 8000 + 7200;
    assertThat(sheet.total().si()).isEqualTo(total, within(1e-6));
    // The dishwasher is alone on leg A: half of it comes on top of the mean.
    assertThat(sheet.current().si()).isEqualTo((total + 1200) / 240, within(1e-6));
  }

  /** Every figure leads down to what the plan says and what the code says. */
  @Test
  void figuresUnfoldToDevices() {
    Worksheet sheet = service(HOUSE, "standard").worksheet().orElseThrow();
    assertThat(leaves(sheet.current())).contains("kitchen.range", "kitchen.dish", "kitchen.water", "floor area");
    assertThat(sheet.lines()).allSatisfy(l -> assertThat(l.article()).as(l.name()).isNotEmpty());
    assertThat(service(HOUSE, "optional").worksheet().orElseThrow().lines())
        .allSatisfy(l -> assertThat(l.article()).as(l.name()).isNotEmpty());
    double last = sheet.lines().get(sheet.lines().size() - 1).runningSum();
    assertThat(last).isEqualTo(sheet.total().si(), within(1e-6));
  }

  private static List<String> leaves(wattle.derivation.Derivation derivation) {
    return derivation.inputs().isEmpty()
        ? List.of(derivation.name())
        : derivation.inputs().stream().flatMap(d -> leaves(d).stream()).toList();
  }

  @Test
  void aFeederCountsWhatItFeeds() {
    HouseWorksheets worksheets = worksheets(HOUSE);
    HouseInputs.Read read = worksheets.feeder("G").orElseThrow();
    assertThat(read.inputs().scope()).isEqualTo(Inputs.Scope.PART);
    Worksheet sheet = worksheets.calculate(worksheets.method("standard").orElseThrow(), read).worksheet().orElseThrow();
    // A garage is in no floor area: its outlet counts 180 VA, NFPA 70 220.14(I), askmehelpdesk.com 261707.
    assertThat(sheet.total().si()).isEqualTo(180 + 7200, within(1e-6));
    assertThat(sheet.rating().orElseThrow().si()).isEqualTo(40);
    assertThat(worksheets.feeder("P").orElseThrow().inputs().scope()).isEqualTo(Inputs.Scope.FEEDER);
    Outcome optional = worksheets.calculate(worksheets.method("optional").orElseThrow(), read);
    assertThat(rules(optional)).contains("method-for-whole-dwelling", "optional-below-100");
  }

  @Test
  void whatThePlanLacksIsNamed() {
    assertThat(rules(service(HOUSE.replace("floor-area 100 m2", "storeys 1"), "standard"))).containsExactly("floor-area-missing");
    assertThat(rules(service(HOUSE.replace("dwelling { floor-area 100 m2 }", ""), "standard"))).containsExactly("dwelling-missing");
    assertThat(rules(service(HOUSE, "measured"))).containsExactly("peak-demand-missing");
    assertThat(rules(service(HOUSE, "existing-dwelling"))).containsExactly("dwelling-not-existing");
    assertThat(rules(service(HOUSE, "multifamily"))).containsExactly("method-for-several-dwellings");
    Outcome unrated = service(HOUSE.replace("dishwasher 1200 W", "dishwasher"), "standard");
    assertThat(rules(unrated)).containsExactly("load-unrated");
    assertThat(unrated.worksheet()).as("what is known is still added up").isPresent();
  }

  @Test
  void aLoadWithoutAClass() {
    Outcome outcome = service(HOUSE.replace("dishwasher 1200 W", "kiln 1200 W") + "part kiln {\n needs hot neutral ground\n}\n",
        "standard");
    assertThat(rules(outcome)).containsExactly("load-class-missing");
    assertThat(outcome.objections().get(0).element()).isEqualTo("kitchen.dish");
  }

  @Test
  void areasThatContradictEachOther() {
    Outcome outcome = service(HOUSE.replace("room kitchen {", "room kitchen area 120 m2 {"), "standard");
    assertThat(rules(outcome)).containsExactly("areas-contradict");
    assertThat(rules(service(HOUSE.replace("room kitchen {", "room kitchen area 90 m2 {"), "standard"))).isEmpty();
    assertThat(rules(service(HOUSE.replace("room garage {", "room garage area 120 m2 {"), "standard"))).as("not counted").isEmpty();
    assertThat(structure(compile(HOUSE.replace("100 m2", "(10 m2 - 10 m2)")))).extracting(Finding::headline)
        .containsExactly("'floor-area' cannot be 0 m²");
  }

  @Test
  void theOptionalMethodStartsAtOneHundredAmperes() {
    Outcome outcome = service(HOUSE.replace("240 V 100 A", "240 V 60 A"), "optional");
    assertThat(rules(outcome)).containsExactly("optional-below-100");
    assertThat(outcome.worksheet()).isEmpty();
    assertThat(service(HOUSE, "optional").worksheet()).isPresent();
  }

  /** NFPA 70 220.87, symmetryace.com nec-code-requirement: 125 % of the peak of a year, and what is added. */
  @Test
  void theMeasuredPeak() {
    String stands = HOUSE.replace("{ run", "existing { peak-demand 9.6 kW\n run").replace("room kitchen {", "room kitchen existing {");
    Worksheet sheet = service(stands, "measured").worksheet().orElseThrow();
    assertThat(sheet.total().si()).isEqualTo(1.25 * 9600 + 7200, within(1e-6));
  }

  /** NFPA 70 220.83, ecmag.com saving-money-preserving-safety (demand.csv): 8 kVA and 40 % of the rest; with new cooling that in full. */
  @Test
  void anExistingDwelling() {
    String stands = HOUSE.replace("room kitchen {", "room kitchen existing {");
    double general = 3300 + 3000 + 1500 + 12000 + 1200 + 4500 + 16 * 240;
    assertThat(service(stands, "existing-dwelling").worksheet().orElseThrow().total().si())
        .isEqualTo(8000 + 0.4 * (general - 8000), within(1e-6));
    HouseWorksheets worksheets = worksheets(stands);
    Inputs with = worksheets.services().get(0).inputs().with(Examples.load("ac", LoadClass.COOLING, 4000).asAdded(),
        Optional.of("dwelling"));
    assertThat(Examples.calculate(Examples.US, "existing-dwelling", with).total().si())
        .isEqualTo(8000 + 0.4 * (general - 8000) + 4000, within(1e-6));
  }

  /** The smallest result of the methods that apply decides: by the standard one alone this house would need more. */
  @Test
  void aServiceIsComparedWithTheMostFavorableMethod() {
    String large = HOUSE.replace("floor-area 100 m2", "floor-area 170 m2");
    double standard = service(large, "standard").worksheet().orElseThrow().current().si();
    double optional = service(large, "optional").worksheet().orElseThrow().current().si();
    assertThat(optional).isLessThan(100).isLessThan(standard);
    assertThat(standard).isGreaterThan(100);
    assertThat(structure(compile(large))).isEmpty();
    assertThat(structure(compile(large.replace("water heater 4.5 kW", "water heater 24.5 kW"))))
        .extracting(Finding::rule)
        .containsExactly("service-below-load");
    assertThat(structure(compile(large.replace("floor-area 170 m2", "storeys 1")))).as("nothing is guessed").isEmpty();
  }

  @Test
  void flatsBehindOneService() throws SourceReader.Unreadable {
    Compilation plan = new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(Path.of("examples/linden-row/house.wattle"));
    HouseWorksheets worksheets = new HouseWorksheets(plan.house(), plan.library());
    HouseInputs.Read read = worksheets.services().get(0);
    assertThat(read.inputs().dwellingCount()).isEqualTo(4);
    assertThat(read.inputs().common()).extracting(ConnectedLoad::name).contains("yard.car", "stair.lamp");
    Worksheet optional = worksheets.calculate(worksheets.method("multifamily-optional").orElseThrow(), read).worksheet().orElseThrow();
    double dwellings = 33 * (84 + 3 * 72) + 4 * (3000 + 8000 + 2500);
    assertThat(Examples.result(optional.lines(), "all loads of 4 dwellings")).isEqualTo(0.45 * dwellings, within(1e-6));
    assertThat(Examples.result(optional.lines(), "vehicle charging")).isEqualTo(7200, within(1e-6));
    assertThat(worksheets.feeder("U").orElseThrow().inputs().dwellingCount()).as("each has its own feeder").isEqualTo(1);
  }

  /** NFPA 70 220.61(B)(1) and (C)(1): 70 % of a range counts for the neutral, but all of it on two legs of a wye. */
  @Test
  void theNeutralOfTwoLegsOfAWyeIsNotReduced() {
    assertThat(rangeOnNeutral(HOUSE)).isEqualTo(0.7 * 8000, within(1e-9));
    assertThat(rangeOnNeutral(HOUSE.replace("120/240 V", "120/208 V"))).isEqualTo(8000, within(1e-9));
  }

  private static double rangeOnNeutral(String plan) {
    return service(plan, "standard").worksheet().orElseThrow().neutralLines().stream()
        .filter(l -> l.name().startsWith("cooking"))
        .mapToDouble(l -> l.result().orElseThrow().si())
        .sum();
  }
}
