package wattle.quantity;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MILLI;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tech.units.indriya.unit.UnitDimension;
import tech.units.indriya.unit.Units;

/** Every unit against indriya (JSR-385), whose units are those of the SI brochure; customary ones from its meter. */
class UnitsAgainstIndriyaTest {
  /** Ours by spelling, theirs by definition. Yard and pound agreement of 1959: 1 in = 25.4 mm. */
  private static Map<String, javax.measure.Unit<?>> theirs() {
    javax.measure.Unit<?> inch = Units.METRE.multiply(254).divide(10000);
    javax.measure.Unit<?> foot = inch.multiply(12);
    Map<String, javax.measure.Unit<?>> map = new LinkedHashMap<>();
    map.put("A", Units.AMPERE);
    map.put("mA", MILLI(Units.AMPERE));
    map.put("kA", KILO(Units.AMPERE));
    map.put("V", Units.VOLT);
    map.put("mV", MILLI(Units.VOLT));
    map.put("kV", KILO(Units.VOLT));
    map.put("W", Units.WATT);
    map.put("kW", KILO(Units.WATT));
    map.put("VA", Units.VOLT.multiply(Units.AMPERE));
    map.put("kVA", KILO(Units.VOLT).multiply(Units.AMPERE));
    // Mechanical: 550 foot-pounds of force a second; a pound is 0.45359237 kg, and standard gravity 9.80665 m/s².
    map.put("hp", Units.WATT.multiply(550 * 0.3048 * 0.45359237 * 9.80665));
    map.put("Wh", Units.WATT.multiply(Units.HOUR));
    map.put("kWh", KILO(Units.WATT).multiply(Units.HOUR));
    map.put("ohm", Units.OHM);
    map.put("mohm", MILLI(Units.OHM));
    map.put("kohm", KILO(Units.OHM));
    map.put("m", Units.METRE);
    map.put("cm", CENTI(Units.METRE));
    map.put("mm", MILLI(Units.METRE));
    map.put("km", KILO(Units.METRE));
    map.put("ft", foot);
    map.put("in", inch);
    map.put("kft", foot.multiply(1000));
    map.put("m2", Units.SQUARE_METRE);
    map.put("cm2", CENTI(Units.METRE).pow(2));
    map.put("mm2", MILLI(Units.METRE).pow(2));
    map.put("ft2", foot.pow(2));
    map.put("in2", inch.pow(2));
    map.put("kcmil", inch.divide(1000).pow(2).multiply(Math.PI / 4).multiply(1000));
    map.put("in3", inch.pow(3));
    map.put("cm3", CENTI(Units.METRE).pow(3));
    map.put("mL", MILLI(Units.LITRE));
    map.put("degC", Units.CELSIUS);
    map.put("degF", Units.KELVIN.multiply(5).divide(9).shift(459.67));
    map.put("K", Units.KELVIN);
    map.put("%", Units.PERCENT);
    map.put("s", Units.SECOND);
    map.put("ms", MILLI(Units.SECOND));
    map.put("min", Units.MINUTE);
    map.put("h", Units.HOUR);
    map.put("Hz", Units.HERTZ);
    map.put("A2s", Units.AMPERE.pow(2).multiply(Units.SECOND));
    return map;
  }

  private static Unit ours(String spelling) {
    return wattle.quantity.Units.find(spelling).orElseThrow(() -> new AssertionError(spelling));
  }

  @Test
  void everyFactorAndOffsetAgrees() throws Exception {
    for (Map.Entry<String, javax.measure.Unit<?>> each : theirs().entrySet()) {
      javax.measure.Unit<?> theirs = each.getValue();
      javax.measure.UnitConverter toSi = theirs.getConverterToAny(theirs.getSystemUnit());
      Unit ours = ours(each.getKey());
      for (double value : new double[]{0, 1, 14, 37.5, -40, 12345.678}) {
        double expected = toSi.convert(value);
        assertThat(Quantity.of(value, ours).si())
            .as("%s %s", value, each.getKey())
            .isCloseTo(expected, within(1e-12 * Math.max(Math.abs(expected), ours.factor())));
      }
    }
  }

  @Test
  void everyDimensionAgrees() {
    for (Map.Entry<String, javax.measure.Unit<?>> each : theirs().entrySet()) {
      assertThat(dimension(each.getValue().getDimension())).as(each.getKey()).isEqualTo(ours(each.getKey()).dimension());
    }
  }

  @Test
  void noUnitIsLeftUnchecked() {
    Set<Unit> checked = new HashSet<>();
    theirs().keySet().forEach(spelling -> checked.add(ours(spelling)));
    for (String spelling : wattle.quantity.Units.spellings()) {
      assertThat(checked).as(spelling).contains(ours(spelling));
    }
  }

  @Test
  void everySymbolHasASpellingInAscii() {
    Set<Unit> ascii = new HashSet<>();
    for (String spelling : wattle.quantity.Units.spellings()) {
      if (spelling.chars().allMatch(c -> c < 128)) {
        ascii.add(ours(spelling));
      }
    }
    for (String spelling : wattle.quantity.Units.spellings()) {
      assertThat(ascii).contains(ours(spelling));
      assertThat(wattle.quantity.Units.find(ours(spelling).symbol())).contains(ours(spelling));
    }
  }

  @Test
  void productsAndQuotientsOfDimensionsAgree() {
    for (Map.Entry<String, javax.measure.Unit<?>> one : theirs().entrySet()) {
      for (Map.Entry<String, javax.measure.Unit<?>> other : theirs().entrySet()) {
        Dimension a = ours(one.getKey()).dimension();
        Dimension b = ours(other.getKey()).dimension();
        javax.measure.Dimension x = one.getValue().getDimension();
        javax.measure.Dimension y = other.getValue().getDimension();
        assertThat(a.times(b)).isEqualTo(dimension(x.multiply(y)));
        assertThat(a.per(b)).isEqualTo(dimension(x.divide(y)));
      }
    }
  }

  @Test
  void namedProductsAgree() {
    assertThat(ours("VA/m2").dimension()).isEqualTo(dimension(Units.WATT.divide(Units.SQUARE_METRE).getDimension()));
    assertThat(ours("ohm/kft").factor()).isCloseTo(1 / 304.8, within(1e-15));
    assertThat(ours("ohm/km").factor()).isEqualTo(1e-3);
    assertThat(Dimension.CHARGE).isEqualTo(dimension(Units.COULOMB.getDimension()));
    assertThat(Dimension.ENERGY).isEqualTo(dimension(Units.JOULE.getDimension()));
    assertThat(wattle.quantity.Units.find("degC/m")).isEmpty();
    assertThat(wattle.quantity.Units.find("/m")).isEmpty();
    assertThat(wattle.quantity.Units.find("furlong")).isEmpty();
  }

  private static Dimension dimension(javax.measure.Dimension theirs) {
    Map<javax.measure.Dimension, Integer> exponents = new LinkedHashMap<>();
    if (theirs.getBaseDimensions() == null) {
      if (!theirs.equals(UnitDimension.NONE)) {
        exponents.put(theirs, 1);
      }
    } else {
      theirs.getBaseDimensions().forEach(exponents::put);
    }
    return new Dimension(
        exponents.getOrDefault(UnitDimension.LENGTH, 0),
        exponents.getOrDefault(UnitDimension.MASS, 0),
        exponents.getOrDefault(UnitDimension.TIME, 0),
        exponents.getOrDefault(UnitDimension.ELECTRIC_CURRENT, 0),
        exponents.getOrDefault(UnitDimension.TEMPERATURE, 0));
  }
}
