package wattle.bind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.model.Box;
import wattle.model.House;
import wattle.quantity.Units;
import wattle.read.SourceReader;

/**
 * Volumes of boxes whose sides are written: NFPA 70 Table 314.16(A), in cubic inches; FS, FD and masonry boxes as intrysys.com, box fill
 * volume chart.
 */
class BoxSizesTest {
  private static Compilation bound(String more) {
    String text = """
        use code us-2023
        service main 120/240 V 100 A { source available 10 kA   run 20 m of 2 Al triplex   earth rods by 6 Cu }
        panel P from main {
          bus 100 A   slots 20
          main breaker 100 A 10 kA
          1+3  15 A  two-pole  a
        }
        """ + more;
    return new Compiler(SourceReader.FROM_DISK).structure(new Source("house.wattle", text), Path.of("house.wattle"), List.of());
  }

  @ParameterizedTest
  @CsvSource({
      "3 in 2 in 2.5 in, 12.5", "3 in 2 in 1.5 in, 7.5", "3 in 2 in 3.5 in, 18", "4 in 1.5 in square, 21",
      "4 in 4 in 2.125 in square, 30.3",
      "4 in 1.5 in octagon, 15.5", "4 in 2.125 in round, 21.5", "22 in3, 22", "FS, 13.5", "FD, 18", "3.75 in 2 in 2.5 in masonry, 14",
      "3.75 in 2 in 3.5 in masonry, 21"})
  void sidesGiveTheVolumeOfTheTable(String size, double cubicInches) {
    House house = bound("branch a by 14/3 NM-B { P --3 m-- k.l }\nroom k { box b " + size + " { l: light 10 W on black } }").house();
    Box box = house.boxes().get("k.b");
    assertThat(box.volume().orElseThrow().in(Units.CUBIC_INCH)).isCloseTo(cubicInches, offset(1e-6));
  }

  @Test
  void sidesOfNoTradeSizeAreRefused() {
    Compilation plan = bound(
        "branch a by 14/3 NM-B { P --3 m-- k.l --2 m-- k.n }\nroom k { l: light 10 W on black 3 in 2 in 9 in\n  n: light 10 W on red }");
    assertThat(plan.findings()).extracting(Finding::rule).containsExactly("box-size-unknown");
  }
}
