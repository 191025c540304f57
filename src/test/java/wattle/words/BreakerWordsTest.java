package wattle.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import wattle.compiler.Compiler;
import wattle.finding.Source;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.read.SourceReader;

/** Breakers as the trade writes them: amperes, poles, then what else it has (common practice). */
class BreakerWordsTest {
  private static final House HOUSE = new Compiler(SourceReader.FROM_DISK).structure(new Source("words.wattle", """
      plan "Words"
      use code us-2023
      service main 120/240 V 200 A { source transformer 25 kVA 2 % }
      panel P from main {
        bus 200 A  slots 20  bonded
        main breaker 200 A 22 kA
        1     15 A 10 kA  arc-fault  hall  "Hall"
        2+4   20 A  two-pole ground-fault  pump
        3+5   20 A  handle-tied  counter
        6     30 A  fuse  spare
        7a    20 A  spare
      }
      branch hall by 14/2 NM-B { P --3 m-- a.o }
      branch pump by 12/2 NM-B { P --3 m-- a.p }
      branch counter by 12/3 NM-B { P --3 m-- a.c }
      room a { o: receptacle   p: well pump 1000 W 240 V   c: split receptacle }
      """), Path.of("words.wattle")).house();

  private static Breaker breaker(String slot) {
    return HOUSE.panels().get("P").breakers().stream().filter(b -> b.id().slotText().equals(slot)).findFirst().orElseThrow();
  }

  @Test
  void ratingsHaveAmperesAndPoles() {
    assertThat(BreakerWords.rating(breaker("1"))).isEqualTo("15 A");
    assertThat(BreakerWords.rating(breaker("2+4"))).isEqualTo("20 A 2-pole");
    assertThat(BreakerWords.rating(breaker("3+5"))).isEqualTo("20 A 2-pole tied");
    assertThat(BreakerWords.rating(breaker("6"))).isEqualTo("30 A fuse");
  }

  @Test
  void inASentenceItIsABreakerOrAFuse() {
    assertThat(BreakerWords.named(breaker("2+4"))).isEqualTo("20 A 2-pole breaker");
    assertThat(BreakerWords.named(breaker("6"))).isEqualTo("30 A fuse");
  }

  @Test
  void orderedItHasAllThatIsBought() {
    assertThat(BreakerWords.ordered(breaker("1"))).isEqualTo("15 A 1-pole, arc-fault, 10 kA");
    assertThat(BreakerWords.ordered(breaker("2+4"))).isEqualTo("20 A 2-pole, ground-fault");
    assertThat(BreakerWords.ordered(breaker("6"))).isEqualTo("30 A fuse");
    assertThat(BreakerWords.ordered(breaker("7a"))).isEqualTo("20 A 1-pole, half-size");
  }

  @Test
  void mainsAreCalledByTheirKind() {
    assertThat(BreakerWords.main(HOUSE.panels().get("P").main().orElseThrow())).isEqualTo("main breaker 200 A");
  }

  @Test
  void theLongCautionBeginsWithTheShortOne() {
    assertThat(Caution.LONG).startsWith(Caution.SHORT).contains("prove dead");
    assertThat(Caution.SHORT).contains("licensed person").doesNotContainIgnoringCase("safe");
  }
}
