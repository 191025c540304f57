package wattle.evaluate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wattle.cli.Main;

/** Every figure of a plan may be absurd: that is a finding at the figure, and no command ends with an internal error. */
class FigureBoundsTest {
  private static final String PLAN = """
      plan "Bounds" use code us-2023
      service main 120/240 V 200 A {
        source transformer 50 kVA 1.8 % ratio 1.5
        run 10 m of 4/0 Al triplex
        earth rods by 6 Cu 25 ohm
      }
      panel P from main { bus 200 A slots 40 bonded
        main breaker 200 A 22 kA
        1 15 A a "A"
      }
      branch a by 14/2 NM-B { P --3 m-- k.c --2 m-- k.b1 --4 m in attic 50 degC-- k.l }
      room k area 10 m2 { c: receptacle 100 W  l: light 40 W  box b1 20 in3 { s: switch for l } }
      trial busy { k.c draws 5 A  loosen hot at k.c by 0.5 ohm }
      """;

  private static final List<List<String>> COMMANDS = List.of(
      List.of("check"), List.of("table", "--of", "loads"), List.of("table", "--of", "faults"), List.of("table", "--of", "heat"),
      List.of("trial", "--every"), List.of("test-sheet"), List.of("permit", "--format", "text"), List.of("explain", "--figures"));

  @TempDir
  Path folder;

  @Test
  void thePlanItselfIsRead() throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), PLAN);
    StringWriter out = new StringWriter();
    assertThat(Main.run(new String[]{"trial", "--every", plan.toString()}, new PrintWriter(out), new PrintWriter(out))).as(out.toString())
        .isLessThan(2);
    assertThat(out.toString()).doesNotContain("[unexpected]").doesNotContain("unknown]");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"200 A {", "50 kVA", "1.8 %", "ratio 1.5", "10 m of", "25 ohm", "bus 200 A", "slots 40", "breaker 200 A", "22 kA",
          "15 A a", "--3 m--", "--4 m", "50 degC", "area 10 m2", "100 W", "40 W", "20 in3", "5 A", "0.5 ohm"})
  void noFigureEndsInAnInternalError(String place) throws Exception {
    assertThat(PLAN).contains(place);
    String figure = place.replaceAll("^[^0-9]*([0-9.]+).*$", "$1");
    for (String absurd : List.of("0", "1" + "0".repeat(200), "0." + "0".repeat(200) + "1", "999999999999")) {
      Path plan = Files.writeString(folder.resolve("p.wattle"), PLAN.replace(place, place.replace(figure, absurd)));
      for (List<String> command : COMMANDS) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] arguments = new String[command.size() + 1];
        command.toArray(arguments);
        // The plan comes right behind the command's name.
        System.arraycopy(arguments, 1, arguments, 2, command.size() - 1);
        arguments[1] = plan.toString();
        if (command.equals(List.of("explain", "--figures"))) {
          arguments = new String[]{"explain", plan.toString(), "--figures"};
        }
        int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
        assertThat(code).as(command + " with " + place + " as " + absurd.substring(0, Math.min(9, absurd.length())) + ": " + err)
            .isLessThan(3);
        assertThat(out.toString()).doesNotContain("NaN").doesNotContain("Infinity");
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"breaker 200 A,breaker 0 A,figure-not-positive", "bus 200 A,bus 0 A,figure-not-positive",
      "20 in3,0 in3,figure-not-positive", "area 10 m2,area 0 m2,figure-not-positive",
      "--3 m--,--3000000000000 m--,figure-too-large", "25 ohm,0.0000000000001 ohm,figure-too-small"})
  void eachIsTold(String place, String absurd, String rule) throws Exception {
    Path plan = Files.writeString(folder.resolve("p.wattle"), PLAN.replace(place, absurd));
    StringWriter out = new StringWriter();
    assertThat(Main.run(new String[]{"check", plan.toString()}, new PrintWriter(out), new PrintWriter(new StringWriter()))).isEqualTo(1);
    assertThat(out.toString()).contains("[" + rule + "]");
  }
}
