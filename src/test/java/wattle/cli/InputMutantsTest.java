package wattle.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The short form of fuzzing what is read beside plans: so many sheets and command lines as {@code -Dfuzz.tries} says, from
 * {@code -Dfuzz.seed}. Messages of editors are in {@code ProtocolMutantsTest}, requests of the live page in {@code PageMutantsTest}.
 */
class InputMutantsTest {
  private static final int TRIES = Integer.getInteger("fuzz.tries", 150);
  private static final long SEED = Long.getLong("fuzz.seed", 20261130);

  @TempDir
  Path folder;

  /** Sheets that once ended in an internal error, or told of a class: 0 a schedule, 1 prices, 2 readings. */
  static Stream<Arguments> sheetsOnceFound() {
    return Stream.of(
        Arguments.of(1, "item,unit,price,hours\n14/2 NM-B,m,1.10,0.05\n}receptacle,\",3.20,0.3\n"),
        Arguments.of(1, "item,unit,price,hours\r14/2 NM-B,m,1.10,0.05\rx,}\ry,each,z,1\n"),
        Arguments.of(2, "test,test,reading\n"),
        Arguments.of(2, "test,reading\nx,\"1\n"));
  }

  @ParameterizedTest
  @MethodSource("sheetsOnceFound")
  void whatWasFoundBeforeStaysMended(int kind, String sheet) throws IOException {
    new SheetTarget(folder).take(kind, sheet);
  }

  @Test
  void everySheetIsReadOrRefused() throws IOException {
    SheetTarget target = new SheetTarget(folder);
    for (int i = 0; i < TRIES; i++) {
      try {
        target.take(new Random(SEED + i));
      } catch (RuntimeException | AssertionError e) {
        fail("seed " + (SEED + i) + ": " + e, e);
      }
    }
  }

  /** Java takes an empty name for the folder in which the command runs: every plan in it was set in order. */
  @ParameterizedTest
  @ValueSource(strings = {"tidy", "check", "mend", "report --out x", "draw --view panel"})
  void anEmptyNameIsNoFolder(String command) {
    List<String> line = Stream.concat(Stream.of(command.split(" ")), Stream.of("")).toList();
    AnyInput.Outcome outcome = AnyInput.run(line);
    assertThat(outcome.err()).isEqualTo(
        "wattle: the name of a file is empty; a variable of the shell may not be set" + System.lineSeparator());
    assertThat(outcome.code()).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void everyCommandLineIsRunOrRefused() throws IOException {
    LineTarget target = new LineTarget(folder);
    for (int i = 0; i < TRIES; i++) {
      List<String> line = target.line(new Random(SEED + i));
      try {
        target.take(line);
      } catch (RuntimeException | AssertionError e) {
        fail("seed " + (SEED + i) + ", " + line + ": " + e, e);
      }
    }
  }
}
