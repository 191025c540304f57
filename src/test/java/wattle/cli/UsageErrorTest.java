package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;

/** What is said of a line that cannot be run: in the words that are typed, with what is expected, and short. */
class UsageErrorTest {
  private static String run(int expected, String... arguments) {
    StringWriter err = new StringWriter();
    assertThat(Main.run(arguments, new PrintWriter(new StringWriter()), new PrintWriter(err))).isEqualTo(expected);
    return err.toString();
  }

  private static String refused(String... arguments) {
    String said = run(ExitCode.USAGE, arguments);
    assertThat(said.lines().count()).isLessThan(16);
    return said;
  }

  @Test
  void valuesAreNamedAsTheyAreTyped() {
    assertThat(refused("draw", "--view", "ladder", "x"))
        .startsWith("wattle: --view: 'ladder' is none of one-line, panel, branch, trip, voltage, legs, rooms\nUsage: wattle draw")
        .endsWith("More: wattle draw --help\n");
    assertThat(refused("draw", "--view", "one-lin", "x")).contains("did you mean one-line?");
    assertThat(refused("draw", "--view", "panel", "--resolution", "big", "x"))
        .startsWith("wattle: --resolution: 'big' is not a whole number\n");
    assertThat(refused("chek", "x")).startsWith("wattle: no command is called 'chek'; there are check, tidy");
    assertThat(refused("check", "--stric", "x")).contains("'--stric'").contains("did you mean --strict?");
  }

  @Test
  void bothSpellingsAndAnyCaseAreTaken() {
    for (String view : List.of("one-line", "ONE_LINE", "One-Line", "one_line")) {
      assertThat(run(ExitCode.FINE, "draw", "--view", view, "--format", "DOT", "examples/workshop/house.wattle")).doesNotContain("none of");
    }
  }

  /**
   * Of every option of every command that takes one of a few words: none is shown in capitals, in help or in what is said of a
   * wrong one.
   */
  @Test
  void noCommandShoutsItsValues() {
    List<String> seen = new ArrayList<>();
    for (Class<?> command : Main.COMMANDS) {
      CommandLine line = new CommandLine(command);
      String help = line.getUsageMessage();
      for (ArgSpec argument : line.getCommandSpec().args()) {
        if (argument.type().isEnum() && argument.isOption()) {
          String option = line.getCommandSpec().options().stream().filter(o -> o == argument).findFirst().orElseThrow().longestName();
          String said = refused(Main.nameOf(command), option, "nothing-of-the-kind");
          for (Object value : argument.type().getEnumConstants()) {
            String shouted = ((Enum<?>) value).name();
            assertThat(said.lines().findFirst().orElseThrow()).contains(shouted.toLowerCase(Locale.ROOT).replace('_', '-'))
                .doesNotContain(shouted);
            assertThat(shouted.contains("_") && help.contains(shouted)).as(help).isFalse();
          }
          seen.add(Main.nameOf(command) + " " + option);
        }
      }
    }
    assertThat(seen).hasSizeGreaterThan(10).contains("draw --view", "table --of", "draw --orientation");
  }
}
