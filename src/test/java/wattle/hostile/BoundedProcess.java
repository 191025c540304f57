package wattle.hostile;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Runs a command in a Java machine of its own with little memory. */
final class BoundedProcess {
  private BoundedProcess() {}

  /**
   * What a command said.
   *
   * @param code of its exit
   * @param text of both its streams
   */
  record Outcome(int code, String text) {}

  /** @param heap as Java takes it, such as -Xmx64m */
  static Outcome run(Path folder, String heap, List<String> arguments) throws Exception {
    Path said = folder.resolve("said");
    Process process = builder(folder, heap, arguments).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    process.getOutputStream().close();
    return new Outcome(process.waitFor(), Files.readString(said));
  }

  /** A command that is talked to; what it says of itself goes to a file. */
  static Process begin(Path folder, String heap, String... arguments) throws IOException {
    return builder(folder, heap, List.of(arguments)).redirectError(folder.resolve("said").toFile()).start();
  }

  private static ProcessBuilder builder(Path folder, String heap, List<String> arguments) {
    List<String> line = Stream.concat(
        Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), heap, "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC", "-cp", Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(p -> Path.of(p).toAbsolutePath().toString()).collect(Collectors.joining(File.pathSeparator)),
            "wattle.cli.Main"),
        arguments.stream()).toList();
    return new ProcessBuilder(line).directory(folder.toFile());
  }
}
