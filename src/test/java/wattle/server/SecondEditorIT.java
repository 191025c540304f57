package wattle.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import wattle.npm.NodePackages;

/**
 * The packaged server as a process, with a client that shares no code with it: the protocol library of another language.
 * Needs Node and its package manager; skipped where they are not installed.
 */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "the launcher is a POSIX shell script")
class SecondEditorIT {
  private static final Path EDITOR = Path.of("src/test/editor");

  @TempDir
  Path folder;

  @Test
  void opensBreaksSeesAndMends() throws Exception {
    assumeThat(NodePackages.canBeFetched()).as("node and npm are installed").isTrue();
    NodePackages.fetch(EDITOR, folder);
    Files.copy(EDITOR.resolve("editor.mjs"), folder.resolve("editor.mjs"));
    List<String> command = new ArrayList<>(List.of("node", "editor.mjs", absolute("examples/alder-court")));
    command.addAll(
        List.of(absolute(System.getProperty("java.home") + "/bin/java"), "-jar", absolute("target/wattle/wattle.jar"), "language-server"));
    assertThat(NodePackages.run(command, folder)).isEqualTo(new NodePackages.Outcome(0, "opened, broken, found, mended\n"));
  }

  private static String absolute(String path) {
    return Path.of(path).toAbsolutePath().toString();
  }
}
