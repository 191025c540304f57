package wattle.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Every command of the program with a line that runs it, and what its model says of it. */
final class EveryCommand {
  /** The name of the plan in most lines. */
  static final String PLAN = "plan.wattle";

  /** A line of arguments for each command; those with {@code --out} are also run with it. What it names lies in a folder. */
  static final Map<String, List<String>> LINES = new TreeMap<>(Map.ofEntries(
      line("check", PLAN),
      line("tidy", "-"),
      line("mend", "unit.wattle"),
      line("compare", "before.wattle", PLAN),
      line("explain", "neutral"),
      line("table", "--of", "loads", PLAN),
      line("trial", PLAN, "--stated"),
      line("draw", "--view", "panel", PLAN),
      line("report", PLAN),
      line("lockout", PLAN, "panel", "P"),
      line("directory", PLAN),
      line("test-sheet", PLAN),
      line("permit", PLAN),
      line("live", PLAN),
      line("language-server"),
      line("balance", PLAN),
      line("begin", "--bedrooms", "1"),
      line("size", "20 A 10 m 240 V"),
      line("questions", PLAN),
      line("export", PLAN)));

  private static Map.Entry<String, List<String>> line(String... words) {
    return Map.entry(words[0], List.of(words));
  }

  static Stream<String> names() {
    return Main.COMMANDS.stream().map(Main::nameOf);
  }

  /** The endings that a file of a command may have, by the formats of its model; the command may know fewer of them for a document. */
  static List<String> endings(String command) {
    OptionSpec format = command.equals("explain") ? null : option(command, "--format");
    if (format == null) {
      return List.of(command.equals("begin") ? ".wattle" : ".txt");
    }
    return StreamSupport.stream(format.completionCandidates().spliterator(), false)
        .map(f -> f.toLowerCase(Locale.ROOT)).map(f -> "." + (f.equals("text") ? "txt" : f)).toList();
  }

  /** An option of a command; null where it has none of that name. */
  static OptionSpec option(String command, String name) {
    Class<?> named = Main.COMMANDS.stream().filter(c -> Main.nameOf(c).equals(command)).findFirst().orElseThrow();
    CommandLine line = new CommandLine(new Main());
    line.addSubcommand(named);
    EnumerationWord.register(line);
    return line.getSubcommands().get(command).getCommandSpec().findOption(name);
  }

  private EveryCommand() {}
}
