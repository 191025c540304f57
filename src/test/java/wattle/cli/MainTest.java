package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Command;

/** The ways around the reader of options that make the start quick lead to the same place. */
class MainTest {
  private static List<Object> run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
    return List.of(code, out.toString(), err.toString());
  }

  @Test
  void commandsAreCalledAsTheirClasses() {
    assertThat(Main.COMMANDS).hasSizeGreaterThan(8);
    for (Class<?> command : Main.COMMANDS) {
      assertThat(command.getAnnotation(Command.class).name()).isEqualTo(Main.nameOf(command));
    }
  }

  @Test
  void helpKnowsAllCommands() {
    String help = run("--help").get(1).toString();
    Main.COMMANDS.forEach(command -> assertThat(help).contains("  " + Main.nameOf(command)));
  }

  @Test
  void theVersionIsTheSameWithAndWithoutTheReaderOfOptions() {
    List<Object> version = run("check", "--version");
    assertThat(run("--version")).isEqualTo(version);
    assertThat(run("-V")).isEqualTo(version);
    assertThat(run("--version", "--wide").get(1)).isEqualTo(version.get(1));
  }

  @Test
  void helpMayBeAskedForAsACommand() {
    assertThat(run("help")).isEqualTo(run("--help"));
    assertThat(run("help", "check")).isEqualTo(run("check", "--help"));
    assertThat(run("help", "nothing").get(0)).isEqualTo(ExitCode.USAGE);
  }

  /** Digits beside a line of the plan are those of its place above it, in every locale. */
  @Test
  void digitsAreTheSameInEveryLocale() {
    Locale usual = Locale.getDefault();
    List<Object> plain = run("check", "examples/broken/ten-mistakes.wattle");
    try {
      Locale.setDefault(new Locale("ar", "EG"));
      assertThat(run("check", "examples/broken/ten-mistakes.wattle")).isEqualTo(plain);
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void aPlainCheckIsTheSameAsOneWithItsOptions() {
    for (String file : List.of("examples/alder-court/house.wattle", "examples/broken/ten-mistakes.wattle", "nowhere.wattle", "examples")) {
      assertThat(PlainCheck.is(new String[]{"check", file})).isTrue();
      assertThat(run("check", file)).isEqualTo(run("check", "--format", "text", "--largest-file", "8", file));
    }
    assertThat(run("check", "examples/cottage/house.wattle", "examples/broken/branch-loop.wattle"))
        .isEqualTo(run("check", "--format=text", "examples/cottage/house.wattle", "examples/broken/branch-loop.wattle"));
  }

  @Test
  void whateverIsNoFileGoesToTheReaderOfOptions() {
    for (String argument : List.of("--help", "--format", "-x", "@list", "")) {
      assertThat(PlainCheck.is(new String[]{"check", argument})).as(argument).isFalse();
    }
    assertThat(PlainCheck.is(new String[]{"check"})).isFalse();
    assertThat(PlainCheck.is(new String[]{"tidy", "x"})).isFalse();
    assertThat(PlainCheck.is(new String[]{"check", "-"})).isTrue();
  }
}
