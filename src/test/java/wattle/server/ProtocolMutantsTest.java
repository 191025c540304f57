package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of fuzzing the language server: so many rounds as {@code -Dfuzz.tries} says, from {@code -Dfuzz.seed}. */
class ProtocolMutantsTest {
  private static final int TRIES = Integer.getInteger("fuzz.tries", 150);
  private static final long SEED = Long.getLong("fuzz.seed", 20261129);

  @TempDir
  Path folder;

  @Test
  void everyQuestionIsAnswered() throws IOException {
    List<String> texts = List.of(Files.readString(Path.of("examples/broken/unit-missing.wattle")),
        Files.readString(Path.of("examples/broken/pattern-unused.wattle")), "plan \"P\"\n", "room k { l: light 10 W }\n");
    int rounds = 0;
    try (ProtocolTarget target = new ProtocolTarget(texts, folder.toUri().toString())) {
      for (int i = 0; i < TRIES; i++) {
        try {
          target.take(new Random(SEED + i));
          rounds++;
        } catch (AssertionError e) {
          fail("seed " + (SEED + i) + ": " + e.getMessage(), e);
        }
      }
    }
    assertThat(rounds).isEqualTo(TRIES);
  }
}
