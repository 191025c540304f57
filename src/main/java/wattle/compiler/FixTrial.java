package wattle.compiler;

import java.util.List;
import java.util.Optional;
import wattle.finding.Finding;
import wattle.finding.Fix;
import wattle.finding.Severity;
import wattle.finding.Span;
import wattle.trials.Hazards;

/** Holds a fix to what it must never do: make the house more dangerous, as the trials of the house before it and after it tell. */
public final class FixTrial {
  private FixTrial() {}

  /**
   * Why a fix must not be made.
   *
   * @param before the house with the finding
   * @param after the house with the edits made
   * @return absent where nothing speaks against it
   */
  public static Optional<String> objection(Fix fix, Compilation before, Compilation after) {
    // A word spelled as it was meant brings things to light that were there; they are no new dangers.
    boolean paths = fix.safety() == Fix.Safety.SAFE || before.completeness() == Completeness.IN_PIECES;
    List<String> worse = Hazards.of(after.house(), after.library()).worseThan(Hazards.of(before.house(), before.library()), paths);
    if (worse.isEmpty()) {
      return Optional.empty();
    }
    int left = worse.size() - 1;
    return Optional.of(worse.get(0) + (left == 0 ? "" : left == 1 ? ", and one danger more" : ", and " + left + " dangers more"));
  }

  /**
   * Whether a finding that a mended text has could not be found before: rules are asked only of what was understood, so that a text in
   * pieces hides what they would find.
   */
  public static boolean wasHidden(Finding found, Compilation before) {
    return before.completeness() == Completeness.IN_PIECES && !StructurePages.names().contains(found.rule());
  }

  /**
   * The first error in the text that a fix makes on a line that it changes; absent where it makes none. What is wrong elsewhere, and what
   * rules find, may have been hidden behind the mistake that it mends.
   */
  public static Optional<Finding> brings(Fix fix, Compilation before, Compilation after) {
    return after.findings().stream()
        .filter(f -> f.severity() == Severity.ERROR && StructurePages.names().contains(f.rule()))
        .filter(f -> before.findings().stream().noneMatch(f::isOfSameFault))
        .filter(f -> f.place().filter(m -> fix.edits().stream().anyMatch(e -> isOnLine(m.span(), e.span()))).isPresent())
        .findFirst();
  }

  /** Whether two spans of one file begin on the same line; edits before it on other lines are too rare to be counted. */
  private static boolean isOnLine(Span found, Span edited) {
    Span one = found.written();
    Span other = edited.written();
    return one.source().name().equals(other.source().name()) && one.line() == other.line();
  }

  /** Whether a finding is gone from a house; a fix that leaves it does nothing. */
  public static boolean removes(Finding finding, Compilation before, Compilation after) {
    return count(finding, after) < count(finding, before);
  }

  private static long count(Finding finding, Compilation plan) {
    return plan.findings().stream().filter(finding::isOfSameFault).count();
  }
}
