package wattle.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import wattle.compiler.Compilation;
import wattle.emit.findings.JsonFindings;
import wattle.emit.findings.SarifFindings;
import wattle.emit.findings.TextFindings;
import wattle.finding.Finding;
import wattle.finding.Severity;

/** {@code check}: the findings of one or more plans. */
@Command(
    name = "check",
    description = "Lists what is wrong with a plan, where, why, and what would mend it.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Examples:",
      "  wattle check examples/alder-court/house.wattle",
      "  wattle check --format sarif examples/alder-court/house.wattle",
      "  cat examples/cottage/house.wattle | wattle check -",
    })
final class CheckCommand implements Callable<Integer> {
  /** What findings are written as. */
  enum Format {
    TEXT,
    JSON,
    SARIF
  }

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Plans, or - for standard input.")
  private List<String> files;

  @Option(names = "--format", description = "text, json or sarif (default: text).", defaultValue = "TEXT")
  private Format format;

  @Option(names = "--strict", description = "Warnings and silenced errors count as errors too.")
  private boolean strict;

  @Option(names = "--assumptions", description = "List what the plan does not say and was taken as usual.")
  private boolean assumptions;

  @Mixin private PlanInput input;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    List<Compilation> plans = files.parallelStream().map(input::compile).toList();
    List<Finding> findings = new ArrayList<>();
    plans.forEach(p -> findings.addAll(p.findings()));
    switch (format) {
      case TEXT -> {
        out.print(new TextFindings(Terminal.wantsColour()).render(findings));
        if (assumptions) {
          plans.forEach(p -> p.house().assumed().forEach(a -> out.println("assumed in " + p.source().name() + ": " + a)));
        }
        out.println(TextFindings.summary(findings, String.join(", ", plans.stream().map(p -> p.source().name()).toList())));
      }
      case JSON -> out.print(JsonFindings.render(findings));
      case SARIF -> out.print(SarifFindings.render(findings, Version.number()));
    }
    return findings.stream().anyMatch(this::fails) ? ExitCode.FOUND : ExitCode.FINE;
  }

  private boolean fails(Finding finding) {
    if (strict) {
      return finding.severity() == Severity.ERROR || finding.severity() == Severity.WARNING && finding.silenced().isEmpty();
    }
    return isError(finding);
  }

  /** An error that stands. */
  static boolean isError(Finding finding) {
    return finding.severity() == Severity.ERROR && finding.silenced().isEmpty();
  }
}
