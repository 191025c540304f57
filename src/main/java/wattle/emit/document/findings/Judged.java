package wattle.emit.document.findings;

import java.util.ArrayList;
import java.util.List;
import wattle.compiler.Compilation;
import wattle.rules.Coverage;
import wattle.rules.Unstated;

/**
 * What was judged of a plan and what was not, so that silence is never taken for a good word.
 *
 * @param plan its name
 * @param codes names of the code packs that it was judged by, beside common practice
 * @param checked at how many places a rule was checked
 * @param notKnown at how many places a rule could not be decided, since the plan does not say
 * @param unstated what it does not say, the facts that are missing at most places first
 * @param inDoubt at how many places a rule could not be decided after an error
 * @param ifNew findings that existing work would have besides if it were new; of a survey, those that it has
 * @param survey whether existing work was judged as if it were new
 */
public record Judged(
    String plan, List<String> codes, int checked, int notKnown, List<Unstated> unstated, int inDoubt, long ifNew, boolean survey) {
  private static final int NAMED = 3;

  public Judged {
    codes = List.copyOf(codes);
    unstated = List.copyOf(unstated);
  }

  public static Judged of(Compilation plan) {
    Coverage coverage = plan.coverage();
    long ifNew = plan.asNew()
        ? plan.facts().stream().filter(f -> f.ofNewWork().isPresent() && f.silenced().isEmpty()).count()
        : plan.factsIfNew().stream().filter(f -> f.silenced().isEmpty()).count();
    return new Judged(plan.source().name(), plan.house().codes(), coverage.told(), coverage.open(), coverage.unstated(),
        coverage.inDoubt(), ifNew, plan.asNew());
  }

  /** One line for each that is not zero, and one where no code was asked. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (codes.isEmpty()) {
      lines.add("no code is named, so only common practice was checked; wattle check --code us-2023");
    }
    if (checked > 0) {
      lines.add("rules checked at " + places(checked));
    }
    if (notKnown > 0) {
      String more = unstated.size() > NAMED ? " and " + (unstated.size() - NAMED) + " more" : "";
      lines.add("not checked at " + places(notKnown) + " because the plan does not give: "
          + String.join(", ", named()) + more + "; wattle table --of unstated");
    }
    if (inDoubt > 0) {
      lines.add("in doubt at " + places(inDoubt) + " until the errors are fixed");
    }
    if (ifNew > 0 && !survey) {
      lines.add("existing work: " + ifNew + " more " + (ifNew == 1 ? "finding" : "findings") + " if it were new; wattle check --as-new");
    } else if (ifNew > 0) {
      lines.add("existing work: " + ifNew + " of these if it were new");
    }
    return lines;
  }

  /** The first facts that the plan does not state, each with the kind of thing that lacks it. */
  public List<String> named() {
    return unstated.stream().limit(NAMED).map(u -> u.fact() + " of " + u.places().size() + " " + kinds(u)).toList();
  }

  private static String kinds(Unstated unstated) {
    String word = unstated.kind().word();
    boolean one = unstated.places().size() == 1;
    return one ? word : word.endsWith("ch") || word.endsWith("x") ? word + "es" : word + "s";
  }

  private static String places(int count) {
    return count + (count == 1 ? " place" : " places");
  }
}
