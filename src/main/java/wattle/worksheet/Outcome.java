package wattle.worksheet;

import java.util.List;
import java.util.Optional;

/**
 * What came of a method.
 *
 * @param worksheet absent where the method lacks something
 * @param objections what it lacks, and which of its conditions do not hold
 */
public record Outcome(Method method, Optional<Worksheet> worksheet, List<Objection> objections) {
  public Outcome {
    objections = List.copyOf(objections);
  }
}
