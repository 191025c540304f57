package wattle.fuzz;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import wattle.read.Reading;
import wattle.read.SourceReader;
import wattle.cli.Main;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.edit.Formatter;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;

/**
 * What must be true of any text at all: it is read the same way afresh and while typed, tidying it twice is tidying it once,
 * every command ends with 0, 1 or 2, and no output shows a figure that is none.
 */
final class PlanTarget {
  /** Every back end by the words of its command; {@code FILE} stands for the plan, {@code OTHER} for the mutant before it. */
  static final List<String> COMMANDS = List.of(
      "check FILE", "check --format json FILE", "check --format sarif FILE", "check --assumptions FILE",
      "table --of panel FILE", "table --of loads FILE", "table --of runs --format csv FILE", "table --of boxes FILE",
      "table --of faults FILE", "table --of voltage FILE", "table --of neutral FILE", "table --of heat FILE",
      "table --of materials --format json FILE", "table --of rooms --format md FILE", "table --of worksheet FILE",
      "table --of unstated FILE", "draw --view one-line --format svg FILE", "draw --view panel --format svg FILE",
      "draw --view rooms --format svg FILE", "draw --view legs --format svg FILE", "draw --view panel --format dot FILE",
      "trial FILE", "balance FILE", "directory --format text FILE", "permit --format text FILE", "test-sheet FILE",
      "mend FILE", "tidy --check FILE", "explain FILE --figures", "compare OTHER FILE", "compare --describe FILE");

  private final Path folder;
  private final Reading remembering = new Reading.Remembering();
  private String before = "plan \"Before\"\n";

  PlanTarget(Path folder) {
    this.folder = folder;
  }

  /**
   * Tries a text.
   *
   * @param command which of {@link #COMMANDS} is run on it
   * @throws AssertionError where something is not so that must be so, with what
   */
  void take(String text, int command) {
    Source source = new Source("fuzzed.wattle", text);
    readsAlike(source);
    tidiesOnce(source);
    runs(text, COMMANDS.get(Math.floorMod(command, COMMANDS.size())));
    before = text;
  }

  private void readsAlike(Source source) {
    SourceReader reader = new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES);
    Path place = folder.resolve("fuzzed.wattle");
    Compilation afresh = new Compiler(reader).compile(source, place);
    Compilation typed = new Compiler(reader, remembering).compile(source, place);
    List<String> one = shown(afresh.findings());
    List<String> other = shown(typed.findings());
    require(one.equals(other), "read afresh and while typed: " + one + " and " + other);
    require(!afresh.hasInternalError(), "internal error: " + one);
  }

  private static List<String> shown(List<Finding> findings) {
    return findings.stream()
        .map(f -> f.rule() + "|" + f.headline() + "|" + f.place().map(p -> p.span().start() + "-" + p.span().end()).orElse(""))
        .toList();
  }

  private static void tidiesOnce(Source source) {
    Checked<String> once = Formatter.format(source);
    if (once.findings().isEmpty()) {
      Checked<String> twice = Formatter.format(new Source(source.name(), once.value()));
      require(twice.findings().isEmpty() && twice.value().equals(once.value()), "tidy twice is not tidy once");
    }
  }

  private void runs(String text, String command) {
    try {
      Path plan = Files.writeString(folder.resolve("fuzzed.wattle"), text);
      Path other = Files.writeString(folder.resolve("other.wattle"), before);
      String[] arguments = command.split(" ");
      for (int i = 0; i < arguments.length; i++) {
        arguments[i] = arguments[i].equals("FILE") ? plan.toString() : arguments[i].equals("OTHER") ? other.toString() : arguments[i];
      }
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
      require(code >= 0 && code < 3, command + " ended with " + code + ": " + err);
      boolean written = text.contains("NaN") || text.contains("Infinity") || before.contains("NaN") || before.contains("Infinity");
      require(written || !(out.toString().contains("NaN") || out.toString().contains("Infinity")),
          command + " shows a figure that is none");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new AssertionError(otherwise);
    }
  }
}
