package wattle.cli;

import picocli.CommandLine.Option;
import wattle.compiler.Compilation;

/** Whether a plan is looked at as a buyer, an insurer or a renovator would look at it. */
final class SurveyOption {
  @Option(names = "--as-new",
      description = "Check existing work as if it were new. The extra findings are advice, and show the severity that new work would get.")
  private boolean asNew;

  Compilation of(Compilation plan) {
    return asNew ? plan.surveyed() : plan;
  }
}
