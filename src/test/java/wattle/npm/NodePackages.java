package wattle.npm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Packages of Node for tests, at the versions that a lock file beside the tests names. */
public final class NodePackages {
  private NodePackages() {}

  /** What a process ended with, and all that it said. */
  public record Outcome(int code, String output) {}

  /** Whether Node and its package manager are on the path. */
  public static boolean canBeFetched() {
    return isInstalled("node") && isInstalled("npm");
  }

  /**
   * Fetches what the lock file in a folder names.
   *
   * @param into where {@code node_modules} comes to lie
   */
  public static void fetch(Path description, Path into) throws IOException, InterruptedException {
    for (String file : List.of("package.json", "package-lock.json", ".npmrc")) {
      Files.copy(description.resolve(file), into.resolve(file));
    }
    Outcome fetched = run(List.of("npm", "ci", "--no-progress", "--prefer-offline"), into);
    assertThat(fetched.code).as(fetched.output).isZero();
  }

  /** Runs a command to its end. */
  public static Outcome run(List<String> command, Path in) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).directory(in.toFile()).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(2, TimeUnit.MINUTES)).as("ends: " + output).isTrue();
    return new Outcome(process.exitValue(), output);
  }

  private static boolean isInstalled(String program) {
    for (String place : System.getenv().getOrDefault("PATH", "").split(File.pathSeparator)) {
      if (Files.isExecutable(Path.of(place, program))) {
        return true;
      }
    }
    return false;
  }
}
