package wattle.worksheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wattle.worksheet.Examples.SPLIT;
import static wattle.worksheet.Examples.US;
import static wattle.worksheet.Examples.WYE;
import static wattle.worksheet.Examples.calculate;
import static wattle.worksheet.Examples.connected;
import static wattle.worksheet.Examples.feeder;
import static wattle.worksheet.Examples.feet;
import static wattle.worksheet.Examples.load;
import static wattle.worksheet.Examples.result;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import wattle.model.LoadClass;

/** The multifamily examples of NFPA 70 Informative Annex D, line by line. */
class AnnexSeveralTest {
  private static final Offset<Double> EXACT = within(1e-6);
  /** The examples round amperes to whole ones. */
  private static final Offset<Double> AMPERE = within(0.51);

  private static DwellingUnit withRange() {
    return feet(840, 0, load("range", LoadClass.COOKING, 12000));
  }

  private static DwellingUnit withGas() {
    return feet(840, 0);
  }

  private static DwellingUnit allElectric() {
    return feet(
        840, 0, load("range", LoadClass.COOKING, 8000), load("heat", LoadClass.ROOM_HEATING, 1500).times(4),
        load("water", LoadClass.WATER_HEATING, 2500));
  }

  /** Annex D example D4(a), flylib.com example_no_d4_a. */
  @Test
  void feederOfOneDwelling() {
    Worksheet gas = calculate(US, "standard", feeder(SPLIT, withGas()));
    assertThat(connected(gas.lines(), "general lighting")).isEqualTo(2520, EXACT);
    assertThat(connected(gas.lines(), "small-appliance circuits")).isEqualTo(3000, EXACT);
    assertThat(result(gas.lines(), "general load, from 3000 VA to 120000 VA")).isEqualTo(882, EXACT);
    assertThat(gas.total().si()).isEqualTo(3882, EXACT);
    assertThat(gas.current().si()).isEqualTo(16.2, within(0.05));
    Worksheet range = calculate(US, "standard", feeder(SPLIT, withRange()));
    assertThat(range.total().si()).isEqualTo(11882, EXACT);
    assertThat(range.current().si()).isEqualTo(49.5, within(0.05));
    assertThat(range.neutralTotal().si()).isEqualTo(9482, EXACT);
    assertThat(range.neutralCurrent().si()).isEqualTo(39.5, within(0.05));
  }

  /** Annex D example D4(a), flylib.com example_no_d4_a; what its page cuts off is from memory. */
  @Test
  void feederOfTwentyDwellingsTenWithRanges() {
    Worksheet bank = calculate(US, "multifamily", feeder(SPLIT, withRange().times(10), withGas().times(10)));
    assertThat(
        connected(bank.lines(), "general lighting") + connected(bank.lines(), "small-appliance circuits"))
        .isEqualTo(110400, EXACT);
    assertThat(result(bank.lines(), "general load, the first 3000 VA")).isEqualTo(3000, EXACT);
    assertThat(result(bank.lines(), "general load, from 3000 VA to 120000 VA")).isEqualTo(37590, EXACT);
    assertThat(result(bank.lines(), "cooking equipment, column C, 10")).isEqualTo(25000, EXACT);
    assertThat(bank.total().si()).isEqualTo(65590, EXACT);
    assertThat(bank.current().si()).isEqualTo(273, AMPERE);
    assertThat(bank.neutralTotal().si()).isEqualTo(58090, EXACT);
    assertThat(bank.neutralCurrent().si()).isEqualTo(229, AMPERE);
  }

  /** Annex D example D4(a), from memory: the main feeder. */
  @Test
  void feederOfFortyDwellingsTwentyWithRanges() {
    Worksheet main = calculate(US, "multifamily", feeder(SPLIT, withRange().times(20), withGas().times(20)));
    assertThat(result(main.lines(), "general load, from 3000 VA to 120000 VA")).isEqualTo(40950, EXACT);
    assertThat(result(main.lines(), "general load, the part above 120000 VA")).isEqualTo(25200, EXACT);
    assertThat(result(main.lines(), "cooking equipment, column C, 20")).isEqualTo(35000, EXACT);
    assertThat(main.total().si()).isEqualTo(104150, EXACT);
    assertThat(main.current().si()).isEqualTo(434, AMPERE);
    assertThat(main.neutralTotal().si()).isEqualTo(93650, EXACT);
    assertThat(main.neutralCurrent().si()).isEqualTo(333, AMPERE);
  }

  /** Annex D example D4(b), flylib.com example_no_d4_b: one dwelling by the standard method. */
  @Test
  void feederOfOneElectricDwelling() {
    Worksheet one = calculate(US, "standard", feeder(SPLIT, allElectric()));
    assertThat(result(one.lines(), "cooking equipment, column B, 1")).isEqualTo(6400, EXACT);
    assertThat(result(one.lines(), "heating")).isEqualTo(6000, EXACT);
    assertThat(result(one.lines(), "fixed appliances")).isEqualTo(2500, EXACT);
    assertThat(one.total().si()).isEqualTo(18782, EXACT);
    assertThat(one.current().si()).isEqualTo(78, AMPERE);
    assertThat(one.neutralTotal().si()).isEqualTo(8362, EXACT);
  }

  /** Annex D example D4(b), from memory beyond what flylib.com example_no_d4_b shows. */
  @Test
  void severalDwellingsByTheOptionalMethod() {
    Worksheet bank = calculate(US, "multifamily-optional", feeder(SPLIT, allElectric().times(20)));
    assertThat(connected(bank.lines(), "all loads of 20 dwellings")).isEqualTo(440400, EXACT);
    assertThat(bank.total().si()).isEqualTo(167352, EXACT);
    assertThat(bank.current().si()).isEqualTo(697, AMPERE);
    assertThat(bank.neutralTotal().si()).isEqualTo(65090, EXACT);
    assertThat(bank.neutralCurrent().si()).isEqualTo(250, AMPERE);
    Worksheet main = calculate(US, "multifamily-optional", feeder(SPLIT, allElectric().times(40)));
    assertThat(main.total().si()).isEqualTo(246624, EXACT);
    assertThat(main.current().si()).isEqualTo(1028, AMPERE);
    assertThat(main.neutralTotal().si()).isEqualTo(107650, EXACT);
    assertThat(main.neutralCurrent().si()).isEqualTo(374, AMPERE);
  }

  /**
   * Annex D example D5(b), flylib.com example_no_d5_b with the connected loads of example_no_d4_b: 40 dwellings on 208Y/120 V. The example
   * takes its neutral from the 40 ranges of D4(b), 298 A and 269 A after the factor of 220.61(B)(2); twice the most between two phases,
   * 28 ranges of which half are on each phase, gives 3/2 × 43 kW by 220.55, and more.
   */
  @Test
  void fortyElectricDwellingsOnThreePhases() {
    Worksheet main = calculate(US, "multifamily-optional", feeder(WYE, allElectric().times(40)));
    assertThat(main.total().si()).isEqualTo(40 * 22020 * 0.28, EXACT);
    assertThat(main.current().si()).isEqualTo(246624 / (208 * Math.sqrt(3)), within(0.5));
    assertThat(main.neutralTotal().si()).isEqualTo(69150 + 0.7 * 1.5 * 43000, EXACT);
    double neutral = (69150 + 0.7 * 1.5 * 43000) / (208 * Math.sqrt(3));
    assertThat(main.neutralCurrent().si()).isEqualTo(200 + 0.7 * (neutral - 200), within(0.5)).isGreaterThan(269.2);
  }

  /** Annex D example D5(a), flylib.com example_no_d5_a: the same dwellings on 208Y/120 V, three-phase. */
  @Test
  void severalDwellingsOnThreePhases() {
    Worksheet bank = calculate(US, "multifamily", feeder(WYE, withRange().times(10), withGas().times(10)));
    assertThat(result(bank.lines(), "cooking equipment, column C, 10")).isEqualTo(34500, EXACT);
    assertThat(bank.total().si()).isEqualTo(75090, EXACT);
    assertThat(bank.current().si()).isEqualTo(208.4, within(0.1));
    assertThat(bank.neutralTotal().si()).isEqualTo(64740, EXACT);
    assertThat(bank.neutralCurrent().si()).isEqualTo(179.7, within(0.1));
    Worksheet main = calculate(US, "multifamily", feeder(WYE, withRange().times(20), withGas().times(20)));
    assertThat(result(main.lines(), "cooking equipment, column C, 20")).isEqualTo(43500, EXACT);
    assertThat(main.total().si()).isEqualTo(112650, EXACT);
    assertThat(main.neutralCurrent().si()).isEqualTo(254, AMPERE);
  }

  /** ecmag.com branch-circuit-feeder-and-service-calculations-part-lv: 220.53 counts the appliances of all dwellings. */
  @Test
  void waterHeatersOfSeveralDwellings() {
    DwellingUnit unit = feet(840, 0, load("water", LoadClass.WATER_HEATING, 4500));
    Worksheet four = calculate(US, "multifamily", feeder(SPLIT, unit.times(4)));
    assertThat(connected(four.lines(), "fixed appliances")).isEqualTo(18000, EXACT);
    assertThat(result(four.lines(), "fixed appliances")).isEqualTo(13500, EXACT);
  }
}
