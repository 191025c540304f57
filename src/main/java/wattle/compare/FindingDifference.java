package wattle.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import wattle.finding.Finding;

/**
 * Findings that only one of two revisions has, each counted as often as it is there. Two are the same when they say the
 * same; where names changed, when one says what the other does by the names of its own plan.
 */
record FindingDifference(List<Finding> appeared, List<Finding> gone) {
  static FindingDifference between(List<Finding> before, List<Finding> after, Renames renames) {
    // As they are worded first: a name that changed may be a word of another sentence, which did not change.
    FindingDifference left = unlike(before, after, UnaryOperator.identity());
    left = unlike(left.gone, left.appeared, renames::inSentence);
    FindingDifference back = unlike(left.appeared, left.gone, renames.mirrored()::inSentence);
    return new FindingDifference(back.gone, back.appeared);
  }

  /** Those that could be decided in both: a finding that nobody could look for has not gone. */
  FindingDifference asked(Plan before, Plan after) {
    return new FindingDifference(
        appeared.stream().filter(f -> !before.undecided().has(f)).toList(),
        gone.stream().filter(f -> !after.undecided().has(f)).toList());
  }

  /** These and others. */
  FindingDifference and(FindingDifference more) {
    return new FindingDifference(Stream.concat(appeared.stream(), more.appeared.stream()).toList(),
        Stream.concat(gone.stream(), more.gone.stream()).toList());
  }

  /** What is left out of those that are told. */
  List<Gap> unasked(FindingDifference told) {
    List<Gap> gaps = new ArrayList<>();
    gap(appeared.size() - told.appeared.size(), false, gaps);
    gap(gone.size() - told.gone.size(), true, gaps);
    return gaps;
  }

  private static void gap(int count, boolean later, List<Gap> gaps) {
    if (count > 0) {
      String what = "what rules found in the other revision (" + (count == 1 ? "1 finding)" : count + " findings)");
      gaps.add(new Gap(what, later, "its errors put them in doubt until they are fixed"));
    }
  }

  private static FindingDifference unlike(List<Finding> before, List<Finding> after, UnaryOperator<String> words) {
    Map<String, Integer> unmatched = new HashMap<>();
    before.forEach(f -> unmatched.merge(key(f, words), 1, Integer::sum));
    Map<String, Integer> matched = new HashMap<>();
    List<Finding> appeared = new ArrayList<>();
    for (Finding finding : after) {
      String key = key(finding, UnaryOperator.identity());
      if (matched.getOrDefault(key, 0) < unmatched.getOrDefault(key, 0)) {
        matched.merge(key, 1, Integer::sum);
      } else {
        appeared.add(finding);
      }
    }
    List<Finding> gone = new ArrayList<>();
    for (Finding finding : before) {
      String key = key(finding, words);
      if (matched.getOrDefault(key, 0) > 0) {
        matched.merge(key, -1, Integer::sum);
      } else {
        gone.add(finding);
      }
    }
    return new FindingDifference(appeared, gone);
  }

  private static String key(Finding finding, UnaryOperator<String> words) {
    return finding.rule() + " " + words.apply(finding.headline()) + finding.silenced().map(s -> " silenced").orElse("");
  }
}
