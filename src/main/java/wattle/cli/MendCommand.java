package wattle.cli;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.StructurePages;
import wattle.compiler.FixTrial;
import wattle.edit.Mender;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.text.VisibleWriter;
import wattle.finding.Finding;
import wattle.finding.NearNames;
import wattle.finding.Source;

/** {@code mend}: applies fixes that leave the house as it is. */
@Command(
    name = "mend",
    description = "Shows the fixes that change the text but not the house; --write applies them.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle mend examples/broken/unit-missing.wattle",
        "  wattle mend --rule pole-count examples/broken/pole-count.wattle",
    })
final class MendCommand implements Callable<Integer> {
  private static final int LINES_AROUND = 1;

  @Parameters(arity = "1", paramLabel = "FILE", description = "The plan. Fix the files that it uses one at a time.")
  private String file;

  @Option(names = "--write", description = "Change the file.")
  private boolean write;

  @Option(
      names = "--rule",
      paramLabel = "RULE",
      completionCandidates = KnownWords.Rules.class,
      description = "Also apply the fix of this rule, which changes the house.")
  private Set<String> rules = Set.of();

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if (file.equals("-") && write) {
      throw new Failure("standard input cannot be changed in place; leave --write out");
    }
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Source source = input.read(file);
    refuseUnknownRules(source);
    Mender.Mended mended = new Mender(
        text -> input.compile(text, file).findings(),
        (found, before) -> FixTrial.wasHidden(found, input.compile(before, file)),
        (fix, before, after) -> FixTrial.objection(fix, input.compile(before, file), input.compile(after, file)), rules).mend(source);
    List<String> before = source.text().lines().toList();
    List<String> after = mended.text().lines().toList();
    UnifiedDiffUtils.generateUnifiedDiff(file, file + " (mended)", before, DiffUtils.diff(before, after), LINES_AROUND)
        .forEach(line -> VisibleWriter.printWhole(out, line + System.lineSeparator()));
    if (write && !mended.applied().isEmpty()) {
      ResultOutput.revise(Path.of(file), source.text(), mended.text());
    }
    for (Mender.Refused refused : mended.refused()) {
      err.println("not mended, " + refused.finding().headline() + ": " + refused.why());
    }
    Set<String> changing = changing(mended, source);
    if (!changing.isEmpty()) {
      err.println(
          "not applied, because the fix changes the house: " + String.join(", ", changing) + "; --rule " + changing.iterator().next()
              + " makes it");
    }
    err.println(
        mended.applied().size() + " mended" + (write || mended.applied().isEmpty() ? "" : " (nothing written; --write does)") + "; left: "
            + TextFindings.summary(input.compile(new Source(source.name(), mended.text()), file).facts(), file));
    return mended.left().stream().anyMatch(CheckCommand::isError) ? ExitCode.FOUND : ExitCode.FINE;
  }

  /** Rules whose fix could be made, and was not asked for. */
  private Set<String> changing(Mender.Mended mended, Source source) {
    Set<String> changing = new TreeSet<>();
    mended.left().stream()
        .filter(f -> !rules.contains(f.rule()) && Mender.canMend(f, source)
            && mended.refused().stream().noneMatch(r -> r.finding().rule().equals(f.rule())))
        .forEach(f -> changing.add(f.rule()));
    return changing;
  }

  /** A name that no rule has would mend nothing, and look as if there were nothing to mend. */
  private void refuseUnknownRules(Source source) {
    if (rules.isEmpty()) {
      return;
    }
    Set<String> known = new TreeSet<>(input.compile(source, file).library().rules().keySet());
    known.addAll(StructurePages.names());
    for (String rule : rules) {
      if (!known.contains(rule)) {
        List<String> near = NearNames.of(rule, known);
        throw new Failure(
            "no rule of " + file + " is called '" + rule + "'"
                + (near.isEmpty() ? "; wattle check shows the name of each finding" : "; did you mean " + String.join(", ", near) + "?"));
      }
    }
  }
}
