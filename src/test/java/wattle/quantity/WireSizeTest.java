package wattle.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import wattle.reference.Reference;

class WireSizeTest {
  private static WireSize size(String text) {
    return WireSize.parse(text).orElseThrow(() -> new AssertionError(text));
  }

  /** ASTM B258: the diameter of every gauge; NFPA 70-2011 chapter 9 table 8: its circular mils, rounded as printed. */
  @TestFactory
  List<DynamicTest> geometryOfEveryListedSize() {
    return Reference.rows("awg.csv").stream().map(row -> DynamicTest.dynamicTest(row.get("size"), () -> check(row))).toList();
  }

  private static void check(Map<String, String> row) {
    WireSize size = size(row.get("size"));
    double millimeters = Double.parseDouble(row.get("solid_equivalent_diameter_mm"));
    double area = Double.parseDouble(row.get("area_mm2"));
    double circularMils = Double.parseDouble(row.get("circular_mils_table8"));
    assertThat(size.diameterMeters() * 1000).isCloseTo(millimeters, within(0.00006));
    assertThat(size.areaSquareMillimeters()).isCloseTo(area, within(area * 3e-5));
    double computed = size.areaSquareMeters() / Units.find("kcmil").orElseThrow().factor() * 1000;
    assertThat(computed).isCloseTo(circularMils, within(circularMils * 0.001));
  }

  /** ASTM B258 defines 4/0 as 0.4600 in and 36 AWG as 0.0050 in. */
  @Test
  void theTwoSizesThatDefineTheGauge() {
    assertThat(size("4/0").diameterMeters() / 0.0254).isCloseTo(0.46, within(1e-12));
    assertThat(size("36").diameterMeters() / 0.0254).isCloseTo(0.005, within(1e-12));
  }

  @Test
  void isReadAndShownAsTheTradeWritesIt() {
    assertThat(size("14")).hasToString("14 AWG");
    assertThat(size("14 AWG")).isEqualTo(size("14"));
    assertThat(size("4/0")).hasToString("4/0 AWG").isEqualTo(WireSize.awg(-3));
    assertThat(size("1/0")).isEqualTo(WireSize.awg(0));
    assertThat(size("250")).hasToString("250 kcmil").isEqualTo(size("250 kcmil"));
    assertThat(size("2.5 mm2")).hasToString("2.5 mm²").isEqualTo(size("2.5mm²"));
  }

  @Test
  void whatIsNoSizeIsRefused() {
    for (String text : List.of(
        "", " ", "0", "5/0", "0/0", "+2/0", "14f", "0x1p3", "1e1", "NaN", "Infinity", "-3", "14.5", "41", "249",
        "250 AWG", "kcmil", "0 mm2", "9999 kcmil", "2,5 mm2", ".5 mm2", "5. mm2", "1.2.3 mm2", "14 14", "Cu")) {
      assertThat(WireSize.parse(text)).as(text).isEmpty();
    }
  }

  @Property
  void everyGaugeIsReadBack(@ForAll @IntRange(min = -3, max = 40) int gauge) {
    WireSize size = WireSize.awg(gauge);
    assertThat(WireSize.parse(size.toString())).contains(size);
    assertThat(WireSize.parse(size.key())).contains(size);
  }

  @Property
  void aLowerGaugeIsThicker(@ForAll @IntRange(min = -3, max = 39) int gauge) {
    assertThat(WireSize.awg(gauge)).isGreaterThan(WireSize.awg(gauge + 1));
    // Three gauges double the area, nearly: 92^(6/39) = 2.005.
    assertThat(WireSize.awg(gauge).areaSquareMeters() / WireSize.awg(gauge + 3).areaSquareMeters())
        .isCloseTo(Math.pow(92, 6 / 39.0), within(1e-9));
  }

  @Test
  void sizesOfAllKindsSortByCrossSection() {
    assertThat(size("250")).isGreaterThan(size("4/0"));
    assertThat(size("2.5 mm2")).isGreaterThan(size("14")).isLessThan(size("12"));
  }
}
