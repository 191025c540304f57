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
import wattle.finding.Source;

/** {@code tidy}: sets plans in order, in place. */
@Command(
    name = "tidy",
    description = "Sets a plan in order: spaces, columns, forks under their box. What it says does not change.",
    mixinStandardHelpOptions = true,
    footer = {
        "",
        "Examples:",
        "  wattle tidy examples/alder-court/house.wattle",
        "  wattle tidy --check examples/alder-court/house.wattle",
        "  cat examples/cottage/house.wattle | wattle tidy -",
    })
final class TidyCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Plans, or - to go from standard input to output.")
  private List<String> files;

  @Option(names = "--check", description = "Change nothing; list the files that are not in order and exit with 1.")
  private boolean check;

  @Mixin
  private PlanInput input;

  @CommandLine.Spec
  private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    int code = ExitCode.FINE;
    for (String file : files) {
      try {
        code = Math.max(code, tidy(file));
      } catch (Failure e) {
        // One file that cannot be read or written is no reason to leave the others out of order.
        spec.commandLine().getErr().println("wattle: " + e.getMessage());
        code = ExitCode.USAGE;
      }
    }
    return code;
  }

  private int tidy(String file) {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Source source = input.read(file);
    Checked<String> formatted = Formatter.format(source);
    if (!formatted.findings().isEmpty()) {
      err.print(new TextFindings(Terminal.wantsColor(), Map.of(), VisibleWriter.columns(err)).render(formatted.findings()));
      err.println(file + ": left as it is, since it cannot be read in full");
      if (file.equals("-") && !check) {
        printAsItIs(out, source.text());
      }
      return ExitCode.FOUND;
    }
    if (check) {
      boolean inOrder = formatted.value().equals(source.text());
      if (!inOrder) {
        out.println(file);
      }
      return inOrder ? ExitCode.FINE : ExitCode.FOUND;
    }
    if (file.equals("-")) {
      printAsItIs(out, formatted.value());
    } else if (!formatted.value().equals(source.text())) {
      ResultOutput.revise(Path.of(file), source.text(), formatted.value());
      err.println(file + ": set in order");
    }
    return ExitCode.FINE;
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
