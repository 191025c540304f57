package wattle.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import wattle.cli.DocumentFormat.Format;
import wattle.compare.Comparison;
import wattle.compare.Description;
import wattle.compare.Plan;
import wattle.compiler.Compilation;
import wattle.compiler.Completeness;
import wattle.emit.document.changes.Changes;
import wattle.emit.document.changes.ChangesPage;
import wattle.emit.media.drawing.Drawing;
import wattle.emit.media.text.VisibleWriter;
import wattle.emit.view.oneline.OneLineDifference;
import wattle.finding.Source;

/** {@code compare}: what changed between two revisions, in the house and not in its lines. */
@Command(
    name = "compare",
    description = {
        "Shows what changed between two revisions of a plan, and what that affects.",
        "Figures are in the units of the later plan. JSON names the unit of each figure; those units are always the same.",
    },
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle compare before.wattle after.wattle",
        "  wattle compare --git HEAD~1 examples/alder-court/house.wattle",
        "  wattle compare --describe examples/cottage/house.wattle",
        "  wattle compare --out changes.html before.wattle after.wattle",
        "  wattle compare --picture changes.svg before.wattle after.wattle",
        "  wattle compare --picture changes.pdf --paper A3 before.wattle after.wattle",
        "",
        "For git: diff.wattle.command = 'wattle compare --as-driver'.",
    })
final class CompareCommand implements Callable<Integer> {
  private static final Set<Format> FORMATS = Set.of(Format.TEXT, Format.HTML, Format.JSON, Format.PDF, Format.MD);

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "The earlier plan, then the later one.")
  private List<String> files;

  @Option(names = "--git", paramLabel = "REV", description = "Compare this revision of the plan with the file as it is.")
  private String revision;

  @Option(names = "--as-driver", description = "Take the arguments that git passes to an external diff command.")
  private boolean driver;

  @Option(names = "--describe", description = "Print one plan as sorted properties, for text comparison tools.")
  private boolean describe;

  @Option(names = {"-f", "--format"},
      description = "text, html, pdf, md or json (default: from the file name after --out, otherwise text).")
  private Format format;

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Also draw both one-line diagrams as one picture that marks what was added, removed and changed; .svg, .png or .pdf.")
  private String picture;

  @Mixin
  private SurveyOption survey = new SurveyOption();

  @Mixin
  private PaperOption paper;

  @Mixin
  private ResultOutput output;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    Format chosen = DocumentFormat.chosen(format, output, Format.TEXT, FORMATS, out);
    boolean page = chosen == Format.HTML || chosen == Format.PDF;
    if (page) {
      paper.isGiven();
    } else if (picture == null) {
      paper.refuseWithout("--picture");
    } else {
      PictureFile.named(picture);
      paper.isGiven();
    }
    if (page && picture != null) {
      throw new ParameterException(spec.commandLine(), "a page has the picture in it; leave --picture out");
    }
    if (describe) {
      refuse("--describe", output.file().isPresent(), "--out");
      expect(1, "--describe takes one plan");
      refuse("--describe", driver, "--as-driver");
      refuse("--describe", revision != null, "--git");
      refuse("--describe", picture != null, "--picture");
      PlanInput.Legible read = input.legible(files.get(0));
      if (!read.note().isEmpty()) {
        // Without the folder: git has the two texts in two, and their notes would differ in nothing else.
        String name = String.valueOf(java.nio.file.Path.of(files.get(0)).getFileName());
        out.println("note: " + read.note().replace(files.get(0), name) + "; here is what could be read");
      }
      Compilation plan = input.compile(read.source(), files.get(0));
      VisibleWriter.printWhole(out, Changes.description(Description.of(plan.house())));
      WrittenItems.describe(plan, out);
      return ExitCode.FINE;
    }
    if (driver) {
      return asDriver(out);
    }
    if (revision != null) {
      expect(1, "--git takes one plan");
      try (Revision before = Revision.of(revision, java.nio.file.Path.of(files.get(0)))) {
        List<Compilation> plans = both(before.plan().toString(), files.get(0));
        return print(out, plans.get(0), plans.get(1), revision + ":" + files.get(0), files.get(0));
      }
    }
    expect(2, "two plans are compared: the earlier, then the later");
    if (files.stream().allMatch("-"::equals)) {
      throw new ParameterException(spec.commandLine(), "standard input is one plan; name a file for the other");
    }
    List<Compilation> plans = both(files.get(0), files.get(1));
    return print(out, plans.get(0), plans.get(1), files.get(0), files.get(1));
  }

  private List<Compilation> both(String before, String after) {
    return InOrder.both(() -> survey.of(input.compile(before)), () -> survey.of(input.compile(after)));
  }

  private void refuse(String one, boolean given, String other) {
    if (given) {
      throw new ParameterException(spec.commandLine(), one + " and " + other + " exclude each other");
    }
  }

  private void expect(int count, String otherwise) {
    if (files.size() != count) {
      throw new ParameterException(spec.commandLine(), otherwise);
    }
  }

  /**
   * Git gives: path, old file, its hash and mode, new file, its hash and mode; of a renamed file also its new path and what
   * git says of it; of one that is not merged yet the path alone. A difference is no failure to git, and a failure would
   * end its whole output, so that what cannot be read is told as a line of it.
   */
  private int asDriver(PrintWriter out) {
    refuse("--as-driver", revision != null, "--git");
    refuse("--as-driver", picture != null, "--picture");
    refuse("--as-driver", output.file().isPresent(), "--out");
    if (format == Format.HTML) {
      throw new ParameterException(spec.commandLine(), "git shows text: leave --format html out");
    }
    String path = files.get(0);
    if (files.size() == 1) {
      out.println("wattle compare " + path + ": not merged yet");
      return ExitCode.FINE;
    }
    if (files.size() != 7 && files.size() != 9) {
      throw new ParameterException(spec.commandLine(), "--as-driver takes the seven arguments of git, or nine of a renamed file");
    }
    String newPath = files.size() == 9 ? files.get(7) : path;
    boolean appeared = isNothing(files.get(1));
    boolean gone = isNothing(files.get(4));
    out.println("wattle compare " + path + (newPath.equals(path) ? "" : " renamed " + newPath)
        + (appeared ? ": new file" : gone ? ": deleted file" : ""));
    try {
      // Each side is read as if it lay in the place of the file, so that the files it uses are found.
      List<PartsOfRevision> sides = InOrder.both(side(out, path, 1), side(out, newPath, 4));
      PartsOfRevision old = sides.get(0);
      PartsOfRevision now = sides.get(1);
      if (!old.from().equals(now.from())) {
        out.println("the files it uses: before " + (old.from().isEmpty() ? "none" : old.from()) + ", after "
            + (now.from().isEmpty() ? "none" : now.from()));
      }
      Compilation before = old.plan();
      Compilation after = now.plan();
      boolean text = format == null || format == Format.TEXT;
      if (text && (appeared || gone)) {
        out.print(Changes.inShort(Comparison.of(revision(before), revision(after))));
        return ExitCode.FINE;
      }
      if (text) {
        WrittenItems.compare(before, after, out);
      }
      if (text && isPart(before) && isPart(after)) {
        Comparison parts = Comparison.of(revision(before), revision(after));
        out.print(parts.changes().isEmpty() ? Changes.NOTHING + "\n" : Changes.ofParts(parts));
      } else {
        print(out, before, after, "a/" + path, "b/" + newPath);
      }
    } catch (Failure e) {
      out.println(e.getMessage());
    }
    return ExitCode.FINE;
  }

  /** A file of rooms or of one panel, which another plan uses: alone it would be full of errors that the plan has not. */
  private static boolean isPart(Compilation plan) {
    return plan.house().services().isEmpty() && plan.completeness() == Completeness.IN_PIECES || plan.source().text().isEmpty();
  }

  private static boolean isNothing(String file) {
    return file.equals("/dev/null") || file.equals("nul");
  }

  /**
   * One side, still to be compiled. An added or removed file has the null device on it. The working folder's own file is given by its path.
   */
  private Supplier<PartsOfRevision> side(PrintWriter out, String path, int at) {
    String file = files.get(at);
    if (isNothing(file)) {
      return () -> new PartsOfRevision(input.compile(new Source(path, ""), path), "");
    }
    PlanInput.Legible read = input.legible(file);
    if (!read.note().isEmpty()) {
      out.println("note: " + read.note().replace(file, path) + "; here is what could be read");
    }
    String id = file.equals(path) ? "0" : files.get(at + 1);
    return () -> PartsOfRevision.of(new Source(path, read.source().text()), path, id, input);
  }

  private int print(PrintWriter out, Compilation before, Compilation after, String beforeName, String afterName) {
    Comparison comparison = Comparison.of(revision(before), revision(after));
    if (picture != null) {
      OneLineDifference view = new OneLineDifference(before.figures(), after.figures(), comparison);
      List<Drawing> drawings = paper.isGiven() ? paper.sheets(view, after.house()) : List.of(view.drawing());
      output.write(PictureFile.named(picture).of(drawings, view.title() + after.house().title().map(t -> ": " + t).orElse("")));
    }
    Comparison shown = comparison.shownIn(after.house().units());
    Format chosen = DocumentFormat.chosen(format, output, Format.TEXT, FORMATS, out);
    switch (chosen) {
      case MD -> output.write(Changes.markdown(shown, beforeName, afterName), out);
      case JSON -> output.writeWhole(Changes.json(comparison, beforeName, afterName), out);
      case HTML, PDF -> DocumentFormat.write(
          ChangesPage.of(before, after, comparison, beforeName, afterName, paper.page(), chosen == Format.PDF), chosen, output, out);
      default -> output.write(Changes.text(shown), out);
    }
    if (comparison.isEmpty() && chosen == Format.TEXT) {
      (driver ? out : spec.commandLine().getErr()).println(Changes.NOTHING);
    }
    return comparison.isEmpty() ? ExitCode.FINE : ExitCode.FOUND;
  }

  private static Plan revision(Compilation plan) {
    return new Plan(plan.figures(), plan.findings(), plan.ifNew(), plan.completeness() != Completeness.IN_PIECES, plan.undecided());
  }
}
