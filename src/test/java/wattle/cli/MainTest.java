package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
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
  void aPlainCheckIsTheSameAsOneWithItsOptions() {
    for (String file : List.of("examples/alder-court/house.wattle", "examples/broken/ten-mistakes.wattle", "nowhere.wattle", "examples")) {
      assertThat(PlainCheck.is(new String[]{"check", file})).isTrue();
      assertThat(run("check", file)).isEqualTo(run("check", "--format", "text", "--largest-file", "16", file));
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
