package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.US;
import static wattle.worksheet.Examples.WYE;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.feeder;
import static wattle.worksheet.Examples.feet;
import static wattle.worksheet.Examples.load;
import static wattle.worksheet.Examples.result;
import static wattle.worksheet.Examples.service;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.loads.Ends;
import wattle.model.Leg;
import wattle.model.LoadClass;
import wattle.model.SupplySystem;

/** Amperes of each leg on each supply, the largest motor of each leg, and continuous loads. */
class LegAmperesTest {
  private static final Offset<Double> TENTH = within(0.05);
  private static final SupplySystem TWO_LEGS = new SupplySystem(SupplySystem.Kind.TWO_LEGS_OF_WYE, 120, 208);
  private static final SupplySystem ONE_LEG = new SupplySystem(SupplySystem.Kind.ONE_LEG, 120, 240, List.of(Leg.A));
  private static final SupplySystem SINGLE = new SupplySystem(SupplySystem.Kind.SINGLE_PHASE, 230, 230);

  private static DwellingUnit shop(ConnectedLoad... loads) {
    return new DwellingUnit(
        "shop", Optional.empty(), Optional.empty(), Circuits.NONE, Circuits.NONE, List.of(loads), List.of(), 1);
  }

  private static Inputs part(SupplySystem system, DwellingUnit unit, Placement placement) {
    return new Inputs("G", Inputs.Scope.PART, system, Optional.empty(), List.of(unit), List.of(), Optional.empty(), placement);
  }

  /** Annex D example D5(a), flylib.com example_no_d5_a: 16.2 A without a range, 54.7 A with one, on two legs of 208Y/120 V. */
  @Test
  void aDwellingOnTwoLegsOfAWye() {
    Worksheet gas = calculate(US, "standard", feeder(TWO_LEGS, feet(840, 0)));
    assertThat(gas.total().si()).isEqualTo(3882, within(1e-6));
    assertThat(gas.legs().values()).allSatisfy(l -> assertThat(l.si()).isEqualTo(16.2, TENTH));
    Worksheet range = calculate(US, "standard", feeder(TWO_LEGS, feet(840, 0, load("range", LoadClass.COOKING, 12000))));
    assertThat(range.legs().values()).allSatisfy(l -> assertThat(l.si()).isEqualTo(38.5 + 16.2, within(0.1)));
    // What governs is the whole by the voltage between the legs, as D5(b) gives it first.
    assertThat(range.current().si()).isEqualTo(11882 / 208.0, TENTH);
    // The example takes 70 % of the range for the neutral, 43.1 A; 220.61(C)(1) allows no reduction on two legs of a wye.
    assertThat(range.neutralCurrent().si()).isEqualTo(11882 / 208.0, TENTH);
  }

  /** Annex D example D5(b), flylib.com example_no_d5_b: 90.3 A as a whole; 16.2 A to the neutral and 71.6 A between the legs, 87.8 A. */
  @Test
  void anElectricDwellingOnTwoLegsOfAWye() {
    DwellingUnit unit = feet(
        840, 0, load("range", LoadClass.COOKING, 8000), load("heat", LoadClass.ROOM_HEATING, 1500).times(4),
        load("water", LoadClass.WATER_HEATING, 2500));
    Worksheet sheet = calculate(US, "standard", feeder(TWO_LEGS, unit));
    assertThat(sheet.total().si()).isEqualTo(18782, within(1e-6));
    assertThat(sheet.legs().values()).allSatisfy(l -> assertThat(l.si()).isEqualTo(87.8, TENTH));
    assertThat(sheet.current().si()).as("the example gives this first").isEqualTo(90.3, TENTH);
  }

  /** By hand: a motor of 24 A on one leg is larger than one of 17 A on two (430.17), and has its quarter on its own leg. */
  @Test
  void theLargestMotorOfEachLegGoesByAmperes() {
    ConnectedLoad dust = load("dust", LoadClass.MOTOR, 24 * 120).on(Leg.A).asMotor();
    ConnectedLoad saw = load("saw", LoadClass.MOTOR, 17 * 240).asMotor();
    Worksheet sheet = calculate(US, "standard", Examples.part(shop(dust, saw)));
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(24 * 1.25 + 17, TENTH);
    assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(17 * 1.25, TENTH);
    assertThat(sheet.neutralCurrent().si()).isEqualTo(24 * 1.25, TENTH);
    assertThat(result(sheet.lines(), "largest motor of leg A, in addition")).isEqualTo(6 * 120, within(1e-6));
    assertThat(result(sheet.lines(), "largest motor of leg B, in addition")).isEqualTo(4.25 * 120, within(1e-6));
    Worksheet wye = calculate(US, "standard", part(TWO_LEGS, shop(dust, load("saw", LoadClass.MOTOR, 17 * 208).asMotor()), Placement.NONE));
    assertThat(wye.legs().get(Leg.A).si()).isEqualTo(24 * 1.25 + 17, TENTH);
    assertThat(wye.legs().get(Leg.B).si()).isEqualTo(17 * 1.25, TENTH);
  }

  /** One motor that is the largest on both its legs needs one line: 25 % of 28 A at 240 V, NFPA 70 430.24. */
  @Test
  void oneMotorOnBothLegs() {
    Worksheet sheet = calculate(
        US, "standard",
        service(
            feet(
                1500, 1, load("ac", LoadClass.COOLING, 28 * 240).asMotor(),
                load("disposer", LoadClass.FIXED_APPLIANCE, 8 * 120).on(Leg.B).asMotor())));
    assertThat(result(sheet.lines(), "largest motor, in addition")).isEqualTo(7 * 240, within(1e-6));
    assertThat(sheet.legs().get(Leg.A).si()).isEqualTo(5100 / 240.0 + 35, TENTH);
    assertThat(sheet.legs().get(Leg.B).si()).isEqualTo(5100 / 240.0 + 35 + 8, TENTH);
  }

  /** By hand: on one leg of a supply the voltage is that to the neutral, whatever its legs have between them. */
  @Test
  void oneLegHasTheVoltageToTheNeutral() {
    ConnectedLoad heater = load("heater", LoadClass.FIXED_APPLIANCE, 1800).on(Leg.A);
    assertThat(calculate(US, "standard", part(ONE_LEG, shop(heater), Placement.NONE)).current().si()).isEqualTo(15, TENTH);
    ConnectedLoad kettle = load("heater", LoadClass.FIXED_APPLIANCE, 2300).on(Leg.A);
    Worksheet single = calculate(US, "standard", part(SINGLE, shop(kettle), Placement.NONE));
    assertThat(single.current().si()).isEqualTo(10, TENTH);
    assertThat(single.neutralCurrent().si()).isEqualTo(10, TENTH);
  }

  /**
   * By hand, NFPA 70 215.2(A)(1) and 625.41: a charger of 40 A and a heater of 10 A need 40 × 1.25 + 10 = 60 A, on each supply; one of
   * 3.84 kW is counted as 7200 VA (220.57), which is more than 125 % of it.
   */
  @Test
  void aChargerIsContinuous() {
    for (SupplySystem system : List.of(Examples.SPLIT, TWO_LEGS)) {
      double volts = system.legToLegVolts();
      ConnectedLoad charger = load("car", LoadClass.VEHICLE_CHARGING, 40 * volts);
      ConnectedLoad heater = load("heater", LoadClass.FIXED_APPLIANCE, 10 * volts);
      Worksheet sheet = calculate(US, "standard", part(system, shop(charger, heater), Placement.NONE));
      assertThat(sheet.current().si()).isEqualTo(50, TENTH);
      assertThat(sheet.continuous().si()).isEqualTo(40, TENTH);
      assertThat(sheet.sized().si()).isEqualTo(60, TENTH);
      assertThat(sheet.nextRating().orElseThrow().si()).isEqualTo(60);
    }
    Worksheet small = calculate(US, "standard", Examples.part(shop(load("car", LoadClass.VEHICLE_CHARGING, 3840))));
    assertThat(small.current().si()).isEqualTo(30, TENTH);
    assertThat(small.sized().si()).isEqualTo(30, TENTH);
    Worksheet whole = calculate(US, "optional", service(feet(1500, 1, load("car", LoadClass.VEHICLE_CHARGING, 9600))));
    assertThat(whole.sized()).as("220.82 has no such addition").isEqualTo(whole.current());
  }

  /** By hand: three chargers of 30 A, one between each two legs of a wye, are 52 A on each leg, and 65 A at 125 %. */
  @Test
  void chargersOnThreePhases() {
    Placement placement = new Placement(
        Map.of("ab", Ends.A_B, "bc", Ends.B_C, "ca", Ends.C_A), Map.of(), Set.of(), Map.of());
    DwellingUnit unit = shop(
        load("ab", LoadClass.VEHICLE_CHARGING, 30 * 240), load("bc", LoadClass.VEHICLE_CHARGING, 30 * 240),
        load("ca", LoadClass.VEHICLE_CHARGING, 30 * 240));
    Worksheet sheet = calculate(US, "standard", part(WYE, unit, placement));
    double leg = 3 * 7200 / (Math.sqrt(3) * 208);
    assertThat(sheet.legs().values()).hasSize(3).allSatisfy(l -> assertThat(l.si()).isEqualTo(leg, TENTH));
    assertThat(sheet.sized().si()).isEqualTo(1.25 * leg, TENTH);
  }
}
