package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Every command, in each format that its options name, where its result cannot be written: it ends with 2 and one sentence, and nothing is
 * left of what was begun. A command without a line in {@link EveryCommand} fails.
 */
class OutputErrorsTest {
  private static final String FULL = "No space left on device";
  private static final String GONE = "Broken pipe";
  private static final String PLAN = EveryCommand.PLAN;

  /** Told by what they write alone: a report goes to a folder, and an editor's stream is that of the process ({@code OutputErrorsIT}). */
  private static final Set<String> NOTHING_ON_STANDARD_OUTPUT = Set.of("report", "language-server");

  @TempDir
  Path folder;

  /** What a run ended with, and what it told on standard error. */
  private record Outcome(int code, byte[] out, String err) {}

  /** A stream on a full disk, or to a reader who is gone. */
  private static final class Failing extends OutputStream {
    private final String why;

    Failing(String why) {
      this.why = why;
    }

    @Override
    public void write(int one) throws IOException {
      throw new IOException(why);
    }
  }

  @BeforeEach
  void plans() throws IOException {
    Path kitchen = Path.of("examples", "kitchen-renovation");
    Files.copy(kitchen.resolve("after.wattle"), folder.resolve(PLAN));
    Files.copy(kitchen.resolve("before.wattle"), folder.resolve("before.wattle"));
    Files.copy(Path.of("examples", "broken", "unit-missing.wattle"), folder.resolve("unit.wattle"));
  }

  @Test
  void everyCommandHasALine() {
    assertThat(EveryCommand.LINES.keySet()).containsExactlyElementsOf(new TreeSet<>(EveryCommand.names().toList()));
  }

  @ParameterizedTest
  @MethodSource("wattle.cli.EveryCommand#names")
  void aFullDiskBehindStandardOutputIsTold(String command) throws IOException {
    int told = 0;
    for (List<String> line : onStandardOutput(command)) {
      if (!command.equals("live")) {
        Outcome good = run(line, new ByteArrayOutputStream());
        assertThat(good.code).as("%s: %s", line, good.err).isLessThan(ExitCode.BUG);
        if (good.code == ExitCode.USAGE) {
          assertThat(good.err).as("%s", line).matches("(?s)wattle: .*(written as|goes to a file|goes with|is no graph).*\n");
          continue;
        }
        assertThat(good.out).as("%s", line).isNotEmpty();
      }
      Outcome full = run(line, new Failing(FULL));
      assertThat(full.code).as("%s", line).isEqualTo(ExitCode.USAGE);
      assertThat(full.err.lines().filter(l -> l.contains("cannot write")).toList()).as("%s", line)
          .containsExactly("wattle: cannot write all of the result to standard output: " + FULL);
      assertThat(full.err).doesNotContain("Exception", "internal error", "\tat ");
      Outcome gone = run(line, new Failing(GONE));
      assertThat(gone.code).as("%s", line).isEqualTo(ExitCode.USAGE);
      assertThat(gone.err).as("%s", line).doesNotContain("cannot write", GONE, "Exception");
      told++;
    }
    assertThat(told > 0).isNotEqualTo(NOTHING_ON_STANDARD_OUTPUT.contains(command));
    assertThat(names()).containsExactlyInAnyOrder(PLAN, "before.wattle", "unit.wattle");
  }

  @ParameterizedTest
  @MethodSource("wattle.cli.EveryCommand#names")
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "the full device is one of POSIX")
  void aFileThatCannotBeWrittenIsTold(String command) throws IOException {
    if (EveryCommand.option(command, "--out") == null) {
      assertThat(command).isIn("check", "tidy", "mend", "live", "language-server", "size");
      return;
    }
    boolean toFolder = command.equals("report");
    Files.createDirectory(folder.resolve("folder.txt"));
    Files.writeString(folder.resolve("file"), "mine");
    List<String> endings = toFolder ? List.of("") : EveryCommand.endings(command);
    int written = 0;
    for (String ending : endings) {
      String good = "good" + ending;
      Outcome fine = run(with(command, good), new ByteArrayOutputStream());
      assertThat(fine.code).as("%s %s", command, fine.err).isLessThan(ExitCode.BUG);
      if (fine.code == ExitCode.USAGE) {
        assertThat(fine.err).as("%s %s", command, ending).matches("(?s)wattle: .*(written as|does not show a format|is no graph).*\n");
        assertThat(folder.resolve(good)).doesNotExist();
        continue;
      }
      assertThat(folder.resolve(good)).exists();
      written++;
      List<String> refused = new ArrayList<>(List.of("nowhere/below/x" + ending, "file/x" + ending, "n".repeat(300) + ending));
      if (!toFolder) {
        Files.createDirectory(folder.resolve("folder" + written + ending));
        refused.add("folder" + written + ending);
        Files.createSymbolicLink(folder.resolve("full" + ending), Path.of("/dev/full"));
        refused.add("full" + ending);
      } else {
        refused.set(0, "file");
      }
      for (String name : written == 1 ? refused : List.of("full" + ending)) {
        Set<String> before = names();
        Outcome outcome = run(with(command, name), new ByteArrayOutputStream());
        assertThat(outcome.code).as("%s %s: %s", command, name, outcome.err).isEqualTo(ExitCode.USAGE);
        assertThat(outcome.err.lines().filter(l -> l.contains("cannot write ") || l.contains("cannot make the folder")).toList())
            .as("%s %s: %s", command, name, outcome.err).hasSize(1);
        assertThat(outcome.err).contains(folder.resolve(name).toString()).doesNotContain("Exception", "internal error", "\tat ");
        assertThat(outcome.out).isEmpty();
        assertThat(names()).isEqualTo(before);
      }
      Files.deleteIfExists(folder.resolve("full" + ending)); // JUnit would tell of a link that leads out of its folder
    }
    assertThat(written).isPositive();
    assertThat(folder.resolve("file")).hasContent("mine");
  }

  /** The line of a command, and the same in each format that its model names. */
  private static List<List<String>> onStandardOutput(String command) {
    if (NOTHING_ON_STANDARD_OUTPUT.contains(command)) {
      return List.of();
    }
    List<List<String>> lines = new ArrayList<>();
    List<String> line = new ArrayList<>(EveryCommand.LINES.get(command));
    if (command.equals("begin")) {
      line.add("-");
    }
    lines.add(line);
    if (command.equals("explain")) {
      line = List.of("explain", PLAN, "--figures"); // a format is for figures alone
      lines.add(List.of("explain"));
    }
    if (command.equals("table")) {
      for (String of : EveryCommand.option(command, "--of").completionCandidates()) {
        lines.add(List.of("table", "--of", of, PLAN));
      }
    }
    OptionSpec format = EveryCommand.option(command, "--format");
    if (format != null) {
      for (String word : format.completionCandidates()) {
        List<String> inFormat = new ArrayList<>(line);
        inFormat.addAll(List.of("--format", word.toLowerCase(Locale.ROOT)));
        lines.add(inFormat);
      }
    }
    lines.add(List.of(command, "--help"));
    return lines;
  }

  private List<String> with(String command, String file) {
    List<String> line = new ArrayList<>(EveryCommand.LINES.get(command));
    line.addAll(List.of("--out", folder.resolve(file).toString()));
    return line;
  }

  private Outcome run(List<String> line, OutputStream out) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    InputStream usual = System.in;
    System.setIn(new ByteArrayInputStream("plan \"p\"\n".getBytes(StandardCharsets.UTF_8)));
    try {
      String[] arguments = line.stream().map(a -> a.endsWith(".wattle") && !a.startsWith("/") ? folder.resolve(a).toString() : a)
          .toArray(String[]::new);
      int code = Main.run(arguments, out, err);
      byte[] printed = out instanceof ByteArrayOutputStream bytes ? bytes.toByteArray() : new byte[0];
      return new Outcome(code, printed, err.toString(StandardCharsets.UTF_8));
    } finally {
      System.setIn(usual);
    }
  }

  private Set<String> names() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return new TreeSet<>(all.filter(f -> !f.equals(folder)).map(f -> folder.relativize(f).toString()).toList());
    }
  }
}
