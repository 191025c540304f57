package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Commands that write are killed at random moments, {@code -Dkills=250} times for each command where somebody asks: a file is what it was
 * or what the command makes of it, and what a killed run left goes with a later one.
 */
class KilledRunsIT {
  private static final int KILLS = Integer.getInteger("kills", 2);
  private static final Path COURT = Path.of("examples", "alder-court", "house.wattle");

  @TempDir
  Path folder;

  /**
   * A command in a folder with a plan.
   *
   * @param arguments of it, run in that folder
   * @param target the file that it writes
   * @param before what the file holds before; empty where there is none
   */
  private record Killed(List<String> arguments, String target, String before) {
    @Override
    public String toString() {
      return String.join(" ", arguments);
    }
  }

  static Stream<Killed> commands() throws IOException {
    String court = Files.readString(COURT);
    String misspelled = court.replaceFirst("arc-fault", "arc-falt");
    return Stream.of(
        new Killed(List.of("tidy", "plan.wattle"), "plan.wattle", court.replace("  ", "      ")),
        new Killed(List.of("mend", "--write", "plan.wattle"), "plan.wattle", misspelled),
        new Killed(List.of("draw", "--view", "one-line", "--out", "one-line.svg", "plan.wattle"), "one-line.svg", ""),
        new Killed(List.of("report", "plan.wattle", "--out", "."), "report.html", ""));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void aFileIsWholeWheneverItsWriterIsKilled(Killed command) throws Exception {
    byte[] before = prepare(command);
    Instant begun = Instant.now();
    Process whole = start(command);
    assertThat(whole.waitFor(120, TimeUnit.SECONDS)).isTrue();
    Duration took = Duration.between(begun, Instant.now());
    byte[] after = Files.readAllBytes(folder.resolve(command.target));
    assertThat(after).isNotEqualTo(before);

    Random random = new Random(7);
    int untouched = 0;
    for (int i = 0; i < KILLS; i++) {
      prepare(command);
      Process run = start(command);
      run.waitFor((long) (took.toMillis() * (0.3 + random.nextDouble())), TimeUnit.MILLISECONDS);
      run.destroyForcibly().waitFor();
      byte[] now = bytes(folder.resolve(command.target));
      assertThat(Arrays.equals(now, before) || Arrays.equals(now, after)).as("kill %s leaves one or the other", i).isTrue();
      untouched += Arrays.equals(now, before) ? 1 : 0;
    }
    System.out.println(command + ": " + KILLS + " kills, " + untouched + " before the file was in its place");

    for (Path left : leftovers()) {
      Files.setLastModifiedTime(left, FileTime.from(Instant.now().minus(Duration.ofHours(2))));
    }
    prepare(command);
    assertThat(start(command).waitFor(120, TimeUnit.SECONDS)).isTrue();
    assertThat(leftovers()).isEmpty();
    assertThat(Files.readAllBytes(folder.resolve(command.target))).isEqualTo(after);
  }

  /** Puts the plan and what the command changes back; what the file holds then, nothing where there is none. */
  private byte[] prepare(Killed command) throws IOException {
    Files.copy(COURT, folder.resolve("plan.wattle"), StandardCopyOption.REPLACE_EXISTING);
    for (String used : List.of("rooms.wattle", "garage.wattle")) {
      Files.copy(COURT.resolveSibling(used), folder.resolve(used), StandardCopyOption.REPLACE_EXISTING);
    }
    Path target = folder.resolve(command.target);
    if (command.before.isEmpty()) {
      Files.deleteIfExists(target);
    } else {
      Files.writeString(target, command.before);
    }
    return bytes(target);
  }

  private static byte[] bytes(Path file) throws IOException {
    return Files.exists(file) ? Files.readAllBytes(file) : new byte[0];
  }

  private Process start(Killed command) throws IOException {
    List<String> line = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1", "-jar", Path.of("target", "wattle", "wattle.jar").toAbsolutePath().toString()));
    line.addAll(command.arguments);
    return new ProcessBuilder(line).directory(folder.toFile()).redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }

  private List<Path> leftovers() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(f -> f.getFileName().toString().endsWith(".part")).toList();
    }
  }
}
