package wattle.editor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code editors/} has for each editor, in that editor without a screen; skipped with a message where it is not installed. */
class EditorsTest {
  private static final Path EDITORS = Path.of("editors").toAbsolutePath();
  private static final Path SESSIONS = Path.of("src/test/editor").toAbsolutePath();

  @TempDir
  private Path folder;

  /** The program as an editor starts it. */
  private static List<String> wattle() {
    String classPath = Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
        .map(p -> Path.of(p).toAbsolutePath().toString()).collect(Collectors.joining(File.pathSeparator));
    return List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-cp", classPath,
        "wattle.cli.Main");
  }

  private static void assumeInstalled(String program) {
    assumeTrue(Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .anyMatch(f -> Files.isExecutable(Path.of(f, program))), program + " is not installed");
  }

  private String run(Map<String, String> with, List<String> command) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true);
    builder.environment().putAll(with);
    // Nothing of the person who runs the tests: neither their settings nor what an editor remembers.
    builder.environment().putAll(Map.of("HOME", folder.toString(), "XDG_CONFIG_HOME", folder.resolve("config").toString(),
        "XDG_DATA_HOME", folder.resolve("data").toString(), "XDG_STATE_HOME", folder.resolve("state").toString(),
        "XDG_CACHE_HOME", folder.resolve("cache").toString()));
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(3, TimeUnit.MINUTES)).as(said).isTrue();
    assertThat(process.exitValue()).as(said).isZero();
    return said;
  }

  private Path example(String of) throws IOException {
    return Files.copy(Path.of("examples", of), folder.resolve("house.wattle"));
  }

  private static String quoted(String word) {
    return '"' + word.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  /** The extension under a stub of its host: the real one cannot be had from the registry of Node. */
  @Test
  void theExtensionUnderAStubOfItsHost() throws Exception {
    assumeInstalled("node");
    String command = wattle().stream().map(EditorsTest::quoted).collect(Collectors.joining(",", "[", "]"));
    String said = run(Map.of("WATTLE", command),
        List.of("node", "--test", EDITORS.resolve("vscode/test").toString() + "/extension.test.js"));
    assertThat(said).contains("# fail 0", "# skipped 0").doesNotContain("# pass 0");
  }

  @Test
  void neovimShowsFindings() throws Exception {
    assumeInstalled("nvim");
    Path plan = example("broken/unit-missing.wattle");
    String command = wattle().stream().map(EditorsTest::quoted).collect(Collectors.joining(", ", "{ ", " }"));
    String said = run(Map.of(), List.of("nvim", "--headless", "--clean", "--cmd", "set rtp^=" + EDITORS.resolve("neovim"), "--cmd",
        "lua vim.g.wattle_command = " + command, plan.toString(), "-c", "luafile " + SESSIONS.resolve("neovim/session.lua")));
    assertThat(said).contains("a breaker rating needs a unit", "quickfix 1", "lockout ", "done");
    assertThat(said.replaceFirst("(?s).*lockout ", "")).containsIgnoringCase("hall");
  }

  @Test
  void emacsKnowsPlansAndItsServerAnswers() throws Exception {
    assumeInstalled("emacs");
    Path plan = example("cottage/house.wattle");
    List<String> command = new ArrayList<>(List.of("emacs", "-q", "--batch", "-l", SESSIONS.resolve("emacs/session.el").toString(),
        EDITORS.resolve("emacs/wattle-mode.el").toString(), plan.toString()));
    command.addAll(wattle());
    String said = run(Map.of(), command);
    assertThat(said).contains("indent 2", "checked\n").doesNotContain("not checked");
    assumeTrue(!said.contains("no eglot"), "this Emacs has no eglot");
    assertThat(said).containsPattern("symbols [1-9]");
  }
}
