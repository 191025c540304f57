package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import wattle.compiler.Compilation;
import wattle.loads.LarchMews;
import wattle.model.LoadClass;

/** Heating against cooling: NFPA 70 220.60, where the motor of the cooling counts at 125 %. */
class ClimateTest {
  private static final ConnectedLoad COOLING = ConnectedLoad.of("ac", LoadClass.COOLING, 5000).asMotor();

  private static double total(ConnectedLoad... loads) {
    Compilation plan = LarchMews.plan();
    Worksheets worksheets = new Worksheets(plan.library());
    Inputs inputs = Examples.service(Examples.meters(100, loads));
    return worksheets.calculate(worksheets.method("standard").orElseThrow(), inputs).worksheet().orElseThrow().total().si();
  }

  /**
   * By hand: 100 m² × 33 + 2 × 1500 + 1500 = 7800 VA, 3000 + 35 % of 4800 = 4680; cooling 5000 and a quarter, 6250: 10 930 VA. A furnace of
   * 5000 VA is less than that and changes nothing; one of 6500 VA is more, and counts alone: 11 180 VA.
   */
  @Test
  void aFurnaceNeverLowersALoad() {
    assertThat(total(COOLING)).isCloseTo(10930, within(0.01));
    assertThat(total(COOLING, ConnectedLoad.of("furnace", LoadClass.HEATING, 5000))).isCloseTo(10930, within(0.01));
    assertThat(total(COOLING, ConnectedLoad.of("furnace", LoadClass.HEATING, 6500))).isCloseTo(11180, within(0.01));
  }

  /**
   * By hand: a pump of 5500 VA is the largest motor either way, so that its quarter decides nothing: 5000 VA of heat are as good
   * as of cooling.
   */
  @Test
  void aLargerMotorElsewhereTakesTheQuarter() {
    ConnectedLoad pump = ConnectedLoad.of("pump", LoadClass.MOTOR, 5500).asMotor();
    double cooled = total(COOLING, pump);
    assertThat(cooled).isCloseTo(4680 + 5000 + 5500 * 1.25, within(0.01));
    assertThat(total(COOLING, pump, ConnectedLoad.of("furnace", LoadClass.HEATING, 5000))).isCloseTo(cooled, within(0.01));
  }
}
