package wattle.cli;

import picocli.CommandLine.Model.CommandSpec;
import wattle.compiler.Compilation;
import wattle.emit.document.findings.FindingCounts;
import wattle.finding.Severity;
import wattle.words.Caution;

/** Findings of a command whose result is something else: they go to standard error, so that the result stays pure. */
final class BesideFindings {
  private BesideFindings() {}

  /**
   * Tells what is wrong with the plan that the result was made of.
   *
   * @return the exit code
   */
  static int report(Compilation plan, CommandSpec spec) {
    long errors = plan.count(Severity.ERROR);
    if (errors > 0) {
      spec.commandLine()
          .getErr()
          .println(
              "wattle: made from a plan with findings: "
                  + FindingCounts.of(plan.facts()).words() + " in " + plan.source().name() + "; wattle check shows them. " + Caution.SHORT);
    }
    return errors > 0 ? ExitCode.FOUND : ExitCode.FINE;
  }
}
