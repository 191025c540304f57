package wattle.emit.document.findings;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import wattle.compiler.Compilation;
import wattle.finding.Finding;

/**
 * One document about many plans, written plan by plan, so that none has to be kept for it. For programs it is the same document as of
 * one plan.
 */
public interface OfEachPlan {
  /**
   * What is printed of a plan.
   *
   * @param plan as it was compiled
   * @param facts its findings, each fact once
   * @param judged what was judged of it
   * @param assumed what was assumed of it; empty where nobody asked
   */
  record Told(Compilation plan, List<Finding> facts, Judged judged, List<JsonFindings.OfPlan> assumed) {
    public Told {
      facts = List.copyOf(facts);
      assumed = List.copyOf(assumed);
    }
  }

  /** Writes what belongs to one plan. */
  void plan(Told told);

  /**
   * Writes what stands at the end; nothing may follow.
   *
   * @param whole whether all plans that were named could be read
   */
  void end(boolean whole);

  /** For people; each plan ends with what was judged of it. */
  static OfEachPlan text(PrintWriter out, TextOptions options) {
    return new EachPlanAsText(out, options);
  }

  /**
   * How text is laid out.
   *
   * @param colored whether a terminal shows its colors
   * @param columns of the terminal; absent where none shows it
   * @param ownRules of a plan, with what is typed to have each explained
   */
  record TextOptions(boolean colored, OptionalInt columns, Function<Compilation, Map<String, String>> ownRules) {}
}
