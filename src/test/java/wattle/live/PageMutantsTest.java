package wattle.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The short form of fuzzing the live page: so many requests as {@code -Dfuzz.tries} says, from {@code -Dfuzz.seed}. */
class PageMutantsTest {
  private static final int TRIES = Integer.getInteger("fuzz.tries", 150);
  private static final long SEED = Long.getLong("fuzz.seed", 20261129);

  @Test
  void everyRequestIsAnswered() throws IOException {
    int requests = 0;
    try (PageTarget target = new PageTarget(Path.of("examples/cottage/house.wattle"))) {
      for (int i = 0; i < TRIES; i++) {
        try {
          target.take(new Random(SEED + i));
          requests++;
        } catch (AssertionError e) {
          fail("seed " + (SEED + i) + ": " + e.getMessage(), e);
        }
      }
    }
    assertThat(requests).isEqualTo(TRIES);
  }
}
