package wattle.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;

/** Runs a command on whatever it is given, and says what must be true of every run. */
final class AnyInput {
  private static final Pattern NO_FIGURE = Pattern.compile("NaN|Infinity|\u221e");
  private static final Pattern TRACE = Pattern.compile("internal error|\tat [a-z]+\\.|Exception");

  private AnyInput() {}

  /** What a run ended with, and what it printed and told. */
  record Outcome(int code, String out, String err) {}

  /** Runs a command; its standard input is empty. */
  static Outcome run(List<String> line) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    InputStream usual = System.in;
    System.setIn(new ByteArrayInputStream(new byte[0]));
    try {
      int code = Main.run(line.toArray(String[]::new), out, err);
      return new Outcome(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    } finally {
      System.setIn(usual);
    }
  }

  /**
   * It ends with 0, 1 or 2, with no trace, and shows no figure that is none.
   *
   * @param what was run, for the message
   * @param given words that an output may quote
   * @throws AssertionError where it is not so
   */
  static void requireClean(String what, Outcome outcome, String given) {
    if (outcome.code < 0 || outcome.code > ExitCode.USAGE) {
      throw new AssertionError(what + " ended with " + outcome.code + ": " + outcome.err);
    }
    if (outcome.code == ExitCode.USAGE && outcome.err.isBlank() && outcome.out.isBlank()) {
      throw new AssertionError(what + " was refused without a word");
    }
    if (TRACE.matcher(outcome.err).find() && !TRACE.matcher(given).find()) {
      throw new AssertionError(what + " told a trace: " + outcome.err);
    }
    if (NO_FIGURE.matcher(outcome.out + outcome.err).find() && !NO_FIGURE.matcher(given).find()) {
      throw new AssertionError(what + " shows a figure that is none: " + outcome.out + outcome.err);
    }
  }
}
