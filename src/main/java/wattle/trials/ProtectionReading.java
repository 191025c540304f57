package wattle.trials;

import java.util.Optional;
import wattle.derivation.Derivation;

/**
 * What ground-fault or arc-fault protection makes of a trial.
 *
 * @param name such as {@code breaker P/2+4} or {@code kitchen.c1}
 * @param kind {@code ground-fault} or {@code arc-fault}
 * @param guards the branch, panel or device behind it
 * @param residual what does not come back through it, with nobody touching; absent for arc-fault protection
 * @param touched the same with a person's hand on what is off its ground; absent where nothing is
 * @param verdict by the greater of them
 * @param within the longest time that it may take; absent where it need not trip
 * @param because what that rests on, or why it cannot be told
 */
public record ProtectionReading(
    String name, String kind, String guards, Optional<Derivation> residual, Optional<Derivation> touched, Verdict verdict,
    Optional<Derivation> within, String because) {
  /** Whether protection opens. */
  public enum Verdict {
    TRIPS("trips"), TRIPS_ON_TOUCH("trips when touched"), MAY("may trip"), MAY_ON_TOUCH("may trip when touched"), UNKNOWN(
        "not computed"), HOLDS("holds");

    private final String words;

    Verdict(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
