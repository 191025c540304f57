package wattle.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program that shows Wattle as a library, compiled against it and run. */
class ExampleProgramTest {
  @TempDir
  private Path folder;

  @Test
  void itReadsFindingsAndFigures() throws Exception {
    String classPath = System.getProperty("java.class.path");
    int compiled = ToolProvider.getSystemJavaCompiler().run(null, null, null, "-proc:none", "-Xlint:all,-path", "-Werror", "-cp", classPath,
        "-d",
        folder.toString(), "examples/program/ReadHouse.java");
    assertThat(compiled).isZero();
    // 27 kVA on A is what the table of loads shows: wattle table --of loads examples/alder-court/house.wattle.
    assertThat(run(classPath, "examples/alder-court/house.wattle"))
        .contains("P/2+4  20 A  Counter, both sides of the sink", "panel P leg A: 26823 VA connected", "licensed person decide")
        .doesNotContain("error");
    assertThat(run(classPath, "examples/broken/unit-missing.wattle")).contains("unit-missing.wattle:",
        "error: a breaker rating needs a unit");
  }

  private String run(String classPath, String plan) throws Exception {
    Process process = new ProcessBuilder(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
        folder + java.io.File.pathSeparator + classPath, "ReadHouse", plan)).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }
}
