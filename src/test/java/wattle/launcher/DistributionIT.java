package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The packages that {@code -Pdistribution} makes, of the jars of this build: their bytes do not change from one time to the next, other
 * programs can read them, and what is in them runs. That two whole builds give the same bytes is for {@code .ci/distribution --twice}.
 */
class DistributionIT {
  private static final Instant TIME = Instant.parse("2026-01-01T00:00:00Z");
  private static final Path BUILT = Path.of("target/wattle");

  @TempDir
  private Path folder;
  private ClassLoader tools;

  @BeforeEach
  void compileTheTools() throws IOException {
    Path classes = Files.createDirectory(folder.resolve("tools"));
    assertThat(ToolProvider.getSystemJavaCompiler().run(null, null, null, "-proc:none", "-sourcepath", "src/build/java", "-d",
        classes.toString(), "src/build/java/distribution/MakeDistribution.java")).isZero();
    tools = new URLClassLoader(new java.net.URL[]{classes.toUri().toURL()});
  }

  private Object call(String type, String method, Object... arguments) throws ReflectiveOperationException {
    Method found = Stream.of(tools.loadClass("distribution." + type).getDeclaredMethods())
        .filter(m -> m.getName().equals(method) && m.getParameterCount() == arguments.length).findFirst().orElseThrow();
    found.setAccessible(true);
    return found.invoke(null, arguments);
  }

  private Object program() throws ReflectiveOperationException {
    return call("MakeDistribution", "program", Path.of(""), BUILT, BUILT.resolve("wattle.jar"));
  }

  /** Enough of it to see an order, and little to pack. */
  private Object small() throws ReflectiveOperationException {
    Object whole = program();
    Method entries = whole.getClass().getDeclaredMethod("entries");
    entries.setAccessible(true);
    ((Map<?, ?>) entries.invoke(whole)).keySet().removeIf(name -> name.toString().endsWith(".jar"));
    return whole;
  }

  private static String run(Map<String, String> with, List<String> command) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(with);
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static boolean has(String program) {
    return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator)).anyMatch(f -> Files.isExecutable(Path.of(f, program)));
  }

  @Test
  void theArchiveHasTheSameBytesAndRunsWhereverItIsUnpacked() throws Exception {
    assumeTrue(has("tar"), "there is no tar to unpack it with");
    assertThat((byte[]) call("Archives", "tarGz", small(), "wattle/", TIME)).isEqualTo(call("Archives", "tarGz", small(), "wattle/", TIME));
    byte[] once = (byte[]) call("Archives", "tarGz", program(), "wattle/", TIME);
    Path place = Files.createDirectory(folder.resolve("a place, other"));
    Path packed = Files.write(folder.resolve("w.tar.gz"), once);
    run(Map.of(), List.of("tar", "xzf", packed.toString(), "-C", place.toString()));
    Map<String, String> java = Map.of("JAVA_HOME", System.getProperty("java.home"));
    // As if its archive of classes had been made already, which takes longer than all of this and is LauncherIT's to see.
    Files.writeString(place.resolve("wattle/lib/wattle/java.seen"),
        Path.of(System.getProperty("java.home"), "bin/java").toRealPath() + "\n");
    String wattle = place.resolve("wattle/bin/wattle").toString();
    assertThat(run(java, List.of(wattle, "--version"))).startsWith("wattle 0.");
    assertThat(run(java, List.of(wattle, "check", place.resolve("wattle/examples/alder-court/house.wattle").toString())))
        .contains("nothing found in");
  }

  @Test
  void theZipKeepsWhatCanBeRun() throws Exception {
    Path zip = folder.resolve("w.zip");
    Path again = folder.resolve("again.zip");
    call("Archives", "zip", small(), TIME, zip);
    call("Archives", "zip", small(), TIME, again);
    assertThat(Files.mismatch(zip, again)).isEqualTo(-1);
    assumeTrue(has("unzip"), "there is no unzip to read it with");
    run(Map.of(), List.of("unzip", "-q", zip.toString(), "-d", folder.resolve("unpacked").toString()));
    assertThat(Files.isExecutable(folder.resolve("unpacked/bin/wattle"))).isTrue();
    assertThat(folder.resolve("unpacked/licenses")).isDirectory();
    assertThat(folder.resolve("unpacked/NOTICE")).exists();
  }

  @Test
  void theDebianPackageIsOne() throws Exception {
    Path once = folder.resolve("w.deb");
    Path again = folder.resolve("again.deb");
    call("DebianPackage", "write", small(), Path.of(""), BUILT, "0.1.0", TIME, once);
    call("DebianPackage", "write", small(), Path.of(""), BUILT, "0.1.0", TIME, again);
    assertThat(Files.mismatch(once, again)).isEqualTo(-1);
    call("DebianPackage", "write", program(), Path.of(""), BUILT, "0.1.0", TIME, once);
    assumeTrue(has("dpkg-deb"), "there is no dpkg-deb to read it with");
    assertThat(run(Map.of(), List.of("dpkg-deb", "--info", once.toString()))).contains("Package: wattle", "java17-runtime-headless");
    assertThat(run(Map.of(), List.of("dpkg-deb", "--contents", once.toString())))
        .contains("./usr/bin/wattle -> ../share/wattle/bin/wattle", "./usr/share/man/man1/wattle-check.1.gz",
            "./usr/share/bash-completion/completions/wattle", "./usr/share/doc/wattle/copyright")
        .doesNotContain(".cmd");
  }

  /** Windows alone runs it; what of it can be seen anywhere is its bytes. */
  @Test
  void theLauncherForWindowsHasItsLineEndsAndNoOtherLetters() {
    byte[] bytes = read(Path.of("bin/wattle.cmd"));
    String text = new String(bytes, StandardCharsets.US_ASCII);
    assertThat(text.getBytes(StandardCharsets.US_ASCII)).isEqualTo(bytes);
    assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
    assertThat(text).contains("-jar \"%WATTLE_LIB%\\wattle.jar\" %*", "exit /b %WATTLE_CODE%", "chcp 65001", "DisableDelayedExpansion");
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
