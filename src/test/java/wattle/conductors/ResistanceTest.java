package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Metal;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;
import wattle.reference.Reference;

class ResistanceTest {
  private static final double OHM_PER_KFT = 1 / 304.8;
  private final Resistances resistances = new Resistances(Tables.COMMON);
  private final Impedances impedances = new Impedances(Tables.COMMON);

  private Resistance copper(String size) {
    return resistances.of(Tables.size(size), Metal.COPPER).orElseThrow();
  }

  /** NFPA 70-2011 chapter 9 table 8. */
  @TestFactory
  List<DynamicTest> everyListedSizeAt75Degrees() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("awg.csv")) {
      for (Metal metal : Metal.values()) {
        double expected = Double.parseDouble(row.get("r_dc_75c_" + metal.word() + "_ohm_per_kft"));
        Construction construction = row.get("construction").equals("solid") ? Construction.SOLID : Construction.STRANDED;
        tests.add(
            DynamicTest.dynamicTest(
                row.get("size") + " " + row.get("construction") + " " + metal.word(),
                () -> assertThat(resistances.of(Tables.size(row.get("size")), metal, construction).orElseThrow().ohmsPerMeter(75))
                    .isCloseTo(expected * OHM_PER_KFT, withinPercentage(1e-9))));
      }
    }
    return tests;
  }

  /**
   * The table against physics: copper of 100 % IACS conductivity has 0.017241 Ω·mm²/m at 20 °C (IEC 60028), aluminum of
   * 61 % has 0.028264; stranding adds 2 % in length and drawing loses a little, so within 5 %.
   */
  @TestFactory
  List<DynamicTest> everyListedSizeAgreesWithResistivity() {
    return Reference.rows("awg.csv").stream()
        .map(
            row -> DynamicTest.dynamicTest(
                row.get("size") + " " + row.get("construction"),
                () -> {
                  WireSize size = Tables.size(row.get("size"));
                  Construction construction = row.get("construction").equals("solid") ? Construction.SOLID : Construction.STRANDED;
                  double area = size.areaSquareMillimeters();
                  assertThat(resistances.of(size, Metal.COPPER, construction).orElseThrow().ohmsPerMeter(20))
                      .isCloseTo(0.017241 / area, withinPercentage(5));
                  assertThat(resistances.of(size, Metal.ALUMINUM, construction).orElseThrow().ohmsPerMeter(20))
                      .isCloseTo(0.028264 / area, withinPercentage(5));
                }))
        .toList();
  }

  /** NFPA 70 chapter 9 table 8, note 2; arithmetic by hand: 3.14 × (1 + 0.00323 × (30 − 75)) = 2.683601 ohm/kft. */
  @Test
  void resistanceFollowsTemperature() {
    Resistance r = resistances.of(Tables.size("14"), Metal.COPPER, Construction.STRANDED).orElseThrow();
    assertThat(r.ohmsPerMeter(30)).isCloseTo(2.683601 * OHM_PER_KFT, within(1e-12));
    assertThat(r.factor(75)).isEqualTo(1);
  }

  /** IEC 60228 table A.2, brought from 20 °C to 75 °C and back. */
  @TestFactory
  List<DynamicTest> metricSizesAt20Degrees() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("metric.csv")) {
      WireSize size = Tables.size(row.get("size_mm2") + " mm2");
      for (Metal metal : Metal.values()) {
        String listed = row.get(metal.word() + "_ohm_per_km_20c");
        if (!listed.equals("-")) {
          tests.add(
              DynamicTest.dynamicTest(
                  size + " " + metal.word(),
                  () -> assertThat(resistances.of(size, metal).orElseThrow().ohmsPerMeter(20))
                      .isCloseTo(Double.parseDouble(listed) / 1000, withinPercentage(1e-9))));
        }
      }
    }
    return tests;
  }

  /** 16 AWG: NFPA 70 chapter 9 table 8 lists 4.89 (solid) and 4.99 ohm/kft (from memory); the sum is within 1 %. */
  @Test
  void aSizeThatIsNotListedIsInProportionToItsArea() {
    Resistance sixteen = copper("16");
    assertThat(sixteen.ohmsPerMeter(75)).isCloseTo(4.89 * OHM_PER_KFT, withinPercentage(1));
    assertThat(sixteen.at75().worked()).isEqualTo("3.07 Ω/kft × 2.081 mm² / 1.309 mm²");
    assertThat(sixteen.at75().remark()).contains("proportion");
    assertThat(copper("2000 kcmil").ohmsPerMeter(75)).isCloseTo(copper("1000 kcmil").ohmsPerMeter(75) / 2, within(1e-12));
  }

  @Test
  void theDerivationNamesTableNoteAndTemperature() {
    Derivation warm = Derivation.stated("conductor temperature", "T", Quantity.of(60, Units.CELSIUS));
    Derivation r = copper("12").at(warm);
    assertThat(r.worked()).isEqualTo("1.93 Ω/kft × (1 + 0.00323 × (60 °C − 75 °C))");
    assertThat(r.value().text()).isEqualTo("6.025 Ω/km");
    assertThat(r.inputs().get(0).sources()).hasToString("[NFPA 70-2011 Chapter 9 Table 8 (from memory, verify)]");
    assertThat(r.inputs().get(0).formula())
        .isEqualTo("table conductor-resistance, size 12 AWG, construction solid, column copper");
  }

  /** NFPA 70 chapter 9 table 9. */
  @TestFactory
  List<DynamicTest> reactanceOfEveryListedSize() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("ac_impedance.csv")) {
      for (String surround : List.of("plastic", "steel")) {
        double expected = Double.parseDouble(row.get("x_l_" + surround.replace("plastic", "pvc") + "_ohm_per_kft"));
        tests.add(
            DynamicTest.dynamicTest(
                row.get("size") + " " + surround,
                () -> {
                  Impedance z = impedances.of(Tables.size(row.get("size")), Metal.COPPER, Construction.STRANDED, surround).orElseThrow();
                  assertThat(z.reactanceOhmsPerMeter(60)).isCloseTo(expected * OHM_PER_KFT, withinPercentage(1e-9));
                  assertThat(z.reactanceOhmsPerMeter(50)).isCloseTo(expected * OHM_PER_KFT * 50 / 60, withinPercentage(1e-9));
                }));
      }
    }
    return tests;
  }

  /** NFPA 70 chapter 9 table 9 gives 0.063 ohm/kft for 4/0 copper in steel, table 8 gives 0.0608 direct. */
  @Test
  void thickConductorsHaveTheirAlternatingCurrentResistance() {
    Impedance thick = impedances.of(Tables.size("4/0"), Metal.COPPER, Construction.STRANDED, "steel").orElseThrow();
    assertThat(thick.ohmsPerMeter(75)).isCloseTo(0.063 * OHM_PER_KFT, within(1e-12));
    Impedance thin = impedances.of(Tables.size("12"), Metal.COPPER, Construction.SOLID, "steel").orElseThrow();
    assertThat(thin.ohmsPerMeter(75)).isCloseTo(1.93 * OHM_PER_KFT, within(1e-12));
  }

  @Test
  void anUnlistedSizeTakesTheReactanceOfTheThinnerOne() {
    Impedance metric = impedances.of(Tables.size("2.5 mm2"), Metal.COPPER, Construction.SOLID, "plastic").orElseThrow();
    assertThat(metric.reactanceOhmsPerMeter(60)).isCloseTo(0.058 * OHM_PER_KFT, within(1e-12));
    assertThat(metric.reactance().remark()).contains("nearest");
    Impedance thin = impedances.of(Tables.size("18"), Metal.COPPER, Construction.SOLID, "plastic").orElseThrow();
    assertThat(thin.reactanceOhmsPerMeter(60)).isCloseTo(0.058 * OHM_PER_KFT, within(1e-12));
  }

  @Test
  void withoutTablesThereIsNoFigure() {
    assertThat(new Resistances(Library.EMPTY).of(Tables.size("14"), Metal.COPPER)).isEmpty();
    assertThat(new Impedances(Library.EMPTY).of(Tables.size("14"), Metal.COPPER, Construction.SOLID, "steel")).isEmpty();
  }
}
