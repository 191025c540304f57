package wattle.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.document.export.PlanExport;

/** {@code export}: a whole plan for other programs. */
@Command(
    name = "export",
    description = {
        "Writes a whole plan, with its figures and findings, for other programs.",
        "docs/export.md describes the document; its schema is plan.schema.json.",
    },
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle export examples/alder-court/house.wattle --format json",
        "  wattle export examples/cottage/house.wattle --out cottage.json",
    })
final class ExportCommand implements Callable<Integer> {
  /** What a plan is written as. */
  enum Format {
    JSON
  }

  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-f", "--format"}, description = "json (default: json).", defaultValue = "JSON")
  private Format format;

  @Mixin
  private SurveyOption survey = new SurveyOption();

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    Compilation plan = survey.of(input.compile(file));
    String document = switch (format) {
      case JSON -> PlanExport.json(plan);
    };
    output.writeWhole(document, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
