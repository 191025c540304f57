package wattle.cli;

import picocli.CommandLine.Option;
import wattle.compiler.Compilation;

/** Whether a plan is looked at as a buyer, an insurer or a renovator would look at it. */
final class SurveyOption {
  @Option(names = "--as-new",
      description = "Judge existing work as if it were new; what only that finds is advice, with the severity that it would have.")
  private boolean asNew;

  Compilation of(Compilation plan) {
    return asNew ? plan.surveyed() : plan;
  }
}
