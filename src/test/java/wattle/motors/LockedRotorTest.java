package wattle.motors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.library.Library;
import wattle.library.StandardLibrary;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Currents at the start by code letter and horsepower, against published worked examples and hand figures. */
class LockedRotorTest {
  private static final Library LIBRARY = StandardLibrary.library(List.of("common", "us-2023"));

  private static double amperes(String letter, double horsepower, double volts, boolean threePhase) {
    return LockedRotor
        .byLetter(LIBRARY, letter, Quantity.of(horsepower, Units.HORSEPOWER), volts, threePhase)
        .orElseThrow().si();
  }

  /**
   * electriciantalk.com, "430.7 (b)": 20 hp at 460 V on three phases with code letter G, 6.29 kVA × 20 = 125.8 kVA, 158 A. The others by
   * the same formula by hand from table 430.7(B): 9.99 kVA × 2 / 240 V = 83.3 A; 9.99 × 2 / 230 V = 86.9 A; 7.09 × 7.5 / (√3 × 208 V) =
   * 147.6 A; of the last letter, which has no upper end, 22.4 kVA × 1 / 120 V = 186.7 A.
   */
  @ParameterizedTest
  @CsvSource({"G,20,460,true,158", "L,2,240,false,83.3", "L,2,230,false,86.9", "H,7.5,208,true,147.6", "V,1,120,false,186.7"})
  void published(String letter, double horsepower, double volts, boolean threePhase, double expected) {
    assertThat(amperes(letter, horsepower, volts, threePhase)).isCloseTo(expected, within(0.15));
  }

  /** NFPA 70 table 430.7(B): a letter begins where the one before it ends, and I, O and Q are none. */
  @Test
  void lettersFollowEachOther() {
    var table = LIBRARY.table("code-letters").orElseThrow();
    assertThat(table.rows()).extracting(r -> r.cells().get(0).text())
        .containsExactly("A", "B", "C", "D", "E", "F", "G", "H", "J", "K", "L", "M", "N", "P", "R", "S", "T", "U", "V");
    for (int i = 1; i < table.rows().size(); i++) {
      double least = Double.parseDouble(table.rows().get(i).cells().get(1).text());
      double before = Double.parseDouble(table.rows().get(i - 1).cells().get(2).text());
      assertThat(least - before).as(table.rows().get(i).cells().get(0).text()).isCloseTo(0.01, within(1e-9));
    }
  }

  /**
   * NFPA 70 table 430.251(A) as printed at solar365.com (2008 edition, motors, page 38), beside the full-load current of table 430.248: the
   * usual locked-rotor current that is taken where a plan states none.
   */
  @ParameterizedTest
  @CsvSource({"9.8,58.8", "13.8,82.8", "16,96", "20,120", "24,144", "34,204", "56,336", "4.9,29.4", "8,48", "12,72", "17,102", "28,168"})
  void theUsualOneIsThatOfThePublishedTable(double fullLoad, double lockedRotor) {
    double share = LIBRARY.limits().get("usual-locked-rotor").value().si();
    assertThat(share * fullLoad).isCloseTo(lockedRotor, within(0.1));
  }
}
