package wattle.syntax;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Source;

/**
 * What is wrong in a text: of very many mistakes the first by their places are kept, and the others are counted, so that a file that is no
 * plan at all fills neither the screen nor the memory.
 */
final class Mistakes {
  /** Most findings that one file may give here. */
  static final int MOST_TOLD = 100;

  /** So many are kept before they are put in order: many times those told, so that places out of order among them are no matter. */
  private static final int MOST_KEPT = 20_000;

  private final Set<Finding> kept = new LinkedHashSet<>(); // a mistake may end two statements at once
  private long more;

  void add(Finding mistake) {
    if (kept.size() < MOST_KEPT) {
      kept.add(mistake);
    } else {
      more++;
    }
  }

  /** Adds those of a text behind all that were added, or of another look at the same text. */
  void addAll(Mistakes others) {
    others.kept.forEach(this::add);
    more += others.more;
  }

  /** Those that were kept, in the order in which they were found. */
  Set<Finding> first() {
    return kept;
  }

  /** The findings in order, no more than a reader can bear. */
  List<Finding> told(Source source) {
    List<Finding> findings = new ArrayList<>(kept);
    findings.sort(Finding.BY_PLACE);
    if (findings.size() <= MOST_TOLD) {
      return findings;
    }
    long left = findings.size() - MOST_TOLD + more;
    List<Finding> told = new ArrayList<>(findings.subList(0, MOST_TOLD));
    told.add(
        Finding.error(Stop.TOO_MANY_MISTAKES.rule(), left + " more mistakes in the text of " + source.name())
            .at(findings.get(MOST_TOLD).place().orElseThrow().span(), "the next of them")
            .because("The first " + MOST_TOLD + " are listed; fix those and check again.")
            .build());
    return told;
  }
}
