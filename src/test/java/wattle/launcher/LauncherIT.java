package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import wattle.FileNames;

/** The launcher in a copy of the project of its own, with the real jars; Maven and other Java machines are scripts. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher is a POSIX shell script")
class LauncherIT {
  private static final String JAVA_HOME = System.getProperty("java.home");

  @TempDir
  Path folder;
  private Path home;

  private record Outcome(int code, String out, String err) {}

  @BeforeEach
  void copyTheProject() throws IOException {
    home = folder.resolve("a house, 14 Alder Court");
    copy(Path.of("bin"), home.resolve("bin"));
    copy(Path.of("target/wattle/lib"), home.resolve("target/wattle/lib"));
    Files.copy(Path.of("target/wattle/wattle.jar"), home.resolve("target/wattle/wattle.jar"));
    copy(Path.of("examples/alder-court"), home.resolve("examples/alder-court"));
    // As after a Java machine that could make no archive: making one takes longer than all else here, and one test looks at it.
    Files.writeString(home.resolve("target/wattle/java.seen"), Path.of(JAVA_HOME, "bin", "java").toRealPath() + "\n");
  }

  @Test
  void runsFromAnyFolderThroughLinksAndKeepsAnArchive() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("w"), home.resolve("bin/wattle"));
    Path relative = Files.createSymbolicLink(folder.resolve("w2"), Path.of("w"));
    Files.delete(home.resolve("target/wattle/java.seen"));

    Outcome first = run(link, Map.of(), "--version");
    assertThat(first.out()).startsWith("wattle ").doesNotContain("unpackaged");
    assertThat(first.err()).contains("quick start");
    assertThat(first.code()).isZero();
    assertThat(home.resolve("target/wattle/classes.jsa")).exists();

    Outcome second = run(relative, Map.of(), "--version");
    assertThat(second).isEqualTo(new Outcome(0, first.out(), ""));
  }

  @Test
  void passesArgumentsAndExitCodesOn() throws Exception {
    assertThat(run(Map.of(), "check", home.resolve("examples/alder-court/house.wattle").toString()).code()).isZero();
    assertThat(run(Map.of(), "check", folder.resolve("no such plan").toString()))
        .matches(outcome -> outcome.code() == 2 && outcome.err().contains("no such plan"));
  }

  @Test
  void opensNamesThatAreNotAsciiInTheLocaleC() throws Exception {
    FileNames.assumeCanBe("k\u00FCche.wattle");
    Path plan = Files.writeString(folder.resolve("k\u00FCche.wattle"), "room hall { }\n");
    Outcome outcome = run(Map.of("LC_ALL", "C"), "check", plan.toString());
    assertThat(outcome.code()).as(outcome.err()).isZero();
    assertThat(outcome.out()).contains("k\u00FCche.wattle");
  }

  @Test
  void aClosedStandardInputIsAnEmptyPlan() throws Exception {
    Outcome outcome = run(Path.of("/bin/sh"), Map.of(), "-c", "exec \"$0\" check - <&-", home.resolve("bin/wattle").toString());
    assertThat(outcome.code()).as(outcome.err()).isEqualTo(1);
    assertThat(outcome.out()).contains("[plan-empty]");
  }

  @Test
  void refusesAnOldJava() throws Exception {
    Path old = script(folder.resolve("old/bin/java"), "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");

    Outcome outcome = run(Map.of("JAVA_HOME", old.getParent().getParent().toString()), "--version");
    assertThat(outcome.code()).isEqualTo(2);
    assertThat(outcome.err()).contains("is Java 11.0.2; Wattle needs 17 or later");
  }

  @Test
  void saysWhereItLookedForJava() throws Exception {
    assertThat(run(Map.of("JAVA_HOME", "/nowhere"), "--version").err()).contains("/nowhere/bin/java");

    Path tools = folder.resolve("tools");
    for (String tool : new String[]{"sh", "readlink", "sed", "head", "find"}) {
      Files.createDirectories(tools);
      Files.createSymbolicLink(tools.resolve(tool), which(tool));
    }
    assertThat(run(Map.of("JAVA_HOME", "", "PATH", tools.toString()), "--version").err()).contains("no java to run");
  }

  @Test
  void buildsWhatIsMissingOrOlderThanItsSources() throws Exception {
    Path jar = home.resolve("target/wattle/wattle.jar");
    Path kept = Files.copy(jar, folder.resolve("kept.jar"));
    script(folder.resolve("maven/mvn"), "echo built >>'" + folder.resolve("log") + "'; cp -p '" + kept + "' '" + jar + "'");
    Map<String, String> withMaven = Map.of("PATH", folder.resolve("maven") + File.pathSeparator + System.getenv("PATH"));
    Path source = Files.createDirectories(home.resolve("src/main")).resolve("A.java");
    Files.writeString(home.resolve("pom.xml"), "");
    Files.writeString(source, "");
    Files.delete(jar);

    assertThat(run(withMaven, "--version").code()).isZero();
    assertThat(run(withMaven, "--version").err()).isEmpty();
    assertThat(folder.resolve("log")).hasContent("built\n");

    Files.setLastModifiedTime(source, FileTime.from(Instant.now().plusSeconds(2)));
    assertThat(run(withMaven, "--version").err()).contains("src/main/A.java");
    Files.setLastModifiedTime(source, FileTime.from(Instant.EPOCH));
    assertThat(run(withMaven, "--version").err()).doesNotContain("building");
  }

  @Test
  void aFailedBuildIsNotRun() throws Exception {
    script(folder.resolve("maven/mvn"), "echo 'COMPILATION ERROR'; exit 1");
    Files.delete(home.resolve("target/wattle/wattle.jar"));

    Outcome outcome = run(Map.of("PATH", folder.resolve("maven") + File.pathSeparator + System.getenv("PATH")), "--version");
    assertThat(outcome.code()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).contains("COMPILATION ERROR", "the build failed");
    assertThat(home.resolve("target/building")).doesNotExist();
  }

  /** Whoever adds a library names it in NOTICE with its license. */
  @Test
  void everyLibraryIsNamedInTheNotice() throws Exception {
    String notice = Files.readString(Path.of("NOTICE"));
    try (Stream<Path> jars = Files.list(Path.of("target/wattle/lib"))) {
      assertThat(jars.map(jar -> jar.getFileName().toString().replaceFirst("-\\d.*", "")).distinct())
          .isNotEmpty()
          .allMatch(name -> notice.contains(name) || notice.contains(name.substring(0, name.indexOf('-')) + "-core")
              && notice.contains(name.substring(name.indexOf('-'))));
    }
  }

  private Outcome run(Map<String, String> environment, String... arguments) throws Exception {
    return run(home.resolve("bin/wattle"), environment, arguments);
  }

  private Outcome run(Path launcher, Map<String, String> environment, String... arguments) throws Exception {
    String[] command = Stream.concat(Stream.of(launcher.toString()), Stream.of(arguments)).toArray(String[]::new);
    Path out = Files.createTempFile(folder, "out", "");
    Path err = Files.createTempFile(folder, "err", "");
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile())
        .redirectOutput(out.toFile()).redirectError(err.toFile());
    builder.environment().keySet().removeIf(name -> name.startsWith("MAVEN") || name.equals("JAVA_TOOL_OPTIONS"));
    builder.environment().putAll(new HashMap<>(Map.of("JAVA_HOME", JAVA_HOME)));
    builder.environment().putAll(environment);
    Process process = builder.start();
    process.getOutputStream().close();
    if (!process.waitFor(2, TimeUnit.MINUTES)) {
      process.destroyForcibly();
      throw new AssertionError("the launcher did not end");
    }
    return new Outcome(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  private static Path script(Path file, String body) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, "#!/bin/sh\n" + body + "\n", StandardCharsets.UTF_8);
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private static Path which(String tool) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator)).map(part -> Path.of(part, tool))
        .filter(Files::isExecutable).findFirst().orElseThrow();
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path path : all.toList()) {
        Path target = to.resolve(from.relativize(path).toString());
        if (Files.isDirectory(path)) {
          Files.createDirectories(target);
        } else {
          Files.copy(path, target, StandardCopyOption.COPY_ATTRIBUTES);
        }
      }
    }
  }
}
