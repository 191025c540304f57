package wattle.derivation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Citation;
import wattle.quantity.Quantity;
import wattle.quantity.UnitSystem;
import wattle.quantity.Units;

/** 1 ft = 0.3048 m exactly, t/°F = 1.8 t/°C + 32: NIST SP 811 (2008) Appendix B.8. */
class DerivationUnitsTest {
  private static final Derivation LENGTH = Derivation.stated("length", "l", Quantity.of(30.48, Units.METER));

  /** 12.1 Ω/km is the largest resistance of 1.5 mm² copper, IEC 60228 Table 2. */
  private static final Derivation EACH = Derivation.lookedUp(
      "resistance", "r", new Value.Amount(Quantity.of(12.1, Units.OHM_PER_KILOMETER)), "table r", List.of(),
      List.of(new Citation("IEC 60228", "Table 2", false)));

  private final DerivationUnits feet = new DerivationUnits(UnitSystem.CUSTOMARY);

  @Test
  void aSumComesOutInFeetAndATableIsQuoted() {
    Derivation shown = feet.shown(Derivation.computed("R", "R", "r × l", 12.1e-3 * 30.48, Units.OHM, EACH, LENGTH));
    // 12.1 Ω/km × 0.3048 km/kft = 3.688 Ω/kft, and 30.48 m / 0.3048 = 100 ft.
    assertThat(shown).hasToString("R = r × l = 3.688 Ω/kft × 100 ft = 0.3688 Ω");
    assertThat(shown.inputs().get(0)).hasToString("resistance = 12.1 Ω/km = 3.688 Ω/kft");
    assertThat(shown.inputs().get(0).sources()).isEqualTo(EACH.sources());
    assertThat(shown.inputs().get(1)).hasToString("length = 100 ft");
    assertThat(shown.si()).isCloseTo(12.1e-3 * 30.48, within(1e-12));
  }

  @Test
  void temperaturesCountInCelsiusAndAreReadInFahrenheit() {
    Derivation air = Derivation.stated("air", "T_a", Quantity.of(122, Units.FAHRENHEIT));
    Derivation shown = feet.shown(Derivation.computed("T", "T", "T_a + 10 °C", 60, Units.CELSIUS, air));
    assertThat(shown).hasToString("T = T_a + 10 °C = 50 °C + 10 °C = 60 °C = 140 °F");
    assertThat(shown.inputs().get(0)).hasToString("air = 50 °C = 122 °F");
  }

  @Test
  void sizesOfWireAndFiguresWithoutALengthStay() {
    Derivation diameter = Derivation.stated("diameter", "d", Quantity.of(2.05, Units.MILLIMETER));
    Derivation amperes = Derivation.computed("I", "I", "P / U", 10, Units.AMPERE,
        Derivation.stated("P", "P", Quantity.of(1200, Units.WATT)));
    assertThat(feet.shown(diameter)).isSameAs(diameter);
    assertThat(feet.shown(amperes)).isSameAs(amperes);
  }

  @Test
  void aSharedStepIsSharedWhenShown() {
    Derivation one = feet.shown(Derivation.computed("a", "a", "l", 30.48, Units.METER, LENGTH));
    Derivation other = feet.shown(Derivation.computed("b", "b", "l", 30.48, Units.METER, LENGTH));
    assertThat(one.inputs().get(0)).isSameAs(other.inputs().get(0));
  }

  @Test
  void whatIsShownInMetersIsItself() {
    assertThat(new DerivationUnits(UnitSystem.METRIC).shown(EACH)).isSameAs(EACH);
    assertThat(feet.shown(feet.shown(LENGTH))).hasToString("length = 100 ft");
  }

  @Test
  void aRangeIsConvertedAtBothEnds() {
    Value between = new Value.Between(Quantity.of(3.048, Units.METER), Quantity.of(6.096, Units.METER));
    assertThat(feet.shown(Derivation.lookedUp("span", "", between, "table s", List.of(), List.of())).value().text())
        .isEqualTo("10 ft to 20 ft");
  }
}
