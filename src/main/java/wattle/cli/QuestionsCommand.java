package wattle.cli;

import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.questions.QuestionPage;
import wattle.emit.document.questions.QuestionText;
import wattle.questions.QuestionSheet;

/** {@code questions}: a sheet about one house for who learns in it. */
@Command(
    name = "questions",
    description = "Makes a sheet of questions about this house, easy to hard, with the answer key on a separate page.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle questions examples/alder-court/house.wattle",
        "  wattle questions examples/cottage/house.wattle --seed 7 -o sheet.pdf",
    })
final class QuestionsCommand implements Callable<Integer> {
  private static final int MOST = 30;

  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-s", "--seed"}, paramLabel = "NUMBER", defaultValue = "1",
      description = "A different number makes a different sheet (default: 1).")
  private long seed;

  @Option(names = {"-n", "--count"}, paramLabel = "NUMBER", defaultValue = "14",
      description = "Number of questions, 1 to " + MOST + "; fewer if the house has fewer to ask (default: ${DEFAULT-VALUE}).")
  private int count;

  @Mixin
  private DocumentFormat document;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if (count < 1 || count > MOST) {
      throw new Failure("--count takes 1 to " + MOST);
    }
    Format format = document.chosen(output, Format.TEXT, Set.of(Format.TEXT, Format.HTML, Format.PDF));
    String paper = document.paper();
    Compilation plan = input.compile(file);
    if (!plan.house().doubts().isEmpty()) {
      throw new Failure(
          file + " has errors that put its figures in doubt, so no questions were made; wattle check " + file + " shows them");
    }
    QuestionSheet sheet = QuestionSheet.of(plan, seed, count);
    if (sheet.questions().isEmpty()) {
      throw new Failure(file + " has nothing to ask about: no panel with breakers, and no circuit with a device on it");
    }
    if (format == Format.TEXT) {
      output.write(QuestionText.render(sheet, file), spec.commandLine().getOut());
    } else {
      DocumentFormat.write(QuestionPage.of(sheet, file, paper, format == Format.HTML), format, output, spec.commandLine().getOut());
    }
    return BesideFindings.report(plan, spec);
  }
}
