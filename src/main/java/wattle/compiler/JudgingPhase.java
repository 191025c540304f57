package wattle.compiler;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import wattle.finding.Finding;
import wattle.finding.Source;
import wattle.rules.Pace;

/**
 * One of the phases that judge a house. It stands alone: a bug of ours in it costs its own findings, is one finding that says
 * what to report, and leaves those of the others.
 *
 * @param name what it checks, as in {@code "available fault current"}
 * @param findings checks it
 */
record JudgingPhase(String name, Supplier<List<Finding>> findings) {
  /** Name of the finding about a bug of ours. */
  static final String INTERNAL_ERROR = "internal-error";

  /**
   * What the phases find, in their order; they know nothing of each other, so that each may have a processor of its own.
   *
   * @throws CancellationException where the pace says that nobody waits for it
   */
  static List<Finding> all(List<JudgingPhase> phases, Source plan, Pace pace) {
    return pace.over(phases).map(p -> p.find(plan, pace)).flatMap(List::stream).toList();
  }

  private List<Finding> find(Source plan, Pace pace) {
    pace.goOn();
    try {
      return findings.get();
    } catch (CancellationException e) {
      throw e; // no mistake: nobody waits any longer
    } catch (RuntimeException | StackOverflowError e) {
      StackTraceElement[] trace = e.getStackTrace();
      return List.of(
          Finding.error(INTERNAL_ERROR, name + " not checked: internal error")
              .at(plan.span(0, 0), "in this plan")
              .because(e + (trace.length == 0 ? "" : ", at " + trace[0]) + ". All other checks were made.")
              .fix("report it together with the plan")
              .build());
    }
  }
}
