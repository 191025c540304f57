package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What the build writes about the commands: manual pages name every option, and the shell completes what is typed. */
class CommandDocumentsTest {
  @TempDir
  private static Path folder;

  @BeforeAll
  static void made() throws IOException, InterruptedException {
    run(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
        "src/build/java/MakeCommandDocuments.java", "wattle.cli.Main", "1", folder.toString());
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static String completed(String... words) throws IOException, InterruptedException {
    StringBuilder line = new StringBuilder();
    for (String word : words) {
      line.append(" '").append(word).append("'");
    }
    String script = "source " + folder + "/completion/wattle.bash; COMP_WORDS=(wattle" + line + "); COMP_CWORD=" + words.length
        + "; _complete_wattle; echo ${COMPREPLY[@]}";
    return run("bash", "-c", script).strip();
  }

  @Test
  void everyCommandHasAPageWithAllItsOptions() throws IOException {
    for (Class<?> command : Main.COMMANDS) {
      String page = Files.readString(folder.resolve("man/man1/wattle-" + Main.nameOf(command) + ".1")).replace("\\-", "-");
      for (OptionSpec option : new CommandLine(command).getCommandSpec().options()) {
        assertThat(page).as(Main.nameOf(command)).contains(option.longestName());
      }
    }
  }

  @Test
  void wordsAreCompletedAsTheyAreTyped() throws IOException, InterruptedException {
    assertThat(completed("che")).isEqualTo("check");
    assertThat(completed("test")).isEqualTo("test-sheet");
    assertThat(completed("check", "--format", "")).isEqualTo("text json sarif");
    assertThat(completed("draw", "--view", "on")).isEqualTo("one-line");
    assertThat(completed("table", "--of", "mat")).isEqualTo("materials");
    assertThat(completed("compare", "--pic")).isEqualTo("--picture");
  }

  @Test
  void namesOfTheLibraryAndRevisionsAreCompleted() throws IOException, InterruptedException {
    assertThat(completed("explain", "box-over")).isEqualTo("box-overfilled");
    assertThat(completed("mend", "--rule", "box-overf")).isEqualTo("box-overfilled");
    assertThat(completed("explain", "--pack", "")).isEqualTo("ca-2021 common us-2023");
    assertThat(completed("check", "--code", "us")).isEqualTo("us-2023");
    assertThat(completed("draw", "--paper", "A")).isEqualTo("A4 A3");
    assertThat(completed("permit", "--paper", "l")).isEqualTo("letter");
    assertThat(completed("compare", "--git", "HEAD~")).isEqualTo("HEAD~1");
  }

  /** Where there are no words to offer the shell is left to offer files. */
  @Test
  void filesAreLeftToTheShell() throws IOException, InterruptedException {
    assertThat(completed("check", "house")).isEmpty();
    assertThat(Files.readString(folder.resolve("completion/wattle.bash")).toLowerCase(Locale.ROOT))
        .contains("-o default wattle").doesNotContain("+o default");
  }
}
