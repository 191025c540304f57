package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
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
import wattle.emit.media.picture.PdfPages;
import wattle.emit.media.picture.UnreadablePictureException;
import wattle.finding.Severity;

/** {@code report}: everything about a plan on one page. */
@Command(
    name = "report",
    description = "Writes everything about a plan on one self-contained page: findings beside the plan, pictures, tables, worksheets, "
        + "trials, sources.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle report examples/alder-court/house.wattle --out out",
        "  wattle report examples/cottage/house.wattle --out out/cottage --pdf --force",
        "  wattle report examples/alder-court/house.wattle --out out --pdf --branches --workings",
        "  wattle report examples --out out/all",
    })
final class ReportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "A plan, a folder with plans, or - for standard input.")
  private String file;

  @Option(names = {"-o", "--out"}, required = true, paramLabel = "FOLDER", description = {
      "Folder for report.html; created if missing.",
      "For a folder of plans, each plan gets a folder of its own there.",
  })
  private String folder;

  @Option(names = "--pdf", description = "Also write report.pdf: the same for paper, without the long parts.")
  private boolean pdf;

  @Option(names = "--branches",
      description = "In the PDF, also draw each branch, room and trial, and list each run and box.")
  private boolean branches;

  @Option(names = "--workings", description = "In the PDF, also show how each figure is calculated, and the text of the plan.")
  private boolean workings;

  @Option(names = "--force", description = "Replace a report that Wattle did not make.")
  private boolean force;

  @Mixin
  private SurveyOption survey = new SurveyOption();

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
    Path into = ResultOutput.path(folder);
    if (NamedPlans.isFolder(file)) {
      return ofFolder(Path.of(file), into);
    }
    Written written = write(file, into);
    spec.commandLine().getErr().println(written.line());
    return written.errors > 0 ? ExitCode.FOUND : ExitCode.FINE;
  }

  /** The line about a report that was written; of a plan that none could be written of, why. */
  private record Written(String summary, String names, long errors, int code) {
    String line() {
      return "wattle: " + (names.isEmpty() ? "" : "wrote " + names + ". ") + summary;
    }
  }

  private Written write(String plan, Path into) {
    Compilation compiled = survey.of(input.compile(plan));
    Report report = Report.of(compiled);
    Path written = made(into);
    List<Output> outputs = new ArrayList<>(List.of(Output.text(written.resolve("report.html"), report.html())));
    if (pdf) {
      outputs.add(new Output(written.resolve("report.pdf"), paper(report, new PaperEdition(branches, workings))));
    }
    ResultOutput.write(outputs, force);
    String names = String.join(" and ", outputs.stream().map(o -> o.target().toString()).toList());
    long errors = compiled.count(Severity.ERROR);
    return new Written(TextFindings.summary(compiled.facts(), compiled.source().name()), names, errors,
        errors > 0 ? ExitCode.FOUND : ExitCode.FINE);
  }

  /** One page for each plan of a folder, in a folder of the plan's name. */
  private int ofFolder(Path plans, Path into) {
    NamedPlans named = NamedPlans.toCompile(List.of(file), input.reader());
    PrintWriter err = spec.commandLine().getErr();
    Progress progress = new Progress(err, Terminal.showsProgress(), named.names().size());
    int[] codes = new int[ExitCode.BUG + 1];
    int unfound = named.tellProblems(err);
    InOrder.each(named.names(), plan -> writtenOrNot(plan, into.resolve(folderOf(plan, plans))), written -> {
      progress.clear();
      err.println(written.line());
      codes[written.code]++;
      progress.step();
      return true;
    });
    progress.clear();
    int wrote = codes[ExitCode.FINE] + codes[ExitCode.FOUND];
    if (!named.names().isEmpty()) {
      err.println("wattle: " + wrote + (wrote == 1 ? " report" : " reports") + " in " + into + ", " + codes[ExitCode.FOUND]
          + " of plans with errors" + (codes[ExitCode.USAGE] > 0 ? "; " + codes[ExitCode.USAGE] + " not written" : ""));
    }
    return Math.max(unfound, codes[ExitCode.USAGE] > 0 ? ExitCode.USAGE : codes[ExitCode.FOUND] > 0 ? ExitCode.FOUND : ExitCode.FINE);
  }

  private Written writtenOrNot(String plan, Path into) {
    try {
      return write(plan, into);
    } catch (Failure e) {
      return new Written(e.getMessage(), "", 0, ExitCode.USAGE); // the others are written all the same
    }
  }

  /** Where the report of a plan goes below the folder for all: its own path below theirs, without the ending. */
  private static Path folderOf(String plan, Path plans) {
    Path below = plans.toAbsolutePath().normalize().relativize(Path.of(plan).toAbsolutePath().normalize());
    String name = below.getFileName().toString();
    return below.resolveSibling(name.substring(0, name.lastIndexOf('.')));
  }

  private static byte[] paper(Report report, PaperEdition edition) {
    try {
      return PdfPages.of(report.paper(edition), report.title());
    } catch (UnreadablePictureException e) {
      throw new IllegalStateException("internal error: the page cannot be laid out: " + e.getMessage(), e);
    }
  }

  private static Path made(Path path) {
    try {
      return Files.createDirectories(path);
    } catch (IOException e) {
      throw new Failure("cannot make the folder " + path + ": a file of that name is in the way, or the place cannot be written");
    }
  }
}
