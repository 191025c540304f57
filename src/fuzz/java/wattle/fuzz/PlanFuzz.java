package wattle.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** What the coverage-guided fuzzer runs: half of its inputs are texts, half choose a mutant and are mixed into it. */
public final class PlanFuzz {
  private static final PlanTarget TARGET;
  private static final PlanMutator MUTATOR;

  static {
    try {
      TARGET = new PlanTarget(Files.createTempDirectory("wattle-fuzz"));
      MUTATOR = PlanMutator.of(List.of(Path.of("examples"), Path.of("src/test/resources/plans")));
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  private PlanFuzz() {}

  /** The entry that the fuzzer looks for. */
  public static void fuzzerTestOneInput(FuzzedDataProvider data) {
    int command = data.consumeInt(0, PlanTarget.COMMANDS.size() - 1);
    if (data.consumeBoolean()) {
      String mutant = MUTATOR.mutant(new Random(data.consumeLong()));
      int at = data.consumeInt(0, mutant.length());
      TARGET.take(mutant.substring(0, at) + data.consumeRemainingAsString() + mutant.substring(at), command);
    } else {
      TARGET.take(data.consumeRemainingAsString(), command);
    }
  }
}
