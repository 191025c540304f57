package wattle;

import java.util.List;
import wattle.compiler.Compilation;
import wattle.finding.Finding;

/** Findings of a plan in a test that is not about rules: what the packs say of so bare a house is left aside. */
public final class Structure {
  private Structure() {}

  public static List<Finding> findings(Compilation plan) {
    return plan.findings().stream().filter(f -> !plan.library().rules().containsKey(f.rule())).toList();
  }
}
