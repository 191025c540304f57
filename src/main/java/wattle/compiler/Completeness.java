package wattle.compiler;

import java.util.List;
import wattle.finding.Finding;
import wattle.finding.Severity;
import wattle.model.Doubts;

/** How much of what a plan says the house has that was made from it. */
public enum Completeness {
  /** Reading and binding found no error. */
  SOUND,
  /** All of it is there, and wired so that it must not be built: figures can be had of it, and show the danger. */
  WRONG,
  /** Something was not understood and is left out; figures are of the rest. */
  IN_PIECES;

  /** @param structure what reading and binding found */
  static Completeness of(List<Finding> structure, Doubts doubts) {
    boolean errors = structure.stream().anyMatch(f -> f.severity() == Severity.ERROR && f.silenced().isEmpty());
    return !doubts.isEmpty() ? IN_PIECES : errors ? WRONG : SOUND;
  }
}
