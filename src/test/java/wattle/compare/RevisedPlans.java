package wattle.compare;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.emit.media.drawing.ManyCircuits;
import wattle.finding.Source;
import wattle.golden.Golden;
import wattle.read.SourceReader;

/** Plans and revisions of them, made at random: figures changed, lines lost, doubled and exchanged, things renamed. */
final class RevisedPlans {
  private static final List<Path> EXAMPLES = Golden.plans("examples");
  private static final Pattern FIGURE = Pattern.compile("\\b\\d+(?:\\.\\d+)?(?= (?:m|A|W|kW|VA|m2|in3|ohm|kVA|%)\\b)");
  private static final Pattern NAME = Pattern.compile("(?m)^(?:room|branch|panel|trial) (\\w+)");

  private final Random random;

  RevisedPlans(long seed) {
    random = new Random(seed);
  }

  /** A text and where it lies, so that the files it uses are found. */
  record Text(String text, Path path) {
    Plan plan() {
      Compilation plan = new Compiler(SourceReader.FROM_DISK).compile(new Source(path.toString(), text), path);
      return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
    }

    Text with(String other) {
      return new Text(other, path);
    }
  }

  Text any() {
    if (random.nextInt(4) == 0) {
      return new Text(ManyCircuits.plan(1 + random.nextInt(20), random.nextLong()), Path.of("many.wattle"));
    }
    Path path = EXAMPLES.get(random.nextInt(EXAMPLES.size()));
    try {
      return new Text(Files.readString(path), path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** With some edits; many of them leave a plan that is wrong, as a plan under work is. */
  Text revised(Text plan) {
    String text = plan.text();
    int edits = random.nextInt(5);
    for (int i = 0; i < edits; i++) {
      text = switch (random.nextInt(8)) {
        case 0 -> withoutLine(text);
        case 1 -> doubled(text);
        case 2 -> exchanged(text);
        case 3 -> renamed(text);
        default -> refigured(text);
      };
    }
    return plan.with(text);
  }

  private String refigured(String text) {
    List<MatchResult> figures = FIGURE.matcher(text).results().toList();
    if (figures.isEmpty()) {
      return text;
    }
    MatchResult at = figures.get(random.nextInt(figures.size()));
    String other = List.of("0.5", "7", "15", "20", "33", "120").get(random.nextInt(6));
    return text.substring(0, at.start()) + other + text.substring(at.end());
  }

  /** Everywhere but in texts and comments, and with it whatever else goes by the same word. */
  String renamed(String text) {
    List<String> names = NAME.matcher(text).results().map(m -> m.group(1)).distinct().toList();
    if (names.isEmpty()) {
      return text;
    }
    String name = names.get(random.nextInt(names.size()));
    return Pattern.compile("\"(?:\\\\.|[^\"\\\\\n]++)*+\"|//.*|(?<![\\w-])" + name + "(?![\\w-])")
        .matcher(text)
        .replaceAll(m -> java.util.regex.Matcher.quoteReplacement(m.group().equals(name) ? name + "other" : m.group()));
  }

  private String withoutLine(String text) {
    List<String> lines = new java.util.ArrayList<>(text.lines().toList());
    lines.remove(random.nextInt(lines.size()));
    return String.join("\n", lines) + "\n";
  }

  private String doubled(String text) {
    List<String> lines = new java.util.ArrayList<>(text.lines().toList());
    int at = random.nextInt(lines.size());
    lines.add(at, lines.get(at));
    return String.join("\n", lines) + "\n";
  }

  private String exchanged(String text) {
    List<String> lines = new java.util.ArrayList<>(text.lines().toList());
    java.util.Collections.swap(lines, random.nextInt(lines.size()), random.nextInt(lines.size()));
    return String.join("\n", lines) + "\n";
  }
}
