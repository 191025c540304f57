package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two processes that revise one plan: what each told to have written is there. {@code RacingWritersTest} has the rest. */
class RacingWritersIT {
  private static final int PAIRS = Integer.getInteger("saves", 3);

  @TempDir
  Path folder;

  @Test
  void twoProcessesThatReviseOnePlanLoseNothingOfEachOther() throws Exception {
    Path plan = folder.resolve("p.wattle");
    String untidy = Files.readString(Path.of("examples", "kitchen-renovation", "before.wattle")).replace("1    15 A", "1    15")
        .replace("  ", "      ");
    int told = 0;
    for (int i = 0; i < PAIRS; i++) {
      Files.writeString(plan, untidy);
      Process mend = start("mend", "mend", "--write", "p.wattle");
      Process tidy = start("tidy", "tidy", "p.wattle");
      boolean mended = toldBy(mend, "mend").contains("1 mended");
      boolean tidied = toldBy(tidy, "tidy").contains("set in order");
      String now = Files.readString(plan);
      assertThat(now.contains("      slots")).as("not in order").isEqualTo(!tidied);
      assertThat(now.contains("1" + (tidied ? "    " : "          ") + "15 A")).as("mended").isEqualTo(mended);
      told += (mended ? 1 : 0) + (tidied ? 1 : 0);
    }
    assertThat(told).isGreaterThanOrEqualTo(PAIRS);
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all.map(f -> f.getFileName().toString())).containsExactlyInAnyOrder("p.wattle", "mend", "tidy");
    }
  }

  private Process start(String name, String... command) throws IOException {
    return new ProcessBuilder(Stream.concat(
        Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-jar",
            Path.of("target", "wattle", "wattle.jar").toAbsolutePath().toString()),
        List.of(command).stream()).toList()).directory(folder.toFile()).redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(folder.resolve(name).toFile()).start();
  }

  private String toldBy(Process process, String name) throws Exception {
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return Files.readString(folder.resolve(name));
  }
}
