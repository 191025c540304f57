package wattle.emit.media.graphviz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import guru.nidi.graphviz.engine.Engine;
import guru.nidi.graphviz.engine.Format;
import guru.nidi.graphviz.engine.GraphvizException;
import java.io.FileNotFoundException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program is played by shell scripts, so that these tests mean the same with and without Graphviz installed. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the program is played by POSIX shell scripts")
class NativeEngineTest {
  @TempDir
  Path folder;

  @Test
  void namesTheProgramThatIsMissing() {
    assertThatThrownBy(() -> DotEngine.installed("no-such-dot"))
        .isInstanceOf(FileNotFoundException.class)
        .hasMessageContaining("'no-such-dot'")
        .hasMessageContaining("install Graphviz");
  }

  @Test
  void refusesAFileThatCannotBeRun() throws Exception {
    Path plain = Files.writeString(folder.resolve("dot"), "#!/bin/sh\n");

    assertThatThrownBy(() -> DotEngine.installed(plain.toString())).isInstanceOf(FileNotFoundException.class);
  }

  @Test
  void passesTheGraphInAndThePictureOut() throws Exception {
    DotEngine engine = program("echo \"$@\"; cat; echo 'Warning: small' >&2");

    Rendering drawn = engine.render("digraph { \"a & $(b)\" }", Engine.NEATO, Format.PLAIN_EXT);

    assertThat(drawn.text()).isEqualTo("-Kneato -Tplain-ext\ndigraph { \"a & $(b)\" }");
    assertThat(drawn.warnings()).containsExactly("Warning: small");
  }

  @Test
  void moreTextThanAPipeHoldsDoesNotBlock() throws Exception {
    String dot = "digraph { /* " + "x".repeat(1 << 20) + " */ }";

    assertThat(program("cat; head -c 200000 /dev/zero | tr '\\0' 'w' >&2").render(dot, Engine.DOT, Format.SVG).text())
        .isEqualTo(dot);
  }

  @Test
  void tellsWhatTheProgramSaidWhenItFails() throws Exception {
    DotEngine engine = program("echo 'Error: syntax error in line 1' >&2; exit 1");

    assertThatThrownBy(() -> engine.render("digraph {", Engine.DOT, Format.SVG))
        .isInstanceOf(GraphvizException.class)
        .hasMessageContaining("code 1")
        .hasMessageContaining("syntax error in line 1");
  }

  private DotEngine program(String script) throws Exception {
    Path file = Files.writeString(folder.resolve("a dot"), "#!/bin/sh\n" + script + "\n");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    return DotEngine.installed(file.toString());
  }
}
