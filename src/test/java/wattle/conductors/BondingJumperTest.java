package wattle.conductors;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import wattle.derivation.Value;
import wattle.library.StandardLibrary;
import wattle.model.Metal;
import wattle.quantity.WireSize;

/** Supply-side bonding jumpers, NFPA 70 Table 250.102(C)(1). */
class BondingJumperTest {
  private static final GroundSizes SIZES = new GroundSizes(StandardLibrary.library(java.util.List.of("us-2023")));

  private static String least(String hot, Metal of, Metal jumper) {
    return SIZES.forBonding(WireSize.parse(hot).orElseThrow(), of, jumper).map(d -> ((Value.Size) d.value()).size().toString()).orElse("");
  }

  /**
   * thebuildingcodeforum.com 26483, "Sizing a supply side or main bond with parallel conductors": 2 AWG beside 250 kcmil, 2/0 for 750 kcmil
   * in all. Beside each of two raceways with 3/0 it is that of 3/0, 4 AWG, and not the 2 AWG of 335,600 circular mils.
   */
  @Test
  void theJumperGoesByTheHotsBesideIt() {
    assertThat(least("250 kcmil", Metal.COPPER, Metal.COPPER)).isEqualTo("2 AWG");
    assertThat(least("750 kcmil", Metal.COPPER, Metal.COPPER)).isEqualTo("2/0 AWG");
    assertThat(least("335.6 kcmil", Metal.COPPER, Metal.COPPER)).isEqualTo("2 AWG");
    assertThat(least("335.6 kcmil", Metal.COPPER, Metal.ALUMINUM)).isEqualTo("1/0 AWG");
    assertThat(least("3/0", Metal.COPPER, Metal.COPPER)).isEqualTo("4 AWG");
  }

  /** Above the table it is an eighth of the hots, which is left to the reader. */
  @Test
  void aboveTheTableNothingIsSaid() {
    assertThat(least("1500 kcmil", Metal.COPPER, Metal.COPPER)).isEmpty();
    assertThat(least("1100 kcmil", Metal.COPPER, Metal.COPPER)).isEqualTo("2/0 AWG");
  }
}
