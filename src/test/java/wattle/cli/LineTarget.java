package wattle.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.StreamSupport;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Command lines by chance from the options that the commands have, with values that they take and values that they do not. */
final class LineTarget {
  /** Those that wait for somebody. */
  private static final Set<String> WAITING = Set.of("live", "language-server");

  /** Options that wait, run another program or a repository's, or show a trace that was asked for. */
  private static final Set<String> LEFT_OUT = Set.of("--watch", "--ask", "--dot", "--engine", "--git", "--as-driver", "--trace");

  private static final List<String> VALUES = List.of("", "-", "--", "0", "-1", "1", "2", "7", "16", "40", "1e9", "99999999999999999999",
      "NaN", "0x10", "P", "main", "kitchen", "kitchen.c1", "range", "panel P", "us-2023", "ca-2021", "none", "letter", "A4", "text", "json",
      "csv", "svg", "150 m2", "1600 ft2", "40 A", "240 V", "120/240", "208Y/120", "230", "lose neutral of P", "neutral", "box-overfilled",
      "voltage of kitchen.c1", "vehicle charger 7.7 kW", "2026-03-09", "2026-02-31", "portrait", "\u00FC", "\uD83D\uDD0C", "\u202E", "a\nb",
      "a\u0000b", "%s %n", "${x}", "*", "{", "\"", "'", "living,dining", "range,dryer", "existing", "fuses", "NM-B", "14/2", "3 %", "%");

  private final Path folder;

  /** @param folder for the plans and all that is written */
  LineTarget(Path folder) {
    this.folder = folder;
  }

  /** A line that is always the same for a seed. What it writes lies in the folder: {@code begin} takes any word for a new file. */
  List<String> line(Random random) {
    List<String> names = EveryCommand.names().filter(c -> !WAITING.contains(c)).toList();
    String command = names.get(random.nextInt(names.size()));
    List<String> line = new ArrayList<>();
    if (random.nextInt(3) > 0) {
      EveryCommand.LINES.get(command).forEach(w -> line.add(w.endsWith(".wattle") ? folder.resolve(w).toString() : w));
    } else {
      line.add(command);
    }
    if (command.equals("report") || command.equals("begin") && random.nextBoolean()) {
      line.addAll(List.of("--out", folder.resolve("out.wattle").toString()));
    }
    List<OptionSpec> options = options(command);
    for (int i = random.nextInt(4); i > 0; i--) {
      OptionSpec option = options.get(random.nextInt(options.size()));
      line.add(option.names()[random.nextInt(option.names().length)]);
      if (option.arity().max() > 0 || !command.equals("begin") && random.nextInt(40) == 0) {
        line.add(value(option, random));
      }
    }
    for (int i = command.equals("begin") ? 0 : random.nextInt(3); i > 0; i--) {
      line.add(1 + random.nextInt(line.size()), random.nextBoolean()
          ? folder.resolve(List.of("plan.wattle", "before.wattle", "sheet.csv", "nowhere.wattle", "out").get(random.nextInt(5))).toString()
          : VALUES.get(random.nextInt(VALUES.size())));
    }
    if (random.nextInt(6) == 0 && !command.equals("begin")) {
      line.remove(random.nextInt(line.size()));
    }
    return line;
  }

  private static List<OptionSpec> options(String command) {
    Class<?> named = Main.COMMANDS.stream().filter(c -> Main.nameOf(c).equals(command)).findFirst().orElseThrow();
    CommandLine line = new CommandLine(new Main());
    line.addSubcommand(named);
    EnumerationWord.register(line);
    return line.getSubcommands().get(command).getCommandSpec().options().stream()
        .filter(o -> Arrays.stream(o.names()).noneMatch(LEFT_OUT::contains)).toList();
  }

  private String value(OptionSpec option, Random random) {
    if (List.of(option.names()).contains("--out") || List.of(option.names()).contains("--picture")) {
      return folder.resolve(List.of("a.svg", "a.pdf", "a.txt", "a.csv", "a.html", "a.json", "a.md", "a.dot", "a", "nowhere/a.txt", ".")
          .get(random.nextInt(11))).toString();
    }
    if (option.completionCandidates() != null && random.nextInt(4) > 0) {
      List<String> words = StreamSupport.stream(option.completionCandidates().spliterator(), false).toList();
      return words.isEmpty() ? "" : words.get(random.nextInt(words.size()));
    }
    return List.of("--prices", "--read", "--from").contains(option.longestName()) && random.nextBoolean()
        ? folder.resolve("sheet.csv").toString()
        : VALUES.get(random.nextInt(VALUES.size()));
  }

  /** Runs a line in the folder with fresh plans. */
  void take(List<String> line) throws IOException {
    Path kitchen = Path.of("examples", "kitchen-renovation");
    Files.copy(kitchen.resolve("after.wattle"), folder.resolve("plan.wattle"), StandardCopyOption.REPLACE_EXISTING);
    Files.copy(kitchen.resolve("before.wattle"), folder.resolve("before.wattle"), StandardCopyOption.REPLACE_EXISTING);
    Files.copy(Path.of("examples", "broken", "unit-missing.wattle"), folder.resolve("unit.wattle"), StandardCopyOption.REPLACE_EXISTING);
    Files.writeString(folder.resolve("sheet.csv"), "slot,rating,poles,description\n1,15,1,Hall lights\n");
    AnyInput.requireClean(line.toString(), AnyInput.run(line), String.join(" ", line));
  }
}
