package wattle.cli;

import guru.nidi.graphviz.engine.GraphvizException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.document.report.PaperEdition;
import wattle.emit.document.report.Report;
import wattle.emit.media.file.Output;
import wattle.emit.media.graphviz.DotEngine;
import wattle.emit.media.picture.PdfPages;
import wattle.emit.media.picture.UnreadablePictureException;
import wattle.finding.Severity;

/** {@code report}: everything about a plan on one page. */
@Command(
    name = "report",
    description = "Writes all that is known of a plan as one self-contained page: findings beside the plan, pictures, tables,"
        + " worksheets, trials, sources.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle report examples/alder-court/house.wattle --out out",
        "  wattle report examples/cottage/house.wattle --out out/cottage --pdf --force",
        "  wattle report examples/alder-court/house.wattle --out out --pdf --branches --workings",
    })
final class ReportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, or - for standard input.")
  private String file;

  @Option(names = {"-o", "--out"}, required = true, paramLabel = "FOLDER", description = "Folder for report.html; made if missing.")
  private String folder;

  @Option(names = "--pdf", description = "Write report.pdf beside it: the same for paper, without the long parts.")
  private boolean pdf;

  @Option(names = "--branches",
      description = "Print in the PDF each branch, room and trial drawn, and runs and boxes one by one.")
  private boolean branches;

  @Option(names = "--workings", description = "Print in the PDF how each figure is calculated, and the text of the plan.")
  private boolean workings;

  @Option(names = "--force", description = "Replace a report that Wattle did not make.")
  private boolean force;

  @Mixin
  private SurveyOption survey = new SurveyOption();

  @Mixin
  private EngineOption engine;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    if ((branches || workings) && !pdf) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--branches and --workings say what the PDF has; write --pdf as well, or leave them out");
    }
    DotEngine layout = engine.start();
    Compilation plan = survey.of(input.compile(file));
    Report report = report(plan, layout);
    Path written = madeFolder();
    List<Output> outputs = new ArrayList<>(List.of(Output.text(written.resolve("report.html"), report.html())));
    if (pdf) {
      outputs.add(new Output(written.resolve("report.pdf"), paper(report, new PaperEdition(branches, workings))));
    }
    ResultOutput.write(outputs, force);
    String names = String.join(" and ", outputs.stream().map(o -> o.target().toString()).toList());
    spec.commandLine().getErr().println("wattle: " + TextFindings.summary(plan.facts(), plan.source().name()) + "; wrote " + names);
    return plan.count(Severity.ERROR) > 0 ? ExitCode.FOUND : ExitCode.FINE;
  }

  private static Report report(Compilation plan, DotEngine layout) {
    try {
      return Report.of(plan, layout);
    } catch (GraphvizException e) {
      throw new Failure("the diagram cannot be laid out: " + e.getMessage());
    }
  }

  private static byte[] paper(Report report, PaperEdition edition) {
    try {
      return PdfPages.of(report.paper(edition), report.title());
    } catch (UnreadablePictureException e) {
      throw new IllegalStateException("a page of ours cannot be laid out: " + e.getMessage(), e);
    }
  }

  private Path madeFolder() {
    Path path = ResultOutput.path(folder);
    try {
      return Files.createDirectories(path);
    } catch (IOException e) {
      throw new Failure("cannot make the folder " + path + ": a file of that name is in the way, or the place cannot be written");
    }
  }
}
