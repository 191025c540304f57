package wattle.loads;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.finding.Finding;
import wattle.model.Device;
import wattle.model.House;
import wattle.model.SupplySystem;
import wattle.trials.TrialResult.OutletReading;
import wattle.trials.Trials;
import wattle.worksheet.HouseWorksheets;
import wattle.worksheet.Worksheet;

/** What is written behind a device is its rating at its rated voltage: on another voltage it draws something else, everywhere the same. */
class RatedVoltageTest {
  private static final Compilation PLAN = LarchMews.plan();

  /** Common practice: an element keeps its resistance, (208 / 240)² × 4.5 kW = 3.38 kW, 16.25 A; and 9 kW are 6.76 kW. */
  @Test
  void anElementFor240VoltsGivesThreeQuartersOn208() {
    House house = PLAN.house();
    Device water = house.devices().get("ue.water");
    assertThat(water.nameplateVoltAmperes()).isCloseTo(4500, within(1e-9));
    assertThat(water.voltAmperes()).isCloseTo(3380, within(1e-6));
    SupplySystem system = house.panels().get("EAST").system();
    assertThat(ConnectedLoads.of(house).branch("watere").heaviestAmperes(system)).isCloseTo(16.25, within(0.001));
  }

  /** The trial solver, which knows of neither: a little less than at nominal voltage, for what the wires lose. */
  @Test
  void trialsDrawTheSame() {
    OutletReading water = new Trials(PLAN.house(), PLAN.library()).stated().outlets().stream()
        .filter(o -> o.device().equals("ue.water")).findFirst().orElseThrow();
    double volts = water.volts().si();
    assertThat(water.current().orElseThrow().si()).isCloseTo(volts / 12.8, within(0.001));
    assertThat(water.current().orElseThrow().si()).isBetween(15.5, 16.25);
  }

  /** NFPA 70 220.14 and 220.54 count nameplates. */
  @Test
  void worksheetsCountNameplates() {
    HouseWorksheets sheets = new HouseWorksheets(PLAN.house(), PLAN.library());
    Worksheet east = sheets.calculate(sheets.method("standard").orElseThrow(), sheets.feeder("EAST").orElseThrow()).worksheet()
        .orElseThrow();
    assertThat(east.lines()).anySatisfy(l -> {
      assertThat(l.devices()).containsExactly("ue.water");
      assertThat(l.result().orElseThrow().si()).isCloseTo(4500, within(1e-9));
    });
  }

  /** 16.25 A × 1.25 = 20.3 A on 25 A: at 21.6 A a finding would be false. NFPA 70 422.13. */
  @Test
  void findingsSayWhatTheOwnerWillNotice() {
    List<String> rules = PLAN.findings().stream().map(Finding::rule).toList();
    assertThat(rules).doesNotContain("water-heater-circuit-small", "load-above-breaker");
    List<String> advised = PLAN.findings().stream().filter(f -> f.rule().equals("rated-for-other-voltage")).map(Finding::headline).toList();
    assertThat(advised).hasSize(5).anySatisfy(h -> assertThat(h).contains("range ke.range is rated 240 V and gets 208 V"));
    assertThat(PLAN.house().assumed()).anySatisfy(a -> assertThat(a).startsWith("kw.range has its rated power at 208 V"));
  }
}
