package wattle.faults;

import wattle.derivation.Derivation;
import wattle.finding.Span;
import wattle.model.Wire;

/**
 * What one conductor of a run stands.
 *
 * @param letThrough k² × S², in A²s
 * @param run where its run is written
 */
public record Withstand(Wire wire, Derivation letThrough, Span run) {
  /** In A²s. */
  public double ampereSquaredSeconds() {
    return letThrough.si();
  }

  /** Seconds until the insulation of the conductor is as hot as a short circuit may make it; for at most 5 s. */
  public double secondsAt(double amperes) {
    return ampereSquaredSeconds() / (amperes * amperes);
  }

  Withstand lesser(Withstand other) {
    return other.ampereSquaredSeconds() < ampereSquaredSeconds() ? other : this;
  }
}
