package wattle.fuzz;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import wattle.cli.Main;
import wattle.compare.Comparison;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Compiler;
import wattle.compiler.Completeness;
import wattle.compiler.FixTrial;
import wattle.edit.Formatter;
import wattle.edit.Mender;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.read.Reading;
import wattle.read.SourceReader;

/**
 * What must be true of any text at all: it is read the same way afresh and while typed, tidying it twice is tidying it once and leaves
 * the house, mending it twice is mending it once, it differs from another as that does from it, every command ends with 0, 1 or 2, and no
 * output shows a figure that is none.
 */
final class PlanTarget {
  /** Every back end by the words of its command; {@code FILE} stands for the plan, {@code OTHER} for the mutant before it. */
  static final List<String> COMMANDS = List.of(
      "check FILE", "check --format json FILE", "check --format sarif FILE", "check --assumptions FILE", "check --survey FILE",
      "table --of panel FILE", "table --of loads FILE", "table --of runs --format csv FILE", "table --of boxes FILE",
      "table --of faults FILE", "table --of voltage FILE", "table --of neutral FILE", "table --of heat FILE",
      "table --of materials --format json FILE", "table --of rooms --format md FILE", "table --of worksheet FILE",
      "table --of unstated FILE", "draw --view one-line --format svg FILE", "draw --view panel --format svg FILE",
      "draw --view rooms --format svg FILE", "draw --view legs --format svg FILE", "draw --view trip --format svg FILE",
      "draw --view voltage --format svg FILE", "draw --view branch --format svg FILE", "draw --view panel --format dot FILE",
      "draw --view one-line --paper letter --force --out drawn.pdf FILE", "draw --view one-line --force --out drawn.png FILE",
      "trial FILE", "balance FILE", "directory --format text FILE", "permit --format text FILE", "test-sheet FILE",
      "test-sheet --format csv FILE", "lockout FILE P/1", "lockout FILE main", "report --force --out report FILE",
      "report --pdf --force --out report FILE", "mend FILE", "mend --write FILE", "tidy --check FILE", "tidy FILE",
      "explain FILE --figures", "compare OTHER FILE", "compare --format json OTHER FILE", "compare --describe FILE",
      "compare --force --picture drawn.svg OTHER FILE", "compare --force --out drawn.html OTHER FILE", "export FILE",
      "trial --every FILE", "trial --stated --format json FILE", "trial --stated --force --picture drawn.svg FILE", "questions FILE",
      "permit --force --out drawn.pdf FILE", "permit --worksheet --format json FILE", "directory --force --out drawn.html FILE",
      "test-sheet --force --out drawn.html FILE", "check --rules FILE", "table --of demolition FILE",
      "explain FILE --figures --force --out drawn.html");

  private static final Set<String> WRITTEN = Set.of("drawn.pdf", "drawn.png", "drawn.svg", "drawn.html", "report");

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
    Compilation plan = readsAlike(source);
    tidies(source, plan);
    // What takes several compilations is tried of every fourth text.
    if (Math.floorMod(text.hashCode(), 4) == 0) {
      mends(source);
      compares(new Source("before.wattle", before), plan);
    }
    runs(text, COMMANDS.get(Math.floorMod(command, COMMANDS.size())));
    before = text;
  }

  /**
   * Judges a text, tidies every fourth, and tries by chance one of what takes longer: many more texts a second than {@link #take}.
   *
   * @param rarity of so many texts some twenty are tried further; at least 20
   */
  void takeQuickly(String text, Random random, int rarity) {
    Source source = new Source("fuzzed.wattle", text);
    int chance = random.nextInt(rarity);
    Compilation plan = chance < 8 ? readsAlike(source) : compiled(source);
    List<String> found = shown(plan.findings());
    require(!plan.hasInternalError(), "internal error: " + found);
    require(allowsWords(text) || found.stream().noneMatch(NoFigure::isIn), "a finding shows a figure that is none: " + found);
    if (chance < 4) {
      tidies(source, plan);
    }
    switch (chance) {
      case 16 -> mends(source);
      case 17 -> compares(new Source("before.wattle", before), plan);
      case 18, 19 -> runs(text, COMMANDS.get(random.nextInt(COMMANDS.size())));
      default -> {
        // Reading it once more takes a fifth of all that is done to it.
        if (chance % 4 == 0) {
          Formatter.format(source);
        }
      }
    }
    before = text;
  }

  private Compilation readsAlike(Source source) {
    SourceReader reader = new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES);
    Path place = folder.resolve("fuzzed.wattle");
    Compilation afresh = new Compiler(reader).compile(source, place);
    Compilation typed = new Compiler(reader, remembering).compile(source, place);
    List<String> one = shown(afresh.findings());
    List<String> other = shown(typed.findings());
    require(one.equals(other), "read afresh and while typed: " + one + " and " + other);
    require(!afresh.hasInternalError(), "internal error: " + one);
    return afresh;
  }

  private static List<String> shown(List<Finding> findings) {
    return findings.stream()
        .map(f -> f.rule() + "|" + f.headline() + "|" + f.place().map(p -> p.span().start() + "-" + p.span().end()).orElse(""))
        .toList();
  }

  /** Tidying twice is tidying once, and leaves the house as it is. */
  private void tidies(Source source, Compilation plan) {
    Checked<String> once = Formatter.format(source);
    if (!once.findings().isEmpty()) {
      return;
    }
    Source tidy = new Source(source.name(), once.value());
    Checked<String> twice = Formatter.format(tidy);
    require(twice.findings().isEmpty() && twice.value().equals(once.value()), "tidy twice is not tidy once");
    if (!tidy.text().equals(source.text())) {
      Compilation after = compiled(tidy);
      require(rules(after).equals(rules(plan)), "tidy changes what is found: " + rules(plan) + " and " + rules(after));
      require(Comparison.of(plan(plan), plan(after)).isEmpty(), "tidy changes the house");
    }
  }

  /** Without blanks, since a headline may quote the plan as it is written. */
  private static List<String> rules(Compilation plan) {
    return plan.findings().stream().map(f -> f.rule() + " " + f.headline().replace(" ", "")).sorted().toList();
  }

  private Compilation compiled(Source source) {
    return new Compiler(new SourceReader(Map.of(), SourceReader.USUAL_MOST_BYTES)).compile(source, folder.resolve("fuzzed.wattle"));
  }

  private static Plan plan(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }

  /**
   * What mending left of a text is not mended any further by mending it again; what was applied is found once less, and a text that was
   * read in full still is.
   */
  private void mends(Source source) {
    Mender mender = new Mender(text -> compiled(text).findings(), (found, text) -> FixTrial.wasHidden(found, compiled(text)),
        (fix, one, other) -> FixTrial.objection(fix, compiled(one), compiled(other)), Set.of());
    Mender.Mended once = mender.mend(source);
    require(mender.mend(new Source(source.name(), once.text())).applied().isEmpty(), "mending twice is not mending once");
    if (once.applied().isEmpty()) {
      require(once.text().equals(source.text()), "mending changes a text in which it mends nothing");
      return;
    }
    Compilation was = compiled(source);
    Compilation is = compiled(new Source(source.name(), once.text()));
    require(was.completeness() == Completeness.IN_PIECES || is.completeness() != Completeness.IN_PIECES, "mending takes a plan to pieces");
    require(was.completeness() == Completeness.IN_PIECES || is.findings().size() < was.findings().size(),
        "mending leaves as many findings: " + shown(was.findings()) + " and " + shown(is.findings()));
  }

  /** Two plans that have little to do with each other differ one way as they do the other way round. */
  private void compares(Source other, Compilation plan) {
    Plan one = plan(compiled(other));
    require(Comparison.of(one, plan(plan)).mirrored().equals(Comparison.of(plan(plan), one)), "compared the other way round");
  }

  /** Runs a command of {@link #COMMANDS} on a text, beside the one that came before. */
  void runs(String text, String command) {
    try {
      Path plan = Files.writeString(folder.resolve("fuzzed.wattle"), text);
      Path other = Files.writeString(folder.resolve("other.wattle"), before);
      String[] arguments = command.split(" ");
      for (int i = 0; i < arguments.length; i++) {
        arguments[i] = arguments[i].equals("FILE")
            ? plan.toString()
            : arguments[i].equals("OTHER")
                ? other.toString()
                : WRITTEN.contains(arguments[i]) ? folder.resolve(arguments[i]).toString() : arguments[i];
      }
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
      require(code >= 0 && code < 3, command + " ended with " + code + ": " + err);
      if (!allowsWords(text)) {
        require(!NoFigure.isIn(out.toString()), command + " shows a figure that is none");
        for (String argument : command.split(" ")) {
          if (WRITTEN.contains(argument)) {
            require(!NoFigure.isIn(folder.resolve(argument)), command + " writes a figure that is none");
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether the plans have words that look like a figure that is none; an output may quote them. */
  private boolean allowsWords(String text) {
    return NoFigure.isIn(text) || NoFigure.isIn(before);
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new AssertionError(otherwise);
    }
  }
}
