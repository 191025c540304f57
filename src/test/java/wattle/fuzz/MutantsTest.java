package wattle.fuzz;

import static org.assertj.core.api.Assertions.fail;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The short form of the fuzz profile: as many mutants as {@code -Dfuzz.tries} says, from {@code -Dfuzz.seed}. A find is written to
 * {@code target/fuzz-find.wattle}; once mended it goes to {@code src/fuzz/corpus}, whose plans are tried first, with every command.
 */
class MutantsTest {
  private static final int TRIES = Integer.getInteger("fuzz.tries", 100);
  private static final long SEED = Long.getLong("fuzz.seed", 20261128);

  @TempDir
  Path folder;

  @Test
  void whatWasFoundBeforeStaysMended() throws Exception {
    PlanTarget target = new PlanTarget(folder);
    try (var files = Files.list(Path.of("src/fuzz/corpus"))) {
      for (Path plan : files.sorted().toList()) {
        String text = Files.readString(plan);
        take(target, text, 0, plan.toString());
        for (String command : PlanTarget.COMMANDS.subList(1, PlanTarget.COMMANDS.size())) {
          target.runs(text, command);
        }
      }
    }
  }

  @Test
  void noMutantEndsInAnInternalError() throws Exception {
    PlanMutator mutator = PlanMutator.of(List.of(Path.of("examples"), Path.of("src/test/resources/plans")));
    PlanTarget target = new PlanTarget(folder);
    for (int i = 0; i < TRIES; i++) {
      Random random = new Random(SEED + i);
      take(target, mutator.mutant(random), random.nextInt(PlanTarget.COMMANDS.size()), "seed " + (SEED + i));
    }
  }

  private static void take(PlanTarget target, String text, int command, String from) throws Exception {
    try {
      target.take(text, command);
    } catch (RuntimeException | AssertionError | StackOverflowError e) {
      Files.writeString(Path.of("target/fuzz-find.wattle"), text);
      fail(from + ", command " + PlanTarget.COMMANDS.get(command) + ": " + e + "\n" + text, e);
    }
  }
}
