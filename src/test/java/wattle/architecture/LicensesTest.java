package wattle.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The build puts a license beside the jar for each library that it bundles, or ends. */
class LicensesTest {
  private static final Path LIST = Path.of("licenses/jars.txt");

  @TempDir
  Path folder;

  private static List<Path> jars() {
    return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator)).filter(j -> j.endsWith(".jar")).map(Path::of)
        .toList();
  }

  private static String name(Path jar) {
    return jar.getFileName().toString().replaceFirst("-[0-9][^/]*\\.jar$", "");
  }

  private String copied(List<Path> jars) throws IOException, InterruptedException {
    Path lib = Files.createDirectories(folder.resolve("lib"));
    for (Path jar : jars) {
      Files.copy(jar, lib.resolve(jar.getFileName()));
    }
    Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "src/build/java/CopyLicenses.java", lib.toString(), "licenses", "LICENSE", folder.resolve("licenses").toString())
        .redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return process.waitFor() == 0 ? "" : said;
  }

  @Test
  void eachLibraryHasItsLicenseBesideIt() throws IOException, InterruptedException {
    List<String> stated = new ArrayList<>();
    for (String line : Files.readAllLines(LIST)) {
      stated.add(line.split("\\|")[0].strip());
    }
    List<Path> jars = jars().stream().filter(j -> stated.contains(name(j)) || name(j).matches("jackson-core|jsvg|pdfbox")).toList();
    assertThat(jars).extracting(LicensesTest::name).containsAll(stated);
    assertThat(copied(jars)).isEmpty();
    for (String line : Files.readAllLines(LIST)) {
      String[] cells = line.split("\\|");
      assertThat(cells[2].strip()).startsWith("Copyright ");
      assertThat(textsBeside(cells[0].strip())).as(cells[0]).contains(cells[2].strip());
    }
    assertThat(Files.readString(folder.resolve("licenses/slf4j-api/MIT.txt"))).contains("QOS.ch", "Permission is hereby granted");
    assertThat(Files.readString(folder.resolve("licenses/antlr4-runtime/BSD-3-Clause.txt"))).contains("The ANTLR Project",
        "Redistribution");
    assertThat(Files.readString(folder.resolve("licenses/jackson-core/LICENSE"))).contains("Apache License");
    assertThat(Files.readString(folder.resolve("licenses/picocli/Apache-2.0.txt"))).contains("Apache License");
  }

  private String textsBeside(String library) throws IOException {
    StringBuilder texts = new StringBuilder();
    try (Stream<Path> files = Files.list(folder.resolve("licenses").resolve(library))) {
      for (Path file : files.toList()) {
        texts.append(Files.readString(file));
      }
    }
    return texts.toString();
  }

  @Test
  void aLibraryWithoutOneEndsTheBuild() throws IOException, InterruptedException {
    Path none = folder.resolve("unlicensed-1.0.jar");
    try (JarOutputStream jar = new JarOutputStream(Files.newOutputStream(none))) {
      jar.putNextEntry(new JarEntry("Nothing.txt"));
    }
    assertThat(copied(List.of(none))).contains("no license in the jar", "unlicensed");
  }
}
