package wattle.emit.document.findings;

import java.io.PrintWriter;

/** Findings of many plans for people: those of a plan, then one line that says of which plan, then what was judged of it. */
final class EachPlanAsText implements OfEachPlan {
  private final PrintWriter out;
  private final TextOptions options;

  EachPlanAsText(PrintWriter out, TextOptions options) {
    this.out = out;
    this.options = options;
  }

  @Override
  public void plan(Told told) {
    String name = told.plan().source().name();
    out.print(new TextFindings(options.colored(), options.ownRules().apply(told.plan()), options.columns()).render(told.facts()));
    told.assumed().forEach(p -> p.assumed().forEach(a -> out.println("assumed in " + p.plan() + ": " + a.line())));
    out.println(name + ": " + FindingCounts.of(told.facts()).words());
    told.judged().lines().forEach(l -> out.println(name + ": " + l));
    out.flush();
  }

  @Override
  public void end(boolean whole) {
    out.flush();
  }
}
