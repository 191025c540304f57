package wattle.rules;

import java.util.Comparator;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.library.Key;
import wattle.model.Breaker;
import wattle.model.Wire;
import wattle.quantity.Quantity;

/** The largest breaker of a run in words: by which rule it is that, and what to do where the breaker is above it. */
final class BreakerOfWire {
  /** Amperes that are rounding. */
  private static final double ROUNDING = 0.05;

  private BreakerOfWire() {}

  /** As in {@code the next standard rating above is 60 A (240.4(B))}; absent where the figure is not known. */
  static Optional<String> why(Facts facts, RunOf run) {
    Optional<Quantity> largest = BranchProperties.largest(facts, run);
    Optional<Derivation> ampacity = ampacity(facts, run);
    if (largest.isEmpty() || ampacity.isEmpty()) {
      return Optional.empty();
    }
    String amperes = CircuitLoad.amperes(largest.get().si());
    if (LargerBreaker.of(facts, run).filter(l -> l.si() == largest.get().si()).isPresent()) {
      return Optional.of("the article of its load allows " + amperes + article(facts, "own-article"));
    }
    if (largest.get().si() > ampacity.get().si() + ROUNDING) {
      return Optional.of("the next standard rating above is " + amperes + article(facts, "next-rating"));
    }
    boolean several = facts.receptaclesOn(run.branch()) > 1;
    boolean between = facts.conductors().breakers().notBelow(ampacity.get()).filter(n -> n.si() > ampacity.get().si() + ROUNDING)
        .isPresent();
    Wire hot = run.section().wiring().hot();
    boolean small = facts.conductors().breakers().ceiling(hot.size(), hot.metal()).filter(c -> c.si() <= largest.get().si()).isPresent();
    return Optional.of(
        several && between && !small
            ? "it feeds several receptacles, so its breaker is not rounded up and is " + amperes + " at most"
                + article(facts, "several-receptacles")
            : amperes + " is the most");
  }

  /** Where the code says so, in parentheses; nothing where its pack does not tell. */
  private static String article(Facts facts, String reason) {
    return facts.library().table("breaker-articles")
        .flatMap(t -> t.find("article", "", "article", Key.is("case", Derivation.stated("case", "", reason))))
        .map(d -> " (" + d.value().text() + ")").orElse("");
  }

  private static Optional<Derivation> ampacity(Facts facts, RunOf run) {
    Optional<Quantity> rating = CircuitCheck.rating(facts, run);
    return rating.flatMap(
        r -> CircuitCheck.conditions(facts, run).flatMap(
            c -> facts.conductors().ampacities().between(c, Derivation.stated("rating", "I", r), CircuitCheck.marked(facts, run, r))));
  }

  /** The largest breaker, where the stated loads would not trip it. */
  static Optional<Quantity> forLoad(Facts facts, RunOf run) {
    return BranchProperties.largest(facts, run).filter(l -> isMade(facts, l))
        .filter(l -> heaviest(facts, run).sized() <= l.si() + ROUNDING);
  }

  /** Whether breakers are had in a rating; an ampacity below the least of them is none. */
  private static boolean isMade(Facts facts, Quantity rating) {
    return facts.conductors().breakers().notAbove(Derivation.stated("rating", "I", rating)).isPresent();
  }

  /** The heaviest load of the runs of its branch. */
  private static CircuitLoad heaviest(Facts facts, RunOf run) {
    return facts.runsOf(run.branch()).stream().map(facts::circuitLoad).max(Comparator.comparingDouble(CircuitLoad::sized))
        .orElse(CircuitLoad.NONE);
  }

  private static String load(CircuitLoad load) {
    return load.sized() > load.amperes() + ROUNDING
        ? ": " + CircuitLoad.amperes(load.amperes()) + ", figured at " + CircuitLoad.amperes(load.sized())
        : " of " + CircuitLoad.amperes(load.amperes());
  }

  /** A smaller breaker only where the loads stand it; the size that the breaker as it is would need. */
  static Optional<String> remedy(Facts facts, RunOf run) {
    String device = facts.breakersOf(run.branch()).stream().anyMatch(b -> b.device() == Breaker.Device.FUSE) ? "fuse" : "breaker";
    String thicker = CircuitCheck.needed(facts, run)
        .map(s -> s + " " + run.section().wiring().hot().metal().word() + " or larger").orElse("larger wire");
    return BranchProperties.largest(facts, run).map(
        largest -> forLoad(facts, run).isPresent()
            ? "use " + CircuitLoad.anAmperes(largest.si()) + " " + device + ", or " + thicker + " for the whole run"
            : "use " + thicker + " for the whole run"
                + (isMade(facts, largest)
                    ? "; " + CircuitLoad.anAmperes(largest.si()) + " " + device + " is too small for its load" + load(heaviest(facts, run))
                    : "; no " + device + " is made as small as " + CircuitLoad.amperes(largest.si())));
  }
}
