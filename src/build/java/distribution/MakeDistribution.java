package distribution;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Locale;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/**
 * Makes everything that is handed out from what the build made in {@code target/wattle}: a zip, a Debian package, an image with its own
 * Java runtime, the library for other programs, the bill of materials, and the SHA-256 of each. The same commit and the same JDK give the
 * same bytes.
 *
 * <p>Arguments: folder of the project, version, time for all files, commit, class path of the library, folder to write to.
 */
public final class MakeDistribution {
  private static final String COMMIT = "META-INF/wattle.commit";

  private MakeDistribution() {}

  public static void main(String[] arguments) throws Exception {
    Path home = Path.of(arguments[0]);
    String version = arguments[1];
    Instant time = Instant.parse(arguments[2]);
    String commit = arguments[3];
    Path built = home.resolve("target/wattle");
    Path out = Files.createDirectories(Path.of(arguments[5]));
    try (Stream<Path> earlier = Files.list(out)) {
      for (Path file : earlier.filter(Files::isRegularFile).toList()) {
        Files.delete(file);
      }
    }
    Path jar = home.resolve("target/wattle-" + version + ".jar");
    Archives.jar(classes(built.resolve("wattle.jar"), commit), time, jar);

    String name = "wattle-" + version;
    Tree program = program(home, built, jar);
    Archives.zip(new Tree().addAll(name, program), time, out.resolve(name + ".zip"));
    DebianPackage.write(program, home, built, version, time, out.resolve("wattle_" + version + "_all.deb"));
    image(program, name, jar, built.resolve("lib"), home.resolve("target/runtime"), time, out);
    library(home, version, jar, arguments[4], time, out);
    Files.copy(built.resolve("bill-of-materials.json"), out.resolve(name + ".cdx.json"));
    sums(out);
  }

  /** The classes that were tested, and the commit that they are of. */
  private static Tree classes(Path jar, String commit) throws IOException {
    Tree classes = new Tree();
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : file.stream().filter(e -> !e.isDirectory()).toList()) {
        classes.add(entry.getName(), file.getInputStream(entry).readAllBytes(), false);
      }
    }
    return classes.text(COMMIT, commit + "\n");
  }

  /** The program as it lies on a disk: the launchers find its jars in lib/wattle. */
  private static Tree program(Path home, Path built, Path jar) throws IOException {
    Tree program = new Tree();
    program.add("bin/wattle", Files.readAllBytes(home.resolve("bin/wattle")), true);
    program.add("bin/wattle.cmd", Files.readAllBytes(home.resolve("bin/wattle.cmd")), false);
    program.add("lib/wattle/wattle.jar", Files.readAllBytes(jar), false);
    new Tree().addAll("lib", built.resolve("lib")).entries()
        .forEach((name, entry) -> program.add("lib/wattle/" + name, entry.bytes(), false));
    program.addAll("examples/alder-court", home.resolve("examples/alder-court"));
    program.addAll("examples/broken/ten-mistakes.wattle", home.resolve("examples/broken/ten-mistakes.wattle"));
    program.addAll("LICENSE", home.resolve("LICENSE")).addAll("NOTICE", home.resolve("NOTICE"));
    program.addAll("licenses", built.resolve("licenses"));
    return program.addAll("man", built.resolve("man")).addAll("completion", built.resolve("completion"));
  }

  private static void image(Tree program, String name, Path jar, Path lib, Path runtime, Instant time, Path out)
      throws IOException, InterruptedException {
    JavaTools.runtime(jar, lib, runtime);
    Tree image = new Tree().addAll(name, program).addAll(name + "/runtime", runtime);
    String machine = System.getProperty("os.name").toLowerCase(Locale.ROOT).replaceAll("[^a-z].*", "") + "-"
        + System.getProperty("os.arch");
    if (machine.startsWith("windows")) {
      Archives.zip(image, time, out.resolve(name + "-" + machine + ".zip"));
    } else {
      Files.write(out.resolve(name + "-" + machine + ".tar.gz"), Archives.tarGz(image, "", time));
    }
  }

  private static void library(Path home, String version, Path jar, String classPath, Instant time, Path out)
      throws IOException, InterruptedException {
    String name = "wattle-" + version;
    Files.copy(jar, out.resolve(name + ".jar"));
    Path generated = home.resolve("target/generated-sources/grammar");
    Tree sources = new Tree();
    for (Path root : new Path[]{home.resolve("src/main/java"), generated}) {
      new Tree().addAll("s", root).entries().forEach((path, entry) -> {
        if (path.endsWith(".java")) {
          sources.add(path.substring(2), entry.bytes(), false);
        }
      });
    }
    String manifest = "Manifest-Version: 1.0\r\n\r\n";
    Archives.jar(sources.text("META-INF/MANIFEST.MF", manifest).addAll("META-INF/LICENSE", home.resolve("LICENSE")), time,
        out.resolve(name + "-sources.jar"));
    Path pages = home.resolve("target/pages");
    JavaTools.pages(home.resolve("src/main/java"), generated, classPath, version, pages);
    Tree javadoc = new Tree();
    new Tree().addAll("s", pages).entries().forEach((path, entry) -> javadoc.add(path.substring(2), entry.bytes(), false));
    Archives.jar(javadoc.text("META-INF/MANIFEST.MF", manifest), time, out.resolve(name + "-javadoc.jar"));
    Files.copy(home.resolve("pom.xml"), out.resolve(name + ".pom"));
  }

  private static void sums(Path out) throws IOException {
    StringBuilder sums = new StringBuilder();
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        sums.append(HexFormat.of().formatHex(DebianPackage.digest("SHA-256", Files.readAllBytes(file)))).append("  ")
            .append(file.getFileName()).append('\n');
      }
    }
    Files.writeString(out.resolve("SHA256SUMS"), sums);
  }
}
