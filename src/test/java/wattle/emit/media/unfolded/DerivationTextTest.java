package wattle.emit.media.unfolded;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wattle.derivation.Derivation;
import wattle.quantity.Quantity;
import wattle.quantity.Units;

/** Ohm's law with a current that is assumed: 0.5 Ω × 16 A = 8 V. */
class DerivationTextTest {
  private static final Derivation AMPERES = Derivation.assumed("current", "I", Quantity.of(16, Units.AMPERE));
  private static final Derivation OHMS = Derivation.stated("resistance", "R", Quantity.of(0.5, Units.OHM));
  private static final Derivation DROP = Derivation.computed("voltage lost", "U", "R × I", 8, Units.VOLT, OHMS, AMPERES);

  @Test
  void inputsStandBeneathWhatTheyLedTo() {
    List<String> lines = DerivationText.text(DROP).lines().toList();
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0)).startsWith("voltage lost").contains("R × I").contains("8 V");
    assertThat(lines.get(1)).startsWith("  resistance").contains("0.5 Ω").contains("(stated)");
    assertThat(lines.get(2)).startsWith("  current").contains("16 A").contains("(assumed)");
  }

  @Test
  void aBasisIsSaidInAWord() {
    assertThat(DerivationText.basis(AMPERES)).isEqualTo("assumed");
    assertThat(DerivationText.basis(OHMS)).isEqualTo("stated");
    assertThat(DerivationText.basis(DROP)).isEmpty();
  }
}
