package wattle.cli;

import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compiler.Compilation;
import wattle.emit.document.permit.PermitPage;

/** {@code permit}: the summary for the permit office. */
@Command(
    name = "permit",
    description = "Sums a plan up for the permit office: service, load calculation, panels, findings, what was silenced, sources.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle permit examples/alder-court/house.wattle --out permit.pdf",
        "  wattle permit examples/kitchen-renovation/after.wattle --paper A4 --out permit.pdf",
    })
final class PermitCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Mixin
  private SurveyOption survey = new SurveyOption();

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
    Format format = document.chosen(output, Format.HTML, Set.of(Format.HTML, Format.PDF));
    String paper = document.paper();
    Compilation plan = survey.of(input.compile(file));
    DocumentFormat.write(new PermitPage(plan).page(paper), format, output, spec.commandLine().getOut());
    return BesideFindings.report(plan, spec);
  }
}
