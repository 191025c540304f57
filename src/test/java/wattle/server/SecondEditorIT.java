package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * The packaged server as a process, with a client that shares no code with it: the protocol library of another language.
 * Needs Node and its package manager; skipped where they are not installed.
 */
@DisabledOnOs(OS.WINDOWS)
class SecondEditorIT {
  @TempDir Path folder;

  private record Outcome(int code, String output) {}

  @Test
  void opensBreaksSeesAndMends() throws Exception {
    assumeThat(isInstalled("node") && isInstalled("npm")).as("node and npm are installed").isTrue();
    for (String file : List.of("package.json", "package-lock.json", ".npmrc", "editor.mjs")) {
      Files.copy(Path.of("src/test/editor", file), folder.resolve(file));
    }
    Outcome fetched = run(List.of("npm", "ci", "--no-progress"), folder);
    assertThat(fetched.code).as(fetched.output).isZero();

    List<String> command = new ArrayList<>(List.of("node", "editor.mjs", absolute("examples/alder-court")));
    command.addAll(List.of(absolute(System.getProperty("java.home") + "/bin/java"), "-jar", absolute("target/wattle/wattle.jar"), "language-server"));
    Outcome session = run(command, folder);
    assertThat(session).isEqualTo(new Outcome(0, "opened, broken, found, mended\n"));
  }

  private static String absolute(String path) {
    return Path.of(path).toAbsolutePath().toString();
  }

  private static boolean isInstalled(String program) {
    for (String place : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)) {
      if (Files.isExecutable(Path.of(place, program))) {
        return true;
      }
    }
    return false;
  }

  private static Outcome run(List<String> command, Path in) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(2, TimeUnit.MINUTES)).as("ends: " + output).isTrue();
    return new Outcome(process.exitValue(), output);
  }
}
