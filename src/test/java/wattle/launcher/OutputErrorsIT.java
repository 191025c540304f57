package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code OutputErrorsTest} does within a process, with streams, limits and rights of real ones. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "shells, limits and rights are those of POSIX")
class OutputErrorsIT {
  private static final Path NOBODY_BECOMES = Path.of("/usr/bin/setpriv");

  @TempDir
  Path folder;

  private record Outcome(int code, String out, String err) {}

  @BeforeEach
  void plan() throws IOException {
    Files.copy(Path.of("examples", "kitchen-renovation", "after.wattle"), folder.resolve("plan.wattle"));
    Files.copy(Path.of("examples", "kitchen-renovation", "before.wattle"), folder.resolve("uneven.wattle"));
    Files.writeString(folder.resolve("untidy.wattle"),
        Files.readString(folder.resolve("plan.wattle")).replace("  ", "      ") + "// a note\n".repeat(500));
    String request = "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}";
    Files.writeString(folder.resolve("request"), "Content-Length: " + request.length() + "\r\n\r\n" + request);
  }

  @ParameterizedTest
  @ValueSource(strings = {"check plan.wattle", "draw --view panel plan.wattle",
      "live plan.wattle", "check --watch plan.wattle"})
  void aFullDiskAndAClosedStreamEndWithTwo(String command) throws Exception {
    assertThat(shell("wattle " + command + " > /dev/full"))
        .matches(o -> o.code == 2 && o.err.contains("cannot write all of the result to standard output: No space left on device"), command);
    Outcome closed = shell("wattle " + command + " >&-");
    assertThat(closed.code).as(closed.err).isEqualTo(2);
    assertThat(closed.err).contains("cannot write all of the result to standard output").doesNotContain("Exception", "\tat ");
  }

  @Test
  void anEditorWhoseStreamIsFullIsLeft() throws Exception {
    // The input stays open behind the request, so that only the failure can end it.
    Outcome outcome = shell("(cat request; sleep 60) | { wattle language-server > /dev/full; echo $? > code; kill $$; }");
    assertThat(outcome.err).contains("cannot write all of the result to standard output: No space left on device");
    assertThat(folder.resolve("code")).hasContent("2\n");
  }

  @Test
  void aReaderThatGoesAwayIsNoFailure() throws Exception {
    for (String command : List.of("export plan.wattle", "check . --format json")) {
      Outcome outcome = shell("{ wattle " + command + "; echo $? > code; } | head -c 1");
      assertThat(outcome.out).as(command).hasSize(1);
      assertThat(outcome.err).as(command).doesNotContain("cannot write", "Exception", "Broken");
      assertThat(Files.readString(folder.resolve("code")).strip()).as(command).isIn("2", "1", "0");
    }
    assertThat(shell("wattle explain --words | head -n 1").code).isZero();
  }

  /** A limit on the size of files is what a full disk is to a file system: writing stops in the middle. */
  @ParameterizedTest
  @ValueSource(strings = {"draw --view panel --out panel.svg plan.wattle", "report plan.wattle --out .", "tidy untidy.wattle"})
  void aFileThatGrowsTooLargeIsNotBegun(String command) throws Exception {
    List<String> before = contents();
    Outcome outcome = shell("trap '' XFSZ; ulimit -f 1; wattle " + command + " | cat");
    assertThat(outcome.err).contains("cannot write ").doesNotContain("Exception", "internal error", "\tat ");
    assertThat(contents()).isEqualTo(before);
  }

  static boolean canBeNobody() {
    return "root".equals(System.getProperty("user.name")) && Files.isExecutable(NOBODY_BECOMES);
  }

  @ParameterizedTest
  @ValueSource(strings = {"report plan.wattle --out new", "tidy untidy.wattle"})
  @EnabledIf(value = "canBeNobody", disabledReason = "OutputFilesTest does it for who is not root")
  void aFolderOfSomebodyElseIsLeftAlone(String command) throws Exception {
    Path program = folder.resolve("program");
    copy(Path.of("target", "wattle"), program);
    List<String> before = contents();
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
    Outcome outcome = run("sh", "-c", NOBODY_BECOMES + " --reuid=65534 --regid=65534 --clear-groups " + java() + " -jar "
        + program.resolve("wattle.jar") + " " + command);
    assertThat(outcome.code).as(outcome.err).isEqualTo(2);
    assertThat(outcome.err).contains("cannot ").doesNotContain("Exception", "internal error", "\tat ");
    assertThat(contents()).isEqualTo(before);
  }

  private Outcome shell(String script) throws Exception {
    String jar = Path.of("target", "wattle", "wattle.jar").toAbsolutePath().toString();
    return run("sh", "-c", "wattle() { '" + java() + "' -XX:TieredStopAtLevel=1 -jar '" + jar + "' \"$@\"; }; " + script);
  }

  private Outcome run(String... command) throws Exception {
    Path out = Files.createTempFile("out", "");
    Path err = Files.createTempFile("err", "");
    try {
      Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectOutput(out.toFile()).redirectError(err.toFile())
          .start();
      process.getOutputStream().close();
      assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
      return new Outcome(process.exitValue(), Files.readString(out), Files.readString(err));
    } finally {
      Files.delete(out);
      Files.delete(err);
    }
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  /** Each file of the folder with what it holds. */
  private List<String> contents() throws IOException {
    List<String> contents = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.sorted().toList()) {
        contents.add(file + (Files.isRegularFile(file) ? ": " + Files.readString(file, StandardCharsets.ISO_8859_1) : ""));
      }
    }
    return contents;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path source : all.toList()) {
        Files.copy(source, to.resolve(from.relativize(source).toString()));
      }
    }
  }
}
