package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.derivation.Derivation;
import wattle.library.Library;
import wattle.model.Metal;
import wattle.reference.Reference;

class AmpacityTest {
  private final Ampacities us = new Ampacities(Tables.US);

  private static Conditions copper(String size, double insulation, double use, Derivation ambient, int together) {
    return new Conditions(Tables.size(size), Metal.COPPER, insulation, use, ambient, Tables.count(together));
  }

  /** NFPA 70 table 310.16; CSA C22.1 tables 2 and 4: at 30 °C and three together nothing is taken off. */
  @TestFactory
  List<DynamicTest> everyListedAmpacity() {
    Ampacities ca = new Ampacities(Tables.CA);
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("ampacity.csv")) {
      if (row.get("table").startsWith("NEC 310.12")) {
        continue; // a choice of conductor, not an ampacity
      }
      Ampacities tables = row.get("table").startsWith("CSA") ? ca : us;
      double rated = Double.parseDouble(row.get("insulation_temp_c"));
      Metal metal = row.get("material").equals("copper") ? Metal.COPPER : Metal.ALUMINUM;
      Conditions conditions = new Conditions(Tables.size(row.get("size")), metal, rated, rated, Tables.celsius(30), Tables.count(3));
      tests.add(
          DynamicTest.dynamicTest(
              row.get("table") + " " + conditions.conductor() + " " + rated,
              () -> assertThat(tables.of(conditions).orElseThrow().amperes())
                  .isEqualTo(Double.parseDouble(row.get("ampacity_a")))));
    }
    return tests;
  }

  /** Every pair of an ambient and a bundling factor of the reference, on 8 AWG copper: base × k_a × k_n. */
  @TestFactory
  List<DynamicTest> everyPairOfFactors() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> ambient : Reference.rows("correction.csv")) {
      for (Map<String, String> bundle : Reference.rows("correction.csv")) {
        String code = ambient.get("table").substring(0, 3);
        if (ambient.get("quantity").equals("ambient_c")
            && bundle.get("quantity").equals("current_carrying_conductors")
            && bundle.get("table").startsWith(code)) {
          tests.add(pair(code.equals("CSA") ? Tables.CA : Tables.US, ambient, bundle));
        }
      }
    }
    assertThat(tests).hasSizeGreaterThan(300);
    return tests;
  }

  private static DynamicTest pair(Library library, Map<String, String> ambient, Map<String, String> bundle) {
    double rated = Double.parseDouble(ambient.get("insulation_temp_c"));
    String[] ends = ambient.get("range").replace(" or less", "").split("-");
    int together = Integer.parseInt(bundle.get("range").replace("+", "").split("-")[0]);
    double base = Map.of(60.0, 40.0, 75.0, 50.0, 90.0, 55.0).get(rated);
    double expected = base * Double.parseDouble(ambient.get("factor")) * Double.parseDouble(bundle.get("factor"));
    Derivation air = Tables.celsius(Double.parseDouble(ends[ends.length - 1]));
    return DynamicTest.dynamicTest(
        ambient.get("table") + " " + ambient.get("range") + " " + rated + " x " + together,
        () -> assertThat(new Ampacities(library).of(copper("8", rated, rated, air, together)).orElseThrow().amperes())
            .isCloseTo(expected, within(1e-9)));
  }

  /** stallcupeducation.learnworlds.com, applying correction factors: 10 AWG THHN at 120 °F, 40 A × 82 % = 32.8 A. */
  @Test
  void tenGaugeInAHotRoom() {
    Ampacity found = us.of(copper("10", 90, 90, Tables.fahrenheit(120), 3)).orElseThrow();
    assertThat(found.amperes()).isCloseTo(32.8, within(1e-9));
    assertThat(found.corrected().worked()).isEqualTo("40 A × 0.82 × 1");
  }

  /** electricianmath.com, temperature correction: 2 AWG THWN copper at 100 °F, 115 A × 0.88 = 101.2 A. */
  @Test
  void twoGaugeAtOneHundredFahrenheit() {
    assertThat(us.of(copper("2", 75, 75, Tables.fahrenheit(100), 3)).orElseThrow().amperes())
        .isCloseTo(101.2, within(1e-9));
  }

  /** diychatroom.com 10123: four 12/2 cables bundled, 0.7 × 30 = 21 A, held to 20 A; five, 0.5 × 30 = 15 A. */
  @Test
  void bundledCablesStartFromTheirInsulation() {
    Ampacity four = us.of(copper("12", 90, 60, Tables.celsius(30), 8)).orElseThrow();
    assertThat(four.corrected().si()).isCloseTo(21, within(1e-9));
    assertThat(four.amperes()).isEqualTo(20);
    assertThat(four.allowed().worked()).isEqualTo("min(21 A, 20 A)");
    assertThat(us.of(copper("12", 90, 60, Tables.celsius(30), 10)).orElseThrow().amperes()).isCloseTo(15, within(1e-9));
  }

  /** ecmweb.com code quiz 57: cable over a heated ceiling at 50 °C, 25 × 0.82 = 20.5 A for 14 AWG, 24.6 A for 12. */
  @Test
  void cableOverAHeatedCeiling() {
    assertThat(us.of(copper("14", 90, 60, Tables.celsius(50), 2)).orElseThrow().corrected().si())
        .isCloseTo(20.5, within(1e-9));
    assertThat(us.of(copper("12", 90, 60, Tables.celsius(50), 2)).orElseThrow().corrected().si())
        .isCloseTo(24.6, within(1e-9));
  }

  /** forums.mikeholt.com 2561303: 14 AWG cable in 130 °F air still has 19 A. */
  @Test
  void cableInAnAttic() {
    assertThat(us.of(copper("14", 90, 60, Tables.fahrenheit(130), 2)).orElseThrow().corrected().si())
        .isCloseTo(19, within(1e-9));
  }

  /** forums.mikeholt.com 54044: attic at 135 °F, factor 0.71, fourteen conductors, factor 0.5; both apply to 30 A. */
  @Test
  void bothFactorsApply() {
    Ampacity found = us.of(copper("12", 90, 60, Tables.fahrenheit(135), 14)).orElseThrow();
    assertThat(found.ambientFactor().si()).isEqualTo(0.71);
    assertThat(found.bundlingFactor().si()).isEqualTo(0.5);
    assertThat(found.amperes()).isCloseTo(10.65, within(1e-9));
  }

  /** NFPA 70 110.14(C)(1): unmarked terminals up to 100 A hold 6 AWG copper to 55 A, above 100 A 1 AWG to 130 A. */
  @Test
  void unmarkedTerminalsHoldTheConductorDown() {
    Conditions six = copper("6", 90, 90, Tables.celsius(30), 3);
    Derivation found = us.between(six, Tables.amperes(60), Optional.empty()).orElseThrow();
    assertThat(found.si()).isEqualTo(55);
    assertThat(found.worked()).isEqualTo("min(75 A, 55 A)");
    Conditions one = copper("1", 90, 90, Tables.celsius(30), 3);
    assertThat(us.between(one, Tables.amperes(125), Optional.empty()).orElseThrow().si()).isEqualTo(130);
    Derivation marked = Tables.celsius(75);
    assertThat(us.between(six, Tables.amperes(60), Optional.of(marked)).orElseThrow().si()).isEqualTo(65);
  }

  @Test
  void insulationThatIsTooColdForTheAirCarriesNothing() {
    Ampacity found = us.of(copper("12", 60, 60, Tables.celsius(58), 2)).orElseThrow();
    assertThat(found.amperes()).isZero();
    assertThat(found.ambientFactor().remark()).contains("not made for it");
    assertThat(us.of(copper("12", 90, 90, Tables.celsius(120), 2)).orElseThrow().amperes()).isZero();
  }

  @Test
  void aColumnNeverStandsAboveTheRating() {
    assertThat(us.listed(Tables.size("12"), Metal.COPPER, 70, "I").orElseThrow().si()).isEqualTo(20);
    assertThat(us.listed(Tables.size("12"), Metal.COPPER, 105, "I").orElseThrow().si()).isEqualTo(30);
    assertThat(us.listed(Tables.size("12"), Metal.COPPER, 59, "I")).isEmpty();
  }

  @Test
  void aMetricSizeIsHeldToTheNextThinnerGauge() {
    Derivation found = us.listed(Tables.size("2.5 mm2"), Metal.COPPER, 60, "I").orElseThrow();
    assertThat(found.si()).isEqualTo(15);
    assertThat(found.remark()).contains("the next smaller one");
    assertThat(us.listed(Tables.size("1.5 mm2"), Metal.COPPER, 60, "I")).isEmpty();
  }

  @Test
  void whatTheCodeDoesNotListIsAbsent() {
    assertThat(us.of(copper("18", 90, 90, Tables.celsius(30), 2))).isEmpty();
    assertThat(new Ampacities(Tables.COMMON).of(copper("12", 90, 90, Tables.celsius(30), 2))).isEmpty();
  }

  @Property
  void hotterAirAndMoreCompanyNeverRaiseAnAmpacity(
      @ForAll @DoubleRange(min = -40, max = 100) double cooler,
      @ForAll @DoubleRange(min = 0, max = 60) double more,
      @ForAll @IntRange(min = 1, max = 60) int few,
      @ForAll @IntRange(min = 0, max = 60) int others) {
    double before = us.of(copper("10", 90, 75, Tables.celsius(cooler), few)).orElseThrow().amperes();
    double after = us.of(copper("10", 90, 75, Tables.celsius(cooler + more), few + others)).orElseThrow().amperes();
    assertThat(after).isLessThanOrEqualTo(before + 1e-9);
  }
}
