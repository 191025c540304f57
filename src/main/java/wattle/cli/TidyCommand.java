package wattle.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.edit.Formatter;
import wattle.emit.document.findings.TextFindings;
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
      err.print(new TextFindings(Terminal.wantsColour()).render(formatted.findings()));
      err.println(file + ": left as it is, since it cannot be read in full");
      if (file.equals("-") && !check) {
        out.print(source.text());
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
      out.print(formatted.value());
    } else if (!formatted.value().equals(source.text())) {
      replace(Path.of(file), formatted.value());
      err.println(file + ": set in order");
    }
    return ExitCode.FINE;
  }

  /** The whole file or nothing: written beside it, then moved over it. */
  static void replace(Path file, String text) {
    Path target = file.toAbsolutePath();
    try {
      Path real = Files.isSymbolicLink(target) ? target.toRealPath() : target;
      if (!Files.isWritable(real)) {
        // Moving a new file over it would go through where the folder can be written.
        throw new Failure("cannot write " + file + ": it is read-only; make it writable first");
      }
      Path written = Files.createTempFile(real.getParent(), ".wattle", ".tmp");
      try {
        Files.writeString(written, text, StandardCharsets.UTF_8);
        if (Files.getFileAttributeView(real, java.nio.file.attribute.PosixFileAttributeView.class) != null) {
          Files.setPosixFilePermissions(written, Files.getPosixFilePermissions(real));
        }
        Files.move(written, real, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
      } finally {
        Files.deleteIfExists(written);
      }
    } catch (IOException e) {
      throw new Failure("cannot write " + file + ": " + e.getMessage());
    }
  }
}
