package wattle.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.edit.Formatter;
import wattle.emit.document.findings.TextFindings;
import wattle.emit.media.text.VisibleWriter;
import wattle.finding.Checked;
import wattle.finding.Finding;
import wattle.finding.Source;

/** {@code tidy}: sets plans in order, in place. */
@Command(
    name = "tidy",
    description = "Lays a plan out: spaces, columns, forks under their box. The content does not change.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle tidy examples/alder-court/house.wattle",
        "  wattle tidy --check examples/alder-court/house.wattle",
        "  wattle tidy --check examples",
        "  cat examples/cottage/house.wattle | wattle tidy -",
    })
final class TidyCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = {
      "Plans, folders with plans, or - to read standard input and write standard output.",
      "In a folder, every file whose name ends in .wattle is laid out.",
  })
  private List<String> files;

  @Option(names = "--check", description = "Change nothing; list the files that need it, and exit with 1.")
  private boolean check;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    boolean anyFolder = NamedPlans.anyFolder(files);
    NamedPlans plans = NamedPlans.everyFile(files);
    Progress progress = new Progress(err, anyFolder && Terminal.showsProgress(), plans.names().size());
    int[] codes = new int[ExitCode.BUG + 1];
    int unfound = plans.tellProblems(err);
    InOrder.each(plans.names(), this::tidied, tidied -> {
      progress.clear();
      codes[tidied.tell(out, err)]++;
      progress.step();
      return true;
    });
    progress.clear();
    if (anyFolder && !plans.names().isEmpty()) {
      err.println(summary(plans.names().size(), codes));
    }
    return Math.max(unfound, codes[ExitCode.USAGE] > 0 ? ExitCode.USAGE : codes[ExitCode.FOUND] > 0 ? ExitCode.FOUND : ExitCode.FINE);
  }

  private String summary(int all, int[] codes) {
    int left = codes[ExitCode.FOUND];
    return "wattle: " + all + (all == 1 ? " file" : " files") + ", "
        + (check ? left + " not in order" : left + " left as " + (left == 1 ? "it is" : "they are"))
        + (codes[ExitCode.USAGE] > 0 ? ", " + codes[ExitCode.USAGE] + " not read or written" : "");
  }

  /** What became of a file, told when all before it were. */
  private interface Tidied {
    /** The exit code that it leads to comes back. */
    int tell(PrintWriter out, PrintWriter err);
  }

  private Tidied tidied(String file) {
    try {
      return tidy(file);
    } catch (Failure e) {
      // One file that cannot be read or written is no reason to leave the others out of order.
      return (out, err) -> {
        err.println("wattle: " + e.getMessage());
        return ExitCode.USAGE;
      };
    }
  }

  private Tidied tidy(String file) {
    Source source = input.read(file);
    Checked<String> formatted = Formatter.format(source);
    if (!formatted.findings().isEmpty()) {
      return (out, err) -> leftAsItIs(source, formatted.findings(), file, out, err);
    }
    boolean inOrder = formatted.value().equals(source.text());
    if (check) {
      return (out, err) -> {
        if (!inOrder) {
          out.println(file);
        }
        return inOrder ? ExitCode.FINE : ExitCode.FOUND;
      };
    }
    if (file.equals("-")) {
      return (out, err) -> {
        printAsItIs(out, formatted.value());
        return ExitCode.FINE;
      };
    }
    if (!inOrder) {
      ResultOutput.revise(Path.of(file), source.text(), formatted.value());
    }
    return (out, err) -> {
      if (!inOrder) {
        err.println(file + ": set in order");
      }
      return ExitCode.FINE;
    };
  }

  private int leftAsItIs(Source source, List<Finding> findings, String file, PrintWriter out, PrintWriter err) {
    err.print(new TextFindings(Terminal.wantsColor(), Map.of(), VisibleWriter.columns(err)).render(findings));
    err.println(file + ": not changed, because it cannot be read in full");
    if (file.equals("-") && !check) {
      printAsItIs(out, source.text());
    }
    return ExitCode.FOUND;
  }

  /** What goes on to a file or another program must be the plan itself; on a terminal it is looked at. */
  private static void printAsItIs(PrintWriter out, String plan) {
    if (!Terminal.isThere() && out instanceof VisibleWriter shown) {
      shown.unchanged().print(plan);
    } else {
      VisibleWriter.printWhole(out, plan);
    }
  }
}
