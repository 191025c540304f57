package distribution;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Programs of the JDK that builds: which modules are needed, a Java runtime of those, and pages of the library. */
final class JavaTools {
  private static final Path BIN = Path.of(System.getProperty("java.home"), "bin");
  /** Reached by name alone, so that it is not seen in the classes. */
  private static final List<String> UNSEEN = List.of("jdk.unsupported");

  private JavaTools() {}

  /** Makes a Java runtime with what the jars need and nothing else. */
  static void runtime(Path jar, Path lib, Path to) throws IOException, InterruptedException {
    delete(to);
    List<String> needed = new ArrayList<>(List.of(BIN.resolve("jdeps").toString(), "--multi-release", "17", "--ignore-missing-deps",
        "--print-module-deps", jar.toString()));
    try (Stream<Path> jars = Files.list(lib)) {
      jars.map(Path::toString).sorted().forEach(needed::add);
    }
    Set<String> modules = new TreeSet<>(UNSEEN);
    // Whatever it warns of stands before.
    String said = run(needed).strip();
    modules.addAll(List.of(said.substring(said.lastIndexOf('\n') + 1).split(",")));
    run(List.of(BIN.resolve("jlink").toString(), "--add-modules", String.join(",", modules), "--strip-debug", "--no-header-files",
        "--no-man-pages", "--compress=2", "--output", to.toString()));
  }

  /** Pages of public classes. */
  static void pages(Path sources, Path generated, String classPath, String version, Path to) throws IOException, InterruptedException {
    delete(to);
    run(List.of(BIN.resolve("javadoc").toString(), "-quiet", "-notimestamp", "-Xdoclint:none", "-encoding", "UTF-8", "-charset", "UTF-8",
        "-locale", "en", "--release", "17", "-windowtitle", "Wattle " + version, "-d", to.toString(), "-classpath", classPath,
        "-sourcepath", sources + File.pathSeparator + generated, "-subpackages", "wattle", "-exclude",
        "wattle.syntax.grammar:wattle.cli:wattle.server:wattle.live"));
  }

  private static String run(List<String> command) throws IOException, InterruptedException {
    Path said = Files.createTempFile("said", ".txt");
    Path problems = Files.createTempFile("problems", ".txt");
    try {
      int code = new ProcessBuilder(command).redirectOutput(said.toFile()).redirectError(problems.toFile()).start().waitFor();
      if (code != 0) {
        throw new IOException(String.join(" ", command) + " ended with " + code + ":\n" + Files.readString(said, StandardCharsets.UTF_8)
            + Files.readString(problems, StandardCharsets.UTF_8));
      }
      return Files.readString(said, StandardCharsets.UTF_8);
    } finally {
      Files.delete(said);
      Files.delete(problems);
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }
}
