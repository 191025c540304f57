package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.finding.Finding;
import wattle.model.Expectation;

/**
 * An expectation of a plan and what came of it.
 *
 * @param found the figure that it asks for; absent where there is none to measure
 * @param finding why it does not hold; absent where it holds
 */
public record Judged(Expectation expectation, Optional<Derivation> found, Optional<Finding> finding) {
  public boolean holds() {
    return found.isPresent() && finding.isEmpty();
  }
}
