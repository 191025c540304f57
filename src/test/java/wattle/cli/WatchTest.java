package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** {@code check --watch} as a process of its own: saved files, files that come and go, and an interrupt. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the process is ended by a POSIX signal")
class WatchTest {
  private static final int INTERRUPTED = 130;

  @TempDir
  private Path folder;
  private Process process;
  private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();
  /** What was judged and what was not stands after the line that sums a run up, in as many lines as there is something to say. */
  private static final Pattern CLOSING = Pattern.compile("^(no code is named|rules checked|not known|in doubt|existing work)\\b");
  private final BlockingQueue<String> closing = new LinkedBlockingQueue<>();

  @BeforeEach
  void aPlanOfTwoFiles() throws IOException {
    Files.writeString(folder.resolve("house.wattle"), "use \"rooms.wattle\"\nservice main 120/240 V 100 A { earth rods by 6 Cu }\n");
    Files.writeString(folder.resolve("rooms.wattle"), "room hall { }\n");
  }

  private void start(String... around) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> command = new ArrayList<>(List.of(around));
    command.addAll(
        List.of(
            java, "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), "wattle.cli.Main", "check", "--watch",
            folder.resolve("house.wattle").toString()));
    process = new ProcessBuilder(command).redirectErrorStream(true).start();
    Thread reader = new Thread(() -> {
      try (BufferedReader in = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
        for (String line = in.readLine(); line != null; line = in.readLine()) {
          (CLOSING.matcher(line).find() ? closing : lines).add(line);
        }
      } catch (IOException e) {
        lines.add("closed: " + e.getMessage());
      }
    });
    reader.setDaemon(true);
    reader.start();
  }

  /** Each run but the first is set apart from the one before it. */
  private boolean again;

  @AfterEach
  void end() {
    if (process != null) {
      process.destroyForcibly();
    }
  }

  /** Everything printed up to the line that ends a run. */
  private List<String> run() throws InterruptedException {
    List<String> run = new ArrayList<>();
    if (again) {
      assertThat(lines.poll(60, TimeUnit.SECONDS)).isEmpty();
      assertThat(lines.poll(60, TimeUnit.SECONDS)).isEqualTo("---- read again");
    }
    again = true;
    while (true) {
      String line = lines.poll(60, TimeUnit.SECONDS);
      assertThat(line).as("after %s", run).isNotNull();
      run.add(line);
      if (line.contains("licensed person decide") || line.endsWith("house.wattle: no such file")) {
        return run;
      }
    }
  }

  private void save(String name, String text) throws IOException {
    Path beside = Files.writeString(folder.resolve(name + "~"), text);
    Files.move(beside, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }

  @Test
  void checksAgainOnEachSaveOfAnyFileAndEndsOnInterrupt() throws Exception {
    Interrupts.assumeNotIgnored();
    start();
    assertThat(run()).singleElement().asString().startsWith("nothing found in ");

    save("rooms.wattle", "room hall { lamp: light 12 W }\n");
    List<String> found = run();
    assertThat(found).anyMatch(l -> l.contains("[device-unfed]"));
    assertThat(found.get(found.size() - 1)).startsWith("1 error in ");

    Files.writeString(folder.resolve("rooms.wattle"), "room hall { }\n");
    assertThat(run()).hasSize(1);

    save("house.wattle", "use \"rooms.wattle\"\nuse \"garage.wattle\"\n");
    assertThat(run()).anyMatch(l -> l.contains("[use-unreadable]"));
    Files.writeString(folder.resolve("garage.wattle"), "room garage { }\n");
    assertThat(run()).singleElement().asString().startsWith("nothing found in ");

    Files.delete(folder.resolve("house.wattle"));
    assertThat(run()).singleElement().asString().contains("house.wattle: no such file");
    save("house.wattle", "room hall { }\n");
    assertThat(run()).singleElement().asString().startsWith("nothing found in ");
    assertThat(lines.poll(700, TimeUnit.MILLISECONDS)).as("nothing is printed while nothing changes").isNull();

    assertThat(new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start().waitFor()).isZero();
    assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(INTERRUPTED);
    assertThat(lines).isEmpty();
    assertThat(closing).contains("rules checked at 1 place")
        .anyMatch(l -> l.matches("in doubt at \\d+ places until the errors are fixed"));
    try (var files = Files.list(folder)) {
      assertThat(files).as("nothing is left behind").hasSize(3);
    }
  }

  @Test
  void endsWhenNobodyReads() throws Exception {
    start("sh", "-c", "\"$@\" | head -n 1", "sh");
    run();
    Files.delete(folder.resolve("rooms.wattle"));
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
  }

  /** A file that goes while it is read, or before the findings are printed, is read again, and so is a new one. */
  @Test
  void noChangeIsLostBetweenReadingAndTelling() throws Exception {
    Path house = folder.resolve("house.wattle");
    Path rooms = folder.resolve("rooms.wattle");
    StringWriter printed = new StringWriter();
    List<String> told = new ArrayList<>();
    Thread loop = Thread.currentThread();
    WatchLoop watch = new WatchLoop(new PrintWriter(printed));
    watch.run(
        new WatchLoop.Check() {
          private String seen = "";
          private int reads;

          @Override
          public java.util.Set<Path> read() {
            reads++;
            seen = Files.exists(rooms) ? "both" : "one";
            try {
              if (reads == 2) { // the first reading only finds out which files there are
                Files.delete(rooms);
              }
            } catch (IOException e) {
              throw new java.io.UncheckedIOException(e);
            }
            return java.util.Set.of(house, rooms);
          }

          @Override
          public void tell() {
            told.add(seen);
            if (told.size() == 2) {
              loop.interrupt();
            }
          }
        });
    assertThat(told).containsExactly("both", "one");
  }

  private static String refused(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(out), new PrintWriter(err))).isEqualTo(ExitCode.USAGE);
    assertThat(out.toString()).isEmpty();
    return err.toString();
  }

  @Test
  void whatCannotBeWatchedIsBadUsage() {
    assertThat(refused("check", "--watch", "-")).contains("standard input cannot be watched");
    assertThat(refused("check", "--watch", "--format", "json", "x")).contains("--watch prints text");
    assertThat(refused("check", "--watch", folder.resolve("no").toString())).contains("no such file");
  }
}
