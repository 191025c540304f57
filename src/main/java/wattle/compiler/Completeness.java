package wattle.compiler;

import java.util.List;
import java.util.Set;
import wattle.finding.Finding;
import wattle.finding.Severity;

/** How much of what a plan says the house has that was made from it. */
public enum Completeness {
  /** Reading and binding found no error. */
  SOUND,
  /** All of it is there, and wired so that it must not be built: figures can be had of it, and show the danger. */
  WRONG,
  /** Something was not understood and is left out; figures are of the rest. */
  IN_PIECES;

  /** Errors of structure that leave nothing out. */
  private static final Set<String> LEAVE_NOTHING_OUT = Set.of("shared-neutral-same-leg", "shared-neutral-two-breakers",
      "two-pole-on-one-leg", "three-way-alone");

  /** @param structure what reading and binding found */
  static Completeness of(List<Finding> structure) {
    List<Finding> errors = structure.stream().filter(f -> f.severity() == Severity.ERROR && f.silenced().isEmpty()).toList();
    return errors.isEmpty() ? SOUND : errors.stream().allMatch(f -> LEAVE_NOTHING_OUT.contains(f.rule())) ? WRONG : IN_PIECES;
  }
}
