package wattle.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
  private static Quantity of(double value, String unit) {
    return Quantity.of(value, Units.find(unit).orElseThrow());
  }

  @Test
  void isShownAsTheTradeWritesIt() {
    assertThat(of(15, "A")).hasToString("15 A");
    assertThat(of(27, "m")).hasToString("27 m");
    assertThat(of(50, "degC")).hasToString("50 °C");
    assertThat(of(0.12, "ohm")).hasToString("0.12 Ω");
    assertThat(of(1.8, "%")).hasToString("1.8 %");
    assertThat(of(1.0 / 3, "V")).hasToString("0.3333 V");
    assertThat(of(57267, "A2s")).hasToString("57267 A²s");
    assertThat(of(12345.678, "VA")).hasToString("12346 VA");
    assertThat(of(0.00001234, "ohm")).hasToString("0.00001234 Ω");
    assertThat(of(-0.0, "A")).hasToString("0 A");
    assertThat(Quantity.of(6, Units.ONE)).hasToString("6");
    assertThat(of(9.99999, "A")).hasToString("10 A");
  }

  /** Factors of NIST SP 811 (2008) Appendix B.8, all of them exact but that of the cubic inch, which is given to seven digits. */
  @ParameterizedTest
  @CsvSource({"ft, m, 0.3048", "in, m, 0.0254", "ft2, m2, 0.09290304", "in3, cm3, 16.38706", "W/m, W/ft, 0.3048",
      "ohm/kft, ohm/km, 3.280839895"})
  void customaryUnitsHaveTheirPublishedFactors(String customary, String metric, double factor) {
    assertThat(of(1, customary).in(Units.find(metric).orElseThrow())).isCloseTo(factor, within(5e-7 * factor));
    assertThat(Units.FOOT.factor()).isEqualTo(0.3048);
  }

  /** NIST SP 811 (2008) Appendix B.8: t/°C = (t/°F − 32)/1.8; water freezes at 32 °F and boils at 212 °F, and the scales meet at −40. */
  @ParameterizedTest
  @CsvSource({"-40, -40", "0, 32", "20, 68", "30, 86", "60, 140", "75, 167", "90, 194", "100, 212"})
  void fahrenheitIsThePublishedFormula(double celsius, double fahrenheit) {
    assertThat(UnitSystem.CUSTOMARY.shown(of(celsius, "degC")).value()).isCloseTo(1.8 * celsius + 32, within(1e-9)).isCloseTo(fahrenheit,
        within(1e-9));
    assertThat(UnitSystem.METRIC.shown(of(celsius, "degC")).value()).isEqualTo(of(celsius, "degC").value());
  }

  @Test
  void whatIsKnownByOneUnitIsToldInTheOtherToo() {
    assertThat(UnitSystem.CUSTOMARY.known(of(75, "degC"))).isEqualTo("75 °C (167 °F)");
    assertThat(UnitSystem.METRIC.known(of(75, "degC"))).isEqualTo("75 °C");
    assertThat(UnitSystem.CUSTOMARY.known(of(15, "A"))).isEqualTo("15 A");
  }

  @Test
  void temperaturesAddAsDifferences() {
    assertThat(of(30, "degC").plus(of(10, "K"))).hasToString("40 °C");
    assertThat(of(30, "degC").plus(of(10, "degC"))).hasToString("40 °C");
    assertThat(of(30, "degC").plus(of(18, "degF"))).hasToString("40 °C");
    assertThat(of(86, "degF").shownIn(Units.CELSIUS)).hasToString("30 °C");
    assertThat(of(50, "degC").minus(of(5, "degC"))).hasToString("45 °C");
  }

  @Test
  void aProductKeepsTheUnitThatIsLeft() {
    assertThat(of(33, "VA/m2").times(of(186, "m2"))).hasToString("6138 VA");
    assertThat(of(3, "VA/ft2").times(of(2000, "ft2"))).hasToString("6000 VA");
    assertThat(of(10, "ohm/km").times(of(500, "m"))).hasToString("5 Ω");
    assertThat(of(120, "V").times(of(10, "A"))).hasToString("1200 W");
    assertThat(of(50, "A").times(of(80, "%"))).hasToString("40 A");
    assertThat(of(12, "kW").dividedBy(of(240, "V"))).hasToString("50 A");
    assertThat(of(240, "V").dividedBy(of(120, "V"))).hasToString("2");
  }

  @Test
  void differentDimensionsDoNotAdd() {
    assertThatThrownBy(() -> of(1, "A").plus(of(1, "V"))).hasMessage("1 V is not a current such as 15 A");
    assertThatThrownBy(() -> of(1, "A").in(Units.VOLT)).isInstanceOf(IllegalArgumentException.class);
    assertThat(of(1, "W").plus(of(1, "VA"))).hasToString("2 W");
  }

  @Property
  void everyUnitGivesBackWhatWasWritten(@ForAll("units") Unit unit, @ForAll("figures") double value) {
    assertThat(Quantity.of(value, unit).value()).isCloseTo(value, within(1e-9 * Math.max(1, Math.abs(value))));
  }

  @Property
  void everyUnitConvertsThereAndBack(@ForAll("units") Unit unit, @ForAll("figures") double value) {
    for (Unit other : Units.of(unit.dimension())) {
      Quantity there = Quantity.of(Quantity.of(value, unit).in(other), other);
      assertThat(there.in(unit)).isCloseTo(value, within(1e-6 * Math.max(1, Math.abs(value))));
    }
  }

  @Property
  void sumsDoNotDependOnOrder(
      @ForAll("lengths") Quantity a, @ForAll("lengths") Quantity b, @ForAll("lengths") Quantity c) {
    double scale = 1e-12 * (Math.abs(a.si()) + Math.abs(b.si()) + Math.abs(c.si()) + 1);
    assertThat(a.plus(b).plus(c).si()).isCloseTo(a.plus(b.plus(c)).si(), within(scale));
    assertThat(a.plus(b).si()).isCloseTo(b.plus(a).si(), within(scale));
    assertThat(a.plus(b).minus(b).si()).isCloseTo(a.si(), within(scale));
  }

  @Property
  void productsDoNotDependOnOrder(@ForAll("quantities") Quantity a, @ForAll("quantities") Quantity b) {
    Quantity one = a.times(b);
    Quantity other = b.times(a);
    assertThat(one.dimension()).isEqualTo(other.dimension()).isEqualTo(a.dimension().times(b.dimension()));
    assertThat(one.si()).isCloseTo(other.si(), within(1e-9 * Math.abs(one.si()) + 1e-300));
  }

  @Property
  void aQuotientUndoesAProduct(@ForAll("quantities") Quantity a, @ForAll("quantities") Quantity b) {
    if (Math.abs(b.si()) > 1e-9) {
      Quantity back = a.times(b).dividedBy(b);
      assertThat(back.dimension()).isEqualTo(a.dimension());
      assertThat(back.si()).isCloseTo(a.si(), within(1e-9 * Math.abs(a.si()) + 1e-300));
    }
  }

  @Property
  void onlyEqualDimensionsAdd(@ForAll("quantities") Quantity a, @ForAll("quantities") Quantity b) {
    if (a.dimension().equals(b.dimension())) {
      assertThat(a.plus(b).dimension()).isEqualTo(a.dimension());
    } else {
      assertThatThrownBy(() -> a.plus(b)).isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> a.minus(b)).isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Property
  void printingNeverShowsAnExponent(@ForAll("units") Unit unit, @ForAll("figures") double value) {
    String text = Quantity.of(value, unit).toString();
    String number = text.split(" ")[0];
    assertThat(number).matches("-?[0-9]+(\\.[0-9]*[1-9])?");
  }

  @Provide
  Arbitrary<Unit> units() {
    List<Unit> units = new ArrayList<>();
    Units.spellings().forEach(s -> units.add(Units.find(s).orElseThrow()));
    return Arbitraries.of(units);
  }

  @Provide
  Arbitrary<Double> figures() {
    return Arbitraries.doubles().between(-1e6, 1e6);
  }

  @Provide
  Arbitrary<Quantity> lengths() {
    return Combinators.combine(figures(), Arbitraries.of(Units.of(Dimension.LENGTH))).as(Quantity::of);
  }

  /** Temperatures on a scale are left out: their products have no use. */
  @Provide
  Arbitrary<Quantity> quantities() {
    return Combinators.combine(figures(), units().filter(u -> u.offset() == 0)).as(Quantity::of);
  }
}
