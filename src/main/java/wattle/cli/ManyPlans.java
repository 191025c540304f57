package wattle.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import wattle.emit.document.findings.FindingCounts;
import wattle.emit.document.findings.OfEachPlan;
import wattle.finding.Finding;
import wattle.words.Caution;

/** Checks many plans in one process: the result of each is printed when those of all before it were, and let go then. */
final class ManyPlans {
  private final NamedPlans plans;
  private final Function<String, OfEachPlan.Told> check;
  private final PrintWriter err;
  private FindingCounts counts = FindingCounts.NONE;
  private int failed;
  private int unread;
  private int code;

  /** @param check compiles a plan and has ready all that is printed of it; done by several threads at once */
  ManyPlans(NamedPlans plans, Function<String, OfEachPlan.Told> check, PrintWriter err) {
    this.plans = plans;
    this.check = check;
    this.err = err;
  }

  /** A plan that was checked, or why it could not be. */
  private record Outcome(Optional<OfEachPlan.Told> told, String problem, int code) {}

  /**
   * Checks them all.
   *
   * @param begin begins the document; not called where there is no plan
   * @param fails whether a plan with such a finding fails
   * @param out where the document goes
   * @param summary where the line about all of them goes
   * @return the exit code
   */
  int run(Supplier<OfEachPlan> begin, Predicate<Finding> fails, PrintWriter out, PrintWriter summary) {
    Progress progress = new Progress(err, Terminal.showsProgress(), plans.names().size());
    code = plans.tellProblems(err);
    if (plans.names().isEmpty()) {
      return code;
    }
    OfEachPlan document = begin.get();
    InOrder.each(plans.names(), this::outcome, outcome -> {
      progress.clear();
      tell(outcome, document, fails);
      progress.step();
      // Thousands of plans need not be checked for a reader who has gone, such as head.
      return !out.checkError();
    });
    progress.clear();
    document.end(unread == 0 && plans.problems().isEmpty());
    summary.println(summary());
    return code;
  }

  private Outcome outcome(String name) {
    try {
      return new Outcome(Optional.of(check.apply(name)), "", ExitCode.FINE);
    } catch (Failure e) {
      return new Outcome(Optional.empty(), e.getMessage(), ExitCode.USAGE);
    } catch (RuntimeException e) {
      // The other plans are judged all the same; this one is reported as a bug.
      return new Outcome(Optional.empty(),
          name + ": internal error: " + e + "; please report it with the plan and the command (wattle check --trace " + name
              + " shows more)",
          ExitCode.BUG);
    }
  }

  private void tell(Outcome outcome, OfEachPlan document, Predicate<Finding> fails) {
    if (outcome.told().isEmpty()) {
      unread++;
      code = Math.max(code, outcome.code());
      err.println("wattle: " + outcome.problem());
      return;
    }
    OfEachPlan.Told told = outcome.told().get();
    document.plan(told);
    counts = counts.plus(FindingCounts.of(told.facts()));
    if (told.facts().stream().anyMatch(fails)) {
      failed++;
      code = Math.max(code, ExitCode.FOUND);
    }
    if (told.plan().hasInternalError()) {
      code = ExitCode.BUG;
    }
  }

  private String summary() {
    int all = plans.names().size() - unread;
    return counts.words() + " in " + all + (all == 1 ? " plan" : " plans")
        + (failed > 0 ? ", " + failed + " of them with errors" : "")
        + (unread > 0 ? "; " + unread + " not checked" : "") + ". " + Caution.SHORT;
  }
}
