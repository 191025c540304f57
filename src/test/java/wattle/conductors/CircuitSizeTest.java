package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.derivation.Value;
import wattle.library.CableKind;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.model.Metal;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

/** The size of a circuit without a plan, against hand figures from NFPA 70 chapter 9 table 8 and tables 310.16 and 250.122. */
class CircuitSizeTest {
  private static final Library LIBRARY = StandardLibrary.library(List.of("common", "us-2023"));

  private static CircuitSize size(double amperes, double feet, double volts, double percent, String cable, Metal metal,
      boolean continuous) {
    CableKind kind = LIBRARY.cable(cable).orElseThrow();
    return CircuitSize.of(LIBRARY, new CircuitSize.Question(
        Quantity.of(amperes, Units.AMPERE), continuous, Quantity.of(feet, Units.FOOT), Quantity.of(volts, Units.VOLT),
        Quantity.of(percent, Units.PERCENT), kind, metal)).orElseThrow();
  }

  private static String ground(CircuitSize size) {
    return ((Value.Size) size.ground().orElseThrow().value()).size().toString();
  }

  /** 8 AWG: 2 × 40 × 0.778 × 0.15 / 240 = 3.9 %; 6 AWG: 0.491 gives 2.46 %, and its ground grows from 10 to 8 AWG. */
  @Test
  void longerThanAmpacityAllows() {
    CircuitSize size = size(40, 150, 240, 3, "NM-B", Metal.COPPER, false);
    assertThat(size.breaker().si()).isEqualTo(40);
    assertThat(size.byAmpacity().value().text()).isEqualTo("8 AWG");
    assertThat(size.size()).isEqualTo(WireSize.awg(6));
    assertThat(size.drop().si() * 100).isCloseTo(2.455, within(0.005));
    assertThat(size.longest().si() / 0.3048).isCloseTo(150 * 3 / 2.455, within(0.5));
    assertThat(size.longestByAmpacity().si() / 0.3048).isCloseTo(3 * 240 / (2 * 40 * 0.778 / 1000) / 100, within(0.5));
    assertThat(ground(size)).isEqualTo("8 AWG");
  }

  /** NFPA 70 210.19(A)(1), 240.4(D), on 120 V, 208 V and 230 V. */
  @Test
  void shortRunsGoByAmpacity() {
    assertThat(size(16, 30, 120, 3, "NM-B", Metal.COPPER, true).size()).isEqualTo(WireSize.awg(12));
    assertThat(size(48, 30, 208, 3, "NM-B", Metal.COPPER, true).size()).isEqualTo(WireSize.awg(4));
    assertThat(size(48, 30, 240, 3, "NM-B", Metal.COPPER, true).breaker().si()).isEqualTo(60);
    assertThat(size(16, 30, 230, 3, "THWN-2", Metal.COPPER, false).size()).isEqualTo(WireSize.awg(12));
    assertThat(size(16, 30, 120, 3, "NM-B", Metal.ALUMINUM, false).size()).isEqualTo(WireSize.awg(10));
  }

  /**
   * NFPA 70 chapter 9, tables 1, 4 and 5, areas as buildmyowncabin.com, NEC 2008 chapter 9 table 5, and vdocument.in, chapter 9 tables:
   * two 6 AWG THWN-2 of 0.0507 in² and an 8 AWG ground of 0.0366 in² take 0.138 in², more than the 0.122 in² of 1/2 in EMT; two 8 AWG and
   * a 10 AWG of 0.0211 in² take 0.0943 in², less than the 0.114 in² of 1/2 in PVC.
   */
  @Test
  void theLeastRaceway() {
    assertThat(raceways(150, "THWN-2")).containsExactly("3/4 in EMT", "3/4 in PVC");
    assertThat(raceways(50, "THWN-2")).containsExactly("1/2 in EMT", "1/2 in PVC");
    assertThat(raceways(150, "NM-B")).as("a cable needs none").isEmpty();
  }

  private static java.util.List<String> raceways(double feet, String cable) {
    return size(40, feet, 240, 3, cable, Metal.COPPER, false).raceways().stream().map(r -> r.value().text()).toList();
  }
}
