package wattle.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Breakers that feed the same thing are told apart by their number. */
class NumberedTest {
  @Test
  void theFirstHasThePlainName() {
    Set<String> taken = new HashSet<>();
    for (String name : new String[]{"of wet", "of wet, 2nd breaker", "of wet, 3rd breaker", "of wet, 4th breaker"}) {
      assertThat(Numbered.among("of wet", taken::contains)).isEqualTo(name);
      taken.add(name);
    }
  }

  @Test
  void teensEndInTh() {
    Set<String> taken = new HashSet<>();
    for (int i = 1; i < 22; i++) {
      taken.add(Numbered.among("of wet", taken::contains));
    }
    assertThat(taken).contains("of wet, 11th breaker", "of wet, 12th breaker", "of wet, 13th breaker", "of wet, 21st breaker");
  }
}
