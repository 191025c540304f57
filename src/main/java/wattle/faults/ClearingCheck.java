package wattle.faults;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.finding.Citation;
import wattle.finding.Finding;
import wattle.finding.Span;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Breaker;
import wattle.model.Protection;
import wattle.model.SupplySystem;
import wattle.model.Wire;
import wattle.quantity.Quantity;
import wattle.quantity.WireSize;

/**
 * Whether a breaker opens a fault at the far end of what it guards, and whether the conductors stand it till then.
 *
 * <p>A fault below the usual instantaneous trip is left to the thermal element. The conductor is judged there, by the
 * longest time that the breaker's standard allows, as far as the adiabatic equation holds. Above it the time is a tenth of
 * a second or less, for which IEC 60364-4-43 434.5.2 goes by the let-through that a maker states and not by the current;
 * nothing is said of it here but what the conductor stands. A ground-fault breaker opens a fault to ground by another way.
 */
final class ClearingCheck {
  /** Name of the finding that is only advice where a quick breaker would still trip at once. */
  static final String BELOW_INSTANTANEOUS = "fault-below-instantaneous";

  /** The usual instantaneous trip of UL breakers is a round figure: a fault within a fifth of it is left alone (common practice). */
  private static final double NEAR = 0.8;
  private static final Citation ADIABATIC = new Citation("IEC 60364-4-43", "434.5.2", true);

  private final TripCurves curves;
  private final double longest;
  private final Citation source;

  ClearingCheck(Library library) {
    curves = new TripCurves(library);
    longest = library.limit("adiabatic-time").map(Limit::value).map(Quantity::si).orElse(0.0);
    source = library.article("conductor-would-not-survive").orElse(ADIABATIC);
  }

  private record Slow(FaultPoint point, Fault fault, double amperes, ClearingTime time) {
    /** Only where no breaker of its kind trips at once: between that and the usual trip most open long before the slowest would. */
    boolean outlasts(double longest, double leastInstantaneous) {
      return amperes < leastInstantaneous
          && fault.weakest().filter(w -> w.secondsAt(amperes) <= longest && w.secondsAt(amperes) < time.mostSeconds()).isPresent();
    }
  }

  /** Whether a curve is known by which it opens. */
  boolean knows(Breaker breaker, SupplySystem system) {
    return curves.of(breaker, system).filter(c -> !c.isFuse()).isPresent();
  }

  /**
   * What its standard bounds of a fuse, of the fault for which that says least.
   *
   * @param fault none where nothing is left open: the fuse must have opened before the conductor is too hot
   */
  record Bound(TripCurve curve, Optional<Fault> fault) {}

  /** By the standard of the fuse; absent where none is known. A conductor is judged as far as the adiabatic equation holds. */
  Optional<Bound> bound(Breaker fuse, SupplySystem system, List<FaultPoint> points) {
    return curves.of(fuse, system).filter(TripCurve::isFuse)
        .map(curve -> new Bound(curve, points.stream().flatMap(p -> p.faults().stream())
            .filter(f -> isOpen(curve, f))
            .min(Comparator.comparingDouble(f -> f.weakest().map(w -> w.secondsAt(f.leastAmperes())).orElse(0.0)
                / curve.at(f.leastAmperes()).mostSeconds()))));
  }

  /** Whether the standard lets a fuse hold for longer than a conductor withstands the fault, or for ever. */
  private boolean isOpen(TripCurve curve, Fault fault) {
    double most = curve.at(fault.leastAmperes()).mostSeconds();
    double stands = fault.weakest().map(w -> w.secondsAt(fault.leastAmperes())).orElse(Double.POSITIVE_INFINITY);
    return Double.isInfinite(most) || stands <= longest && stands < most;
  }

  /**
   * @param what such as {@code 'hall'}
   * @param subject name of what the breaker guards
   * @param upstream the panels up to that of the breaker
   * @param found panels of whose feeders something was found, which answers for what hangs on them
   * @param points what the breaker guards, the panel that it is in first or not at all
   */
  Optional<Finding> of(String what, String subject, Span place, Breaker breaker, SupplySystem system, List<FaultPoint> points,
      Optional<Upstream> upstream, Set<String> found) {
    boolean feederFound = upstream.filter(u -> u.comesThrough(found)).isPresent();
    // What a fuse standard gives is a bound far above what fuses take: it tells when one must have opened, not that it is slow.
    Optional<TripCurve> curve = curves.of(breaker, system).filter(c -> !c.isFuse());
    if (curve.isEmpty()) {
      return Optional.empty();
    }
    // Most faults trip the breaker at once; nothing is worked out for those.
    List<Slow> slow = points.stream()
        .flatMap(
            p -> p.faults().stream()
                .filter(f -> f.leastAmperes() < tripping(curve.get()) && f.weakest().isPresent())
                .filter(f -> f.kind() != FaultKind.LINE_GROUND || !breaker.protections().contains(Protection.GROUND_FAULT))
                .filter(f -> !feederFound || !(atPanel(points, f) < tripping(curve.get())))
                .map(f -> new Slow(p, f, f.leastAmperes(), curve.get().at(f.leastAmperes()))))
        // What a feeder makes was told of that feeder.
        .filter(s -> blamed(upstream, s).filter(found::contains).isEmpty())
        .sorted(Comparator.comparingDouble(Slow::amperes))
        .toList();
    return slow.stream()
        .filter(s -> s.outlasts(longest, instantly(curve.get())))
        .findFirst()
        .map(s -> outlasting(what, place, breaker, curve.get(), s, blamed(upstream, s)))
        .or(() -> slow.stream().findFirst()
            .map(s -> below(what, place, breaker, curve.get(), s, points, blamed(upstream, s))))
        .map(f -> f.about(subject).build());
  }

  /** Amperes from which a breaker is taken to trip at once; the band of an IEC type ends where its standard says. */
  private static double tripping(TripCurve curve) {
    return isUl(curve) ? NEAR * curve.usualAmperes() : curve.usualAmperes();
  }

  /** Amperes below which a conductor is judged by the slowest trip. */
  private static double instantly(TripCurve curve) {
    return isUl(curve) ? curve.instantaneousLeast() * curve.rating() : curve.usualAmperes();
  }

  /** Whether a breaker is to UL 489, which other countries have under another name. */
  private static boolean isUl(TripCurve curve) {
    return !curve.standard().startsWith("IEC");
  }

  /** Amperes of the same fault at the panel; NaN where it is not known. */
  private static double atPanel(List<FaultPoint> points, Fault fault) {
    return nearest(points, fault).map(Fault::leastAmperes).orElse(Double.NaN);
  }

  /** The feeder that most of the way lies in, where that is more than what the breaker guards. */
  private static Optional<String> blamed(Optional<Upstream> upstream, Slow slow) {
    return upstream.flatMap(u -> u.blamed(slow.fault.kind(), slow.amperes));
  }

  private static Finding.Builder below(
      String what, Span place, Breaker breaker, TripCurve curve, Slow slow, List<FaultPoint> points, Optional<String> feeder) {
    String most = slow.time.most().map(t -> "up to " + seconds(t)).orElse("for ever");
    Finding.Builder finding = start(
        BELOW_INSTANTANEOUS, slow, curve,
        "a fault at the end of " + what + " drives " + amperes(slow.amperes) + ", too little to trip its breaker at once")
        .at(place, "least fault at " + slow.point.place() + ", " + slow.fault.kind().words())
        .with(breaker.origin().whole(), "assumed to trip at once by " + amperes(curve.usualAmperes()))
        .because(
            "Below its instantaneous trip, a breaker waits for its thermal element, " + most + " by " + curve.standard()
                + "; until then the fault burns.")
        .source(curve.bandCitations().get(0));
    if (feeder.isPresent()) {
      return finding.fix("most of the length is the feeder of '" + feeder.get() + "': use larger wire there, ground included, or make "
          + "it shorter");
    }
    if (slow.fault.kind() == FaultKind.LINE_GROUND) {
      return finding.fix("use larger wire, ground included, or make it shorter");
    }
    Thicker.than(slow.fault, slow.amperes, tripping(curve), nearest(points, slow.fault))
        .ifPresentOrElse(size -> finding.fix("run all of it in " + size + ", or make it shorter"), () -> finding.fix("make it shorter"));
    return finding;
  }

  private static Optional<Fault> nearest(List<FaultPoint> points, Fault fault) {
    return points.size() > 1 ? points.get(0).fault(fault.kind()) : Optional.empty();
  }

  private Finding.Builder outlasting(
      String what, Span place, Breaker breaker, TripCurve curve, Slow slow, Optional<String> feeder) {
    Withstand weakest = slow.fault.weakest().orElseThrow();
    WireSize size = weakest.wire().size();
    String stands = seconds(weakest.secondsAt(slow.amperes));
    String most = slow.time.most().map(ClearingCheck::seconds).orElse("for ever");
    return start(
        "conductor-would-not-survive", slow, curve,
        "the " + size + " " + conductor(weakest.wire()) + " of " + what + " withstands a fault of " + amperes(slow.amperes) + " for "
            + stands
            + ", and its breaker may take " + most)
        .at(place, "least fault at " + slow.point.place() + ", " + slow.fault.kind().words())
        .with(breaker.origin().whole(), "may take " + most)
        .because(
            "It does not trip at once below " + amperes(instantly(curve)) + ". By the slowest trip that " + curve.standard()
                + " allows, the insulation of the conductor is damaged before the breaker opens.")
        .figure("let-through that " + size + " withstands", weakest.letThrough().value().text())
        .fix(
            feeder.map(f -> "most of the length is the feeder of '" + f + "': use larger wire there, ground included, or make it shorter")
                .orElse("use larger wire or a shorter run, so that the fault trips the breaker at once"))
        .source(source);
  }

  private static String conductor(Wire wire) {
    return switch (wire.purpose()) {
      case GROUND -> "ground";
      case NEUTRAL -> "neutral";
      case HOT -> "hot";
    };
  }

  private static Finding.Builder start(String rule, Slow slow, TripCurve curve, String headline) {
    boolean advice = rule.equals(BELOW_INSTANTANEOUS) && slow.amperes >= curve.instantaneousLeast() * curve.rating();
    return (advice ? Finding.advice(rule, headline) : Finding.warning(rule, headline))
        .figure("least fault current", amperes(slow.amperes))
        .figure("usual instantaneous trip", amperes(curve.usualAmperes()))
        .figure("clearing time", slow.time.text());
  }

  private static String amperes(double amperes) {
    return Quantity.plain(amperes, 3) + " A";
  }

  private static String seconds(double seconds) {
    return Quantity.plain(seconds, 2) + " s";
  }
}
