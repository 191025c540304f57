package wattle;

import java.util.List;
import java.util.Set;
import wattle.compiler.Compilation;
import wattle.finding.Finding;

/**
 * Findings of a plan in a test that is not about rules: what the packs say of so bare a house, and what cannot be known of it, is
 * left aside.
 */
public final class Structure {
  private static final Set<String> NOT_KNOWN = Set.of("calculated-load-unknown", "fault-current-unknown", "clearing-time-unknown",
      "service-run-unstated", "supply-rating-unknown");

  private Structure() {}

  public static List<Finding> findings(Compilation plan) {
    return known(plan.findings()).stream().filter(f -> !plan.library().rules().containsKey(f.rule())).toList();
  }

  /** Without those that say what could not be worked out. */
  public static List<Finding> known(List<Finding> findings) {
    return findings.stream().filter(f -> !NOT_KNOWN.contains(f.rule())).toList();
  }
}
