package wattle.derivation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.finding.Citation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;
import wattle.quantity.WireSize;

class DerivationTest {
  private final Derivation base = Derivation.lookedUp(
      "ampacity at 90 °C", "I_t", new Value.Amount(Quantity.of(30, Units.AMPERE)),
      "table ampacity, size 12, column copper-90",
      List.of(Derivation.stated("size", "", WireSize.awg(12))),
      List.of(new Citation("NFPA 70", "Table 310.16", false)));
  private final Derivation heat = Derivation.assumed("ambient factor", "k_a", Quantity.of(0.82, Units.ONE));

  @Test
  void aSumShowsItsTerms() {
    Derivation corrected = Derivation.computed("corrected ampacity", "I_c", "I_t × k_a", 24.6, Units.AMPERE, base, heat);
    assertThat(corrected.worked()).isEqualTo("30 A × 0.82");
    assertThat(corrected).hasToString("corrected ampacity = I_t × k_a = 30 A × 0.82 = 24.6 A");
    assertThat(base).hasToString("ampacity at 90 °C = 30 A");
    assertThat(corrected.si()).isEqualTo(24.6);
  }

  @Test
  void aRaisedOrNegativeValueIsSetInParentheses() {
    Derivation current = Derivation.stated("current", "I", Quantity.of(15, Units.AMPERE));
    Derivation cold = Derivation.stated("ambient", "T_a", Quantity.of(-20, Units.CELSIUS));
    Derivation loss = Derivation.computed("loss", "P", "I² × I + T_a", 1, Units.WATT, current, cold);
    assertThat(loss.worked()).isEqualTo("(15 A)² × 15 A + (-20 °C)");
  }

  @Test
  void aSymbolIsReplacedOnlyWhole() {
    Derivation t = Derivation.stated("time", "t", Quantity.of(2, Units.SECOND));
    assertThat(Derivation.computed("x", "x", "t + t_1 + at", 1, Units.ONE, t).worked())
        .isEqualTo("2 s + t_1 + at");
  }

  @Test
  void whatRestsOnMemoryIsToBeVerified() {
    assertThat(base.toBeVerified()).isFalse();
    Derivation doubtful = heat.citing(new Citation("CSA C22.1", "Table 5A", true));
    assertThat(Derivation.computed("y", "y", "I_t × k_a", 1, Units.AMPERE, base, doubtful).toBeVerified()).isTrue();
  }

  @Test
  void aSizeIsNoFigure() {
    Derivation size = Derivation.stated("size", "", WireSize.awg(14));
    assertThat(size.quantity()).isEmpty();
    assertThat(size.value().text()).isEqualTo("14 AWG");
    assertThatThrownBy(size::si).hasMessage("size is not a figure: 14 AWG");
    assertThat(new Value.Between(Quantity.of(1, Units.SECOND), Quantity.of(60, Units.SECOND)).text())
        .isEqualTo("1 s to 60 s");
  }
}
