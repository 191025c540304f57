package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Two runs that write the same file, and somebody's save while a plan is revised: {@code -Dsaves=200} of them where somebody asks. A file
 * is always whole, nothing that was told to be written is lost, and no other files are left.
 */
class RacingWritersTest {
  private static final int SAVES = Integer.getInteger("saves", 8);
  private static final Path KITCHEN = Path.of("examples", "kitchen-renovation");
  private static ExecutorService threads;

  @TempDir
  Path folder;

  /** What a run ended with, and what it told. */
  private record Outcome(int code, String err) {}

  @BeforeAll
  static void begin() {
    threads = Executors.newCachedThreadPool();
  }

  @AfterAll
  static void end() {
    threads.shutdownNow();
  }

  @ParameterizedTest
  @MethodSource("wattle.cli.EveryCommand#names")
  void twoRunsThatWriteOneFileLeaveItWhole(String command) throws Exception {
    if (EveryCommand.option(command, "--out") == null) {
      return; // those that revise a plan are below; the others write no file
    }
    String ending = command.equals("report") ? "" : EveryCommand.endings(command).get(0);
    Files.copy(KITCHEN.resolve("before.wattle"), folder.resolve("before.wattle"));
    byte[] first = alone(command, "after.wattle", ending);
    byte[] second = alone(command, "before.wattle", ending);
    if (command.equals("begin")) {
      assertThat(first).isNotEqualTo(second);
    }
    Path out = folder.resolve("out" + ending);
    for (int i = 0; i < 2; i++) {
      List<CompletableFuture<Outcome>> runs = new ArrayList<>();
      AtomicBoolean done = new AtomicBoolean();
      CompletableFuture<Integer> seen = CompletableFuture
          .supplyAsync(() -> lookAt(command.equals("report") ? out.resolve("report.html") : out, done, first, second), threads);
      for (String plan : List.of("after.wattle", "before.wattle")) {
        List<String> line = line(command, plan, out);
        runs.add(CompletableFuture.supplyAsync(() -> run(line), threads));
      }
      int written = 0;
      for (CompletableFuture<Outcome> run : runs) {
        Outcome outcome = run.get();
        assertThat(outcome.code).as("%s: %s", command, outcome.err).isLessThan(ExitCode.BUG);
        if (outcome.code == ExitCode.USAGE) {
          assertThat(outcome.err).containsAnyOf("it was changed in the meantime; choose another name", "it exists");
        } else {
          written++;
        }
      }
      done.set(true);
      assertThat(seen.get()).as("contents that are none of the two").isZero();
      assertThat(Files.readAllBytes(resultIn(out))).isIn(first, second);
      assertThat(written).as(command).isEqualTo(command.equals("begin") ? 1 : 2);
      clear(out);
      assertThat(parts()).isEmpty();
    }
  }

  /** What a command makes of a plan with nobody beside it. */
  private byte[] alone(String command, String plan, String ending) throws IOException {
    Path out = folder.resolve("alone" + ending);
    plan(plan);
    Outcome outcome = run(line(command, plan, out));
    assertThat(outcome.code).as(outcome.err).isLessThan(ExitCode.USAGE);
    byte[] content = Files.readAllBytes(resultIn(out));
    clear(out);
    return content;
  }

  /** The line of a command for a plan: both plans have the same name, as two revisions of it in two folders have. */
  private List<String> line(String command, String plan, Path out) {
    List<String> line = new ArrayList<>();
    for (String word : EveryCommand.LINES.get(command)) {
      line.add(word.equals(EveryCommand.PLAN)
          ? folder.resolve(plan.replace(".wattle", "")).resolve(word).toString()
          : word.endsWith(".wattle") ? folder.resolve(word).toString() : word);
    }
    if (command.equals("begin")) {
      line.set(line.size() - 1, plan.startsWith("a") ? "1" : "2");
    }
    line.addAll(List.of("--out", out.toString()));
    return line;
  }

  private void plan(String name) throws IOException {
    Path into = Files.createDirectories(folder.resolve(name.replace(".wattle", "")));
    Files.copy(KITCHEN.resolve(name), into.resolve(EveryCommand.PLAN), StandardCopyOption.REPLACE_EXISTING);
  }

  private static Path resultIn(Path out) {
    return Files.isDirectory(out) ? out.resolve("report.html") : out;
  }

  private static void clear(Path out) throws IOException {
    Files.delete(resultIn(out));
    Files.deleteIfExists(out);
  }

  /** How often a reader who looks all the while sees something that is neither of the two results. */
  private static int lookAt(Path file, AtomicBoolean done, byte[] first, byte[] second) {
    int others = 0;
    while (!done.get()) {
      try {
        byte[] now = Files.exists(file) ? Files.readAllBytes(file) : first;
        others += Arrays.equals(now, first) || Arrays.equals(now, second) ? 0 : 1;
      } catch (IOException e) {
        others++;
      }
    }
    return others;
  }

  /** Those that change the plan they are given: a new one is to be raced too. */
  @Test
  void theseCommandsRevise() {
    assertThat(EveryCommand.names().filter(c -> c.equals("tidy") || EveryCommand.option(c, "--write") != null))
        .containsExactlyInAnyOrder("tidy", "mend", "balance");
  }

  @ParameterizedTest
  @ValueSource(strings = {"tidy", "mend --write", "balance --write"})
  void aSaveWhileAPlanIsRevisedIsKept(String command) throws Exception {
    Path plan = folder.resolve("p.wattle");
    String text = Files.readString(KITCHEN.resolve("before.wattle")).replace("1    15 A", "1    15").replace("  ", "      ");
    if (command.startsWith("balance")) {
      text = Files.readString(KITCHEN.resolve("before.wattle"));
    }
    List<String> line = new ArrayList<>(List.of(command.split(" ")));
    line.add(plan.toString());
    Files.writeString(plan, text);
    long begun = System.nanoTime();
    run(line);
    long took = System.nanoTime() - begun;
    assertThat(Files.readString(plan)).isNotEqualTo(text);

    Random random = new Random(11);
    int kept = 0;
    for (int i = 0; i < SAVES; i++) {
      Files.writeString(plan, text);
      CompletableFuture<Outcome> run = CompletableFuture.supplyAsync(() -> run(line), threads);
      Thread.sleep((long) (took / 1e6 * random.nextDouble() * 1.3));
      // A save by renaming in the very moment of ours cannot be seen, and tidying takes but a few of those: OutputFilesTest has that.
      save(plan, text + "// saved " + i + "\n", command.equals("tidy") || i % 2 == 0);
      Outcome outcome = run.get();
      assertThat(outcome.code).as(outcome.err).isLessThan(ExitCode.BUG);
      assertThat(Files.readString(plan)).as("%s, save %s: %s", command, i, outcome.err).contains("// saved " + i);
      kept += outcome.err.contains("it was changed in the meantime; run") ? 1 : 0;
      assertThat(parts()).isEmpty();
    }
    System.out.println(command + ": " + SAVES + " saves, " + kept + " before a revision could take its place");
  }

  /** As editors save: into the file itself, or a file beside it that gets its name. */
  private void save(Path plan, String text, boolean inPlace) throws IOException {
    if (inPlace) {
      Files.writeString(plan, text);
    } else {
      Path beside = Files.writeString(folder.resolve("p.wattle~"), text);
      Files.move(beside, plan, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  @Test
  void twoCommandsThatReviseOnePlanLoseNothingOfEachOther() throws Exception {
    Path plan = folder.resolve("p.wattle");
    String text = Files.readString(KITCHEN.resolve("before.wattle"));
    String untidy = text.replace("1    15 A", "1    15").replace("  ", "      ");
    int told = 0;
    for (int i = 0; i < SAVES; i++) {
      Files.writeString(plan, untidy);
      CompletableFuture<Outcome> mend = CompletableFuture.supplyAsync(() -> run(List.of("mend", "--write", plan.toString())), threads);
      CompletableFuture<Outcome> tidy = CompletableFuture.supplyAsync(() -> run(List.of("tidy", plan.toString())), threads);
      Outcome tidied = tidy.get();
      Outcome mended = mend.get();
      told += (tidied.err.contains("set in order") ? 1 : 0) + (mended.err.contains("1 mended") ? 1 : 0);
      String now = Files.readString(plan);
      if (tidied.err.contains("set in order")) {
        assertThat(now).as(mended.err).doesNotContain("      slots");
      }
      if (mended.err.contains("1 mended")) {
        assertThat(now).as(tidied.err).containsPattern("15 A\\s+kitchen");
      }
      assertThat(parts()).isEmpty();
    }
    assertThat(told).isGreaterThanOrEqualTo(SAVES);
  }

  private static Outcome run(List<String> line) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = Main.run(line.toArray(String[]::new), new ByteArrayOutputStream(), err);
    return new Outcome(code, err.toString(StandardCharsets.UTF_8));
  }

  private List<String> parts() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.map(f -> f.getFileName().toString()).filter(n -> n.startsWith(".wattle") || n.endsWith("~")).toList();
    }
  }
}
