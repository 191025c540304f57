package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.Branch;
import wattle.model.Panel;
import wattle.model.Section;
import wattle.quantity.Units;
import wattle.read.SourceReader;

/** What is derived of a run from the plan: how many conductors count, in what air, held to which column. */
class RunConditionsTest {
  private static final String PLAN = """
      plan "Test"
      use code us-2023
      service main %s 200 A { source transformer 50 kVA 1.8 %%
        run 27 m of 4/0 Al triplex }
      raceway hole in attic 45 degC
      panel P from main {
        bus 225 A  slots 40  bonded
        main breaker 200 A
        1 15 A hall
        2+4 20 A two-pole counter
        3 20 A laundry
        5+7 20 A two-pole heater
        6 15 A stair
        9+11 60 A two-pole G
      }
      panel G from P/9 by 22 m of 6/3 NM-B through hole { bus 100 A slots 12 }
      branch hall by 14/2 NM-B through hole { P --11 m-- hall.o1 --4 m in attic 50 degC-- hall.o2 }
      branch counter by 12/3 NM-B { P --9 m through hole-- kitchen.c1 --1 m bundled 4-- kitchen.c2 }
      branch laundry by 3/4 in EMT with 2 x 12 Cu THWN, 12 Cu ground { P --7 m-- laundry.o1 }
      branch heater by 12/2 NM-B { P --7 m-- laundry.heater }
      branch stair by 14/3 NM-B { P --5 m by 14/2 NM-B-- stair.sw1 --4 m-- stair.sw2 --2 m by 14/2 NM-B-- stair.lamp }
      room hall { o1: receptacle  o2: receptacle }
      room kitchen { c1: split receptacle  c2: split receptacle }
      room laundry { o1: receptacle  heater: water heater 3 kW }
      room stair { sw1: three-way switch for lamp  sw2: three-way switch for lamp  lamp: light 12 W }
      """;

  private final Compilation house = compile("120/240 V");
  private final RunConditions runs = new RunConditions(house.house(), house.library());

  private static Compilation compile(String voltage) {
    Source source = new Source("house.wattle", String.format(PLAN, voltage));
    return new Compiler(SourceReader.FROM_DISK).compile(source, Path.of("house.wattle"));
  }

  private Conditions of(String branch, int section) {
    return of(house, runs, branch, section);
  }

  private static Conditions of(Compilation house, RunConditions runs, String name, int section) {
    Branch branch = house.house().branches().get(name);
    Section run = branch.sections().get(section);
    return runs.of(branch, run, run.wiring().hot()).orElseThrow();
  }

  @Test
  void thePlanIsSound() {
    assertThat(wattle.Structure.findings(house).stream().map(Finding::headline)).isEmpty();
  }

  @Test
  void aCableIsHeldToItsUseAndCorrectedFromItsInsulation() {
    Conditions hall = of("hall", 0);
    assertThat(hall.insulationCelsius()).isEqualTo(90);
    assertThat(hall.useCelsius()).isEqualTo(60);
    assertThat(hall.conductor()).isEqualTo("14 AWG copper");
  }

  @Test
  void theHottestAirOnTheWayCounts() {
    assertThat(of("hall", 0).ambient().value().text()).isEqualTo("45 °C");
    assertThat(of("hall", 1).ambient().value().text()).isEqualTo("50 °C");
    assertThat(of("laundry", 0).ambient().toString()).isEqualTo("ambient = 30 °C");
    assertThat(of("laundry", 0).ambient().basis()).hasToString("ASSUMED");
  }

  /** NFPA 70 310.15(E): the shared neutral of two legs is not counted, the neutral of a two-wire run is. */
  @Test
  void aNeutralThatCarriesOnlyTheDifferenceDoesNotCount() {
    // Hole: hall runs twice, hot and neutral each; counter two hots; the feeder two hots.
    assertThat(of("counter", 0).together().si()).isEqualTo(2 + 2 + 2 + 2);
    assertThat(of("counter", 0).together().remark()).contains("hole");
    assertThat(of("laundry", 0).together().si()).isEqualTo(2);
    assertThat(of("heater", 0).together().si()).isEqualTo(2);
  }

  @Test
  void aBundleIsAsManyTimesTheRunItself() {
    assertThat(of("counter", 1).together().worked()).isEqualTo("2 × 4");
    assertThat(of("counter", 1).together().si()).isEqualTo(8);
  }

  /** NFPA 70 310.15(E)(2): with two legs of a wye the common conductor counts. */
  @Test
  void withTwoLegsOfAWyeTheNeutralCounts() {
    Compilation wye = compile("120/208 V");
    RunConditions wyeRuns = new RunConditions(wye.house(), wye.library());
    assertThat(of(wye, wyeRuns, "counter", 1).together().worked()).isEqualTo("3 × 4");
  }

  /** Of two travelers one carries at a time, and the neutral goes on beside them; common practice. */
  @Test
  void travelersCountOnce() {
    assertThat(of("stair", 1).together().si()).isEqualTo(2);
  }

  @Test
  void feedersAndServicesAreRunsToo() {
    Panel garage = house.house().panels().get("G");
    Conditions feeder = runs.of(garage.feeder().orElseThrow(), garage.system(), garage.feeder().get().wiring().hot());
    assertThat(feeder.together().si()).isEqualTo(8);
    assertThat(feeder.ambient().quantity().orElseThrow().in(Units.CELSIUS)).isEqualTo(45);
    var service = house.house().services().get("main");
    Conditions entry = runs.of(service.run().orElseThrow(), service.system(), service.run().get().wiring().hot());
    assertThat(entry.conductor()).isEqualTo("4/0 AWG aluminum");
    assertThat(entry.together().si()).isEqualTo(2);
  }

  @Test
  void surroundAndInsulationFollowFromTheWiring() {
    Conductors conductors = Conductors.of(house.house(), house.library());
    var laundry = house.house().branches().get("laundry").wiring();
    var hall = house.house().branches().get("hall").wiring();
    assertThat(conductors.impedances().surround(laundry)).isEqualTo("steel");
    assertThat(conductors.impedances().surround(hall)).isEqualTo("plastic");
    assertThat(conductors.runs().insulationOf(hall)).isEqualTo("thermoplastic");
    assertThat(conductors.runs().insulationOf(house.house().services().get("main").run().orElseThrow().wiring()))
        .isEqualTo("thermoset");
  }

  /** 12 AWG cable eight together in 45 °C air: 30 A × 0.87 × 0.7 = 18.27 A, below its 20 A breaker. */
  @Test
  void everyStepIsOnThePage() {
    Conductors conductors = Conductors.of(house.house(), house.library());
    Ampacity found = conductors.ampacities().of(of("counter", 0)).orElseThrow();
    assertThat(List.of(found.corrected().worked(), found.allowed().worked()))
        .containsExactly("30 A × 0.87 × 0.7", "min(18.27 A, 20 A)");
  }
}
