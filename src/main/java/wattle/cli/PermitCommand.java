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
import wattle.emit.document.permit.PermitPage;
import wattle.emit.document.permit.WorksheetForm;
import wattle.emit.media.table.SheetJson;
import wattle.emit.media.text.VisibleWriter;

/** {@code permit}: the summary for the inspector. */
@Command(
    name = "permit",
    description = "Summarizes a plan for the inspector: service, load calculation, panels, findings, silenced findings, sources.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle permit examples/alder-court/house.wattle --out permit.pdf",
        "  wattle permit examples/kitchen-renovation/after.wattle --paper A4 --out permit.pdf",
        "  wattle permit --worksheet examples/alder-court/house.wattle --out loads.pdf",
    })
final class PermitCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(
      names = "--worksheet",
      description = "Only the load calculation of each service, on one page with room for a name and a license number; also as text "
          + "and json.")
  private boolean worksheet;

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
    Set<Format> known = worksheet
        ? Set.of(Format.HTML, Format.PDF, Format.TEXT, Format.JSON)
        : Set.of(Format.HTML, Format.PDF, Format.TEXT);
    Format format = document.chosen(output, Format.TEXT, known);
    String paper = document.paper();
    Compilation plan = survey.of(input.compile(file));
    if (worksheet) {
      form(new WorksheetForm(plan), format, paper);
    } else if (format == Format.TEXT) {
      output.write(new PermitPage(plan).text(VisibleWriter.columns(spec.commandLine().getOut())), spec.commandLine().getOut());
    } else {
      DocumentFormat.write(new PermitPage(plan).page(paper), format, output, spec.commandLine().getOut());
    }
    return BesideFindings.report(plan, spec);
  }

  private void form(WorksheetForm form, Format format, String paper) {
    if (form.isEmpty()) {
      throw new Failure(
          file + " has no load calculation to put into a form; wattle table --of worksheet --compare-methods names what is missing");
    }
    switch (format) {
      case TEXT -> output.write(form.text(VisibleWriter.columns(spec.commandLine().getOut())), spec.commandLine().getOut());
      case JSON -> output.writeWhole(SheetJson.render(form.sheets()), spec.commandLine().getOut());
      default -> DocumentFormat.write(form.page(paper), format, output, spec.commandLine().getOut());
    }
  }
}
