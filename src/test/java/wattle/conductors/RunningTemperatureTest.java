package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.derivation.Derivation;
import wattle.model.Metal;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.reference.Reference;

class RunningTemperatureTest {
  private final Resistance copper = new Resistances(Tables.COMMON).of(Tables.size("12"), Metal.COPPER).orElseThrow();

  private double celsius(double amperes, double base, double rated, double ambient) {
    return RunningTemperature.of(amperes, base, rated, ambient, copper).orElseThrow().celsius();
  }

  @Test
  void atItsAmpacityAConductorIsAsWarmAsItsRating() {
    assertThat(celsius(30, 30, 90, 30)).isCloseTo(90, within(1e-9));
    assertThat(celsius(0, 30, 90, 30)).isEqualTo(30);
    assertThat(celsius(0, 30, 90, -20)).isEqualTo(-20);
  }

  /**
   * NFPA 70 table 310.15(B)(1): the ambient factors are those at which the conductor, in that air, comes to its rating
   * again; the table rounds them to two digits and takes the hot end of each range, up to one degree from it.
   */
  @TestFactory
  List<DynamicTest> theAmbientFactorsOfTheCodeFollowFromIt() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Map<String, String> row : Reference.rows("correction.csv")) {
      if (row.get("quantity").equals("ambient_c")) {
        double rated = Double.parseDouble(row.get("insulation_temp_c"));
        String[] ends = row.get("range").replace(" or less", "").split("-");
        double ambient = Double.parseDouble(ends[ends.length - 1]);
        double factor = Double.parseDouble(row.get("factor"));
        tests.add(
            DynamicTest.dynamicTest(
                row.get("table") + " " + row.get("range") + " " + rated,
                () -> assertThat(celsius(30 * factor, 30, rated, ambient)).isCloseTo(rated, within(1.0))));
      }
    }
    assertThat(tests).hasSizeGreaterThan(50);
    return tests;
  }

  /** The equation put back into itself: rise in proportion to I² and to the resistance at the temperature found. */
  @Property
  void theBalanceHolds(
      @ForAll @DoubleRange(min = 0, max = 45) double amperes, @ForAll @DoubleRange(min = -40, max = 60) double ambient) {
    RunningTemperature running = RunningTemperature.of(amperes, 30, 90, ambient, copper).orElseThrow();
    double expected = ambient + 60 * Math.pow(amperes / 30, 2) * copper.ohmsPerMeter(running.celsius()) / copper.ohmsPerMeter(90);
    assertThat(running.celsius()).isCloseTo(expected, within(1e-6));
    assertThat(running.wattsPerMeter())
        .isCloseTo(amperes * amperes * copper.ohmsPerMeter(running.celsius()), within(1e-9));
  }

  @Test
  void beyondBalanceThereIsNoSteadyTemperature() {
    assertThat(RunningTemperature.of(80, 30, 90, 30, copper)).isEmpty();
    assertThat(RunningTemperature.of(10, 0, 90, 30, copper)).isEmpty();
  }

  @Test
  void theDerivationCanBeFollowedByHand() {
    Conditions conditions = new Conditions(Tables.size("12"), Metal.COPPER, 90, 60, Tables.celsius(40), Tables.count(8));
    Ampacity ampacity = new Ampacities(Tables.US).of(conditions).orElseThrow();
    Derivation current = Derivation.stated("load", "", Quantity.of(16, Units.AMPERE));
    Derivation found = RunningTemperature.derive(current, ampacity, conditions, copper).orElseThrow();
    // Bundled eight, 12 AWG counts as 21 A; at 16 A in 40 °C air: 40 + 60 × (16 / 21)² × 6.291 / 6.639.
    assertThat(found.worked()).isEqualTo("40 °C + (90 °C − 30 °C) × (16 A / 21 A)² × 6.291 Ω/km / 6.639 Ω/km");
    assertThat(found.quantity().orElseThrow().in(Units.CELSIUS)).isCloseTo(73.00, within(0.01));
    RunningTemperature running = RunningTemperature.of(16, 21, 90, 40, copper).orElseThrow();
    assertThat(running.heat(current, copper).value().text()).isEqualTo("1.611 W/m");
  }
}
