package wattle.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import wattle.cli.Main;

/** What the build writes about the commands: a manual page for each, and completion that a real shell takes. */
class CommandDocumentsIT {
  private static final Path MAN = Path.of("target/wattle/man/man1");
  private static final Path COMPLETION = Path.of("target/wattle/completion/wattle.bash");

  private static String help(String... arguments) {
    StringWriter out = new StringWriter();
    Main.run(arguments, new PrintWriter(out), new PrintWriter(out));
    return out.toString();
  }

  private static List<String> commands() {
    List<String> commands = new ArrayList<>();
    Matcher lines = Pattern.compile("(?m)^  ([a-z][a-z-]*)  +\\S").matcher(help("--help").replaceFirst("(?s).*Commands:", ""));
    while (lines.find()) {
      commands.add(lines.group(1));
    }
    return commands;
  }

  private static boolean has(String program) {
    return Pattern.compile(java.io.File.pathSeparator).splitAsStream(System.getenv("PATH"))
        .anyMatch(f -> Files.isExecutable(Path.of(f, program)));
  }

  private static String run(String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  @Test
  void everyCommandHasAPageWithAllItsOptions() throws IOException {
    assertThat(commands()).contains("check", "balance", "begin").hasSizeGreaterThan(6);
    for (String command : commands()) {
      String page = Files.readString(MAN.resolve("wattle-" + command + ".1"));
      assertThat(page).as(command).contains(".SH NAME\nwattle-" + command + " ", ".SH SYNOPSIS", ".SH OPTIONS", ".SH EXIT STATUS");
      assertThat(page.contains(".SH EXAMPLES")).as(command).isEqualTo(help(command, "--help").contains("\nExamples:"));
      Matcher options = Pattern.compile("--[a-z][a-z-]*").matcher(help(command, "--help").replaceFirst("(?s)\nExamples:.*", ""));
      while (options.find()) {
        assertThat(page).as(command).contains(options.group().replace("-", "\\-"));
      }
      assertThat(page).doesNotContain("${").doesNotContain("null");
      assertThat(Files.readString(MAN.resolve("wattle.1"))).contains("wattle\\-" + command.replace("-", "\\-"));
    }
  }

  @Test
  void pagesAreSetWithoutAWarning() throws Exception {
    assumeTrue(has("groff"), "groff is not installed");
    for (String command : commands()) {
      String page = run("groff", "-man", "-ww", "-Tascii", "-P-bcu", MAN.resolve("wattle-" + command + ".1").toString());
      assertThat(page).as(command).doesNotContainPattern(":\\d+: warning").contains("SYNOPSIS", "wattle " + command);
    }
  }

  @Test
  void aShellCompletesCommandsAndOptions() throws Exception {
    assumeTrue(has("bash"), "bash is not installed");
    String ask = "source '" + COMPLETION
        + "' && complete -p wattle && COMP_WORDS=(wattle %s) && COMP_CWORD=%d && _complete_wattle && echo \"${COMPREPLY[@]}\"";
    assertThat(run("bash", "-c", String.format(ask, "ba", 1))).contains("balance");
    assertThat(run("bash", "-c", String.format(ask, "balance --mo", 2))).contains("--moves");
  }
}
