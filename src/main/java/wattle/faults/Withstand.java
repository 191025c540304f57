package wattle.faults;

import wattle.derivation.Derivation;
import wattle.finding.Span;
import wattle.model.Wire;

/**
 * What one conductor of a run stands.
 *
 * @param letThrough k² × S², in A²s, of the current in the conductor
 * @param share part of the fault current that it carries: 1, or less where another conductor lies beside it between two bonds
 * @param run where its run is written
 */
public record Withstand(Wire wire, Derivation letThrough, double share, Span run) {
  /** In A²s of the fault current. */
  public double ampereSquaredSeconds() {
    return letThrough.si() / (share * share);
  }

  /** Seconds until the insulation of the conductor is as hot as a short circuit may make it; for at most 5 s. */
  public double secondsAt(double amperes) {
    return ampereSquaredSeconds() / (amperes * amperes);
  }

  Withstand lesser(Withstand other) {
    return other.ampereSquaredSeconds() < ampereSquaredSeconds() ? other : this;
  }
}
