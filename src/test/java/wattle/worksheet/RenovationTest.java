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

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wattle.cli.Main;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;

import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.LoadClass;
import wattle.read.SourceReader;

/** Existing dwellings that get more load: which method applies, and that every command speaks of the same one. */
class RenovationTest {
  private static final String PLAN = """
      plan "Juniper Way" revision "B"
      use code us-2023
      dwelling { floor-area 1200 ft2 }
      service main 120/240 V 60 A existing { run 70 ft of 4 Cu triplex }
      panel P from main existing {
        bus 125 A slots 20 bonded
        main breaker 60 A
        1+3 30 A two-pole water
        2+4 50 A two-pole new range
        5   20 A new dish
        7   20 A new counter
      }
      branch water by 10/2 NM-B existing { P --34 ft-- cellar.water }
      branch range by 6/3 NM-B { P --42 ft-- kitchen.range }
      branch dish by 12/2 NM-B { P --36 ft-- kitchen.dish }
      branch counter by 12/2 NM-B is small-appliance { P --36 ft-- kitchen.c1 }
      room cellar existing { water: water heater 4.5 kW }
      room kitchen existing { range: range 12 kW new   dish: dishwasher 10 A new   c1: receptacle 20 A at counter new }
      """;
  /** By hand: 3600 lighting, 3000 and 1500 VA of circuits, 12 kW, 4.5 kW and 1.2 kVA; 8 kVA and 40 % of the rest. */
  private static final double BY_220_83 = 8000 + 0.4 * (3600 + 3000 + 1500 + 12000 + 4500 + 1200 - 8000);

  @TempDir
  private Path folder;

  private static HouseWorksheets worksheets(String text) {
    Compilation plan = compile(text);
    return new HouseWorksheets(plan.house(), plan.library());
  }

  private static Compilation compile(String text) {
    return new Compiler(new SourceReader(Map.of(), 1 << 20)).compile(new Source("house.wattle", text), Path.of("house.wattle"));
  }

  private static List<String> applicable(String text) {
    HouseWorksheets worksheets = worksheets(text);
    return worksheets.applicable(worksheets.services().get(0)).stream().map(w -> w.method().name()).toList();
  }

  /**
   * homeownershub.com load-calculation-599409, reviewed there, by 220.83(A): 21 500 VA existing are 13 400 VA, 55 A with its fraction
   * dropped (55.8 A here); with a dishwasher of 1200 VA and a steam generator of 8500 VA, and 1500 VA more that it counts, 32 700 VA.
   */
  @Test
  void aPublishedExistingDwelling() {
    ConnectedLoad[] loads = {
        load("range", LoadClass.COOKING, 8000), load("dryer", LoadClass.DRYER, 5000), load("disposal", LoadClass.FIXED_APPLIANCE, 1000)
    };
    DwellingUnit unit = new DwellingUnit(
        "house", feet(1000, 0).floorArea(), java.util.Optional.empty(), Circuits.of(3), Circuits.NONE, List.of(loads), List.of(), 1);
    Inputs before = new Inputs(
        "F", Inputs.Scope.FEEDER, Examples.SPLIT, java.util.Optional.empty(), List.of(unit), List.of(), java.util.Optional.empty());
    Worksheet sheet = calculate(US, "existing-dwelling", before);
    assertThat(connected(sheet.lines(), "general lighting")).isEqualTo(3000, within(1e-6));
    assertThat(connected(sheet.lines(), "small-appliance circuits")).isEqualTo(4500, within(1e-6));
    assertThat(result(sheet.lines(), "all loads, the part above 8000 VA")).isEqualTo(5400, within(1e-6));
    assertThat(sheet.total().si()).isEqualTo(13400, within(1e-6));
    assertThat(sheet.current().si()).isEqualTo(55.8, within(0.05));
    Inputs after = before.with(load("steam and dishwasher", LoadClass.FIXED_APPLIANCE, 11200).asAdded(), java.util.Optional.of("house"));
    assertThat(calculate(US, "existing-dwelling", after).total().si()).isEqualTo(8000 + 0.4 * 24700, within(1e-6));
  }

  /** forums.mikeholt.com 1194638 counts 22 600 VA and 7.5 kW of new heat; by 220.83(B) 8 kVA and 40 % of the rest, and the heat in full. */
  @Test
  void newHeatCountsInFull() {
    Inputs inputs = service(
        feet(
            1200, 1, load("range", LoadClass.COOKING, 8000), load("water", LoadClass.WATER_HEATING, 3500),
            load("dryer", LoadClass.DRYER, 3000), load("heat", LoadClass.HEATING, 7500).asAdded()));
    Worksheet sheet = calculate(US, "existing-dwelling", inputs);
    assertThat(connected(sheet.lines(), "all loads, the first 8000 VA") + connected(sheet.lines(), "all loads, the part above 8000 VA"))
        .isEqualTo(22600, within(1e-6));
    assertThat(sheet.total().si()).isEqualTo(8000 + 0.4 * 14600 + 7500, within(1e-6));
  }

  /** The service, the panel and the branch of the water heater are existing; nothing else says that the house is. */
  @Test
  void anExistingServiceIsEnough() {
    assertThat(applicable(PLAN)).containsExactly("existing-dwelling", "standard");
    assertThat(
        applicable(PLAN.replace("room cellar existing { water: water heater 4.5 kW }", "room cellar { water: water heater 4.5 kW }")))
        .containsExactly("existing-dwelling", "standard");
    assertThat(applicable(PLAN.replace("60 A existing", "60 A").replace("from main existing", "from main")))
        .as("a new service is sized like any other").containsExactly("standard");
    assertThat(applicable(PLAN.replace(" new", ""))).as("nothing is added").containsExactly("standard");
    assertThat(applicable(PLAN.replace("60 A existing {", "60 A existing { peak-demand 1 kW "))).first().isEqualTo("measured");
    assertThat(applicable(PLAN.replace("120/240 V", "120/208 V"))).first().isEqualTo("existing-dwelling");
  }

  /** By hand: 125 % of 4 kW and the new range and dishwasher in full are 18 200 VA; at 208 V between two legs of a wye 87.5 A. */
  @Test
  void aMeasuredPeakOnEachSupply() {
    String text = PLAN.replace("60 A existing {", "60 A existing { peak-demand 4 kW ");
    for (String supply : List.of("120/240 V", "120/208 V")) {
      HouseWorksheets worksheets = worksheets(text.replace("120/240 V", supply));
      Worksheet sheet = worksheets.calculate(worksheets.method("measured").orElseThrow(), worksheets.services().get(0)).worksheet()
          .orElseThrow();
      assertThat(sheet.total().si()).isEqualTo(5000 + 12000 + 1200, within(1e-6));
      assertThat(sheet.current().si()).isEqualTo(18200 / (supply.endsWith("240 V") ? 240.0 : 208.0), within(1e-6));
    }
    Worksheet none = worksheets(PLAN).applicable(worksheets(PLAN).services().get(0)).get(0);
    assertThat(none.total().si()).isEqualTo(BY_220_83, within(1e-6));
  }

  /** A peak was measured of loads that are there: a plan that marks nothing existing would count every one of them again. */
  @Test
  void aPeakOfAHouseThatIsNotMarkedExisting() {
    String unmarked = PLAN.replace(" existing", "").replace(" new", "").replace("60 A {", "60 A { peak-demand 4 kW ");
    HouseWorksheets worksheets = worksheets(unmarked);
    Outcome outcome = worksheets.calculate(worksheets.method("measured").orElseThrow(), worksheets.services().get(0));
    assertThat(outcome.worksheet()).isEmpty();
    assertThat(outcome.objections()).extracting(Objection::rule).contains("dwelling-not-existing");
  }

  /** 15 120 VA are 63 A by 220.83 and 82 A by the standard method; every command says the first, and the other beside it. */
  @Test
  void everyCommandSpeaksOfTheSameMethod() throws Exception {
    assertThat(BY_220_83).isEqualTo(15120, within(1e-6));
    Finding finding = compile(PLAN).findings().stream().filter(f -> f.rule().equals("service-below-load")).findFirst().orElseThrow();
    assertThat(finding.headline()).isEqualTo("service 'main' is rated 60 A and its calculated load is 63 A");
    assertThat(finding.reason()).contains("existing dwelling", "82 A by the standard method");
    Path later = folder.resolve("b.wattle");
    Files.writeString(later, PLAN);
    Path earlier = folder.resolve("a.wattle");
    Files.writeString(earlier, PLAN.replace("dishwasher 10 A", "dishwasher 5 A"));
    assertThat(said("table", "--of", "worksheet", later.toString())).contains("NFPA 70 220.83", "15120");
    assertThat(said("trial", "--add", "water heater 2 kW", later.toString())).contains("by NFPA 70 220.83 (existing-dwelling)");
    assertThat(said("compare", earlier.toString(), later.toString()))
        .contains("62.0 A -> 63.0 A", "optional method for an existing dwelling (standard 82 A)");
  }

  /** Beside an unknown device elsewhere the calculation stands. */
  @Test
  void besideAnErrorElsewhere() {
    String broken = PLAN + "room attic { x: lamp-post 40 W }\n";
    assertThat(compile(broken).findings()).extracting(Finding::rule).contains("service-below-load");
  }

  private static String said(String... arguments) {
    StringWriter out = new StringWriter();
    Main.run(arguments, new PrintWriter(out), new PrintWriter(new StringWriter()));
    return out.toString();
  }
}
