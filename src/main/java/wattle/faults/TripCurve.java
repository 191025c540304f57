package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.finding.Citation;

/**
 * Between what bounds a breaker trips: an inverse-time region held by calibration points, and an instantaneous band.
 *
 * <p>A product standard fixes points, not a curve. Beyond a point at which a breaker must trip it needs no more of I² × t,
 * for less of its heat has time to leave; so a point bounds every greater current too: {@code t ≤ t_p × (I_p / I)²}. From
 * below nothing is known but what the standard forbids.
 *
 * @param standard that the points are from, such as {@code UL 489}
 * @param rating in amperes
 * @param hold multiple of the rating that it carries
 * @param holdSeconds for how long; infinite where for ever
 * @param mustTrip points by which it trips, by rising current
 * @param notSooner a current that it takes at least so long over
 * @param usual multiple that checks take the instantaneous trip to happen by; infinite for a fuse, which has none
 * @param citations of the calibration points
 * @param bandCitations of the instantaneous band
 */
public record TripCurve(
    String standard,
    double rating,
    double hold,
    double holdSeconds,
    List<Point> mustTrip,
    Optional<Point> notSooner,
    double instantaneousLeast,
    double usual,
    double instantaneousMost,
    double instantaneousSeconds,
    List<Citation> citations,
    List<Citation> bandCitations) {
  /** @param multiple of the rating */
  public record Point(double multiple, double seconds) {}

  public TripCurve {
    mustTrip = List.copyOf(mustTrip);
    citations = List.copyOf(citations);
    bandCitations = List.copyOf(bandCitations);
  }

  /** Up to how many times its rating the band of a fuse is drawn. */
  private static final double FUSE_SHOWN = 100;

  /** Whether it is that of a fuse, which has no instantaneous trip. */
  public boolean isFuse() {
    return Double.isInfinite(usual);
  }

  /** Multiple of the rating to which a picture shows it. */
  public double shownTo() {
    return isFuse() ? FUSE_SHOWN : instantaneousMost;
  }

  /** The instantaneous trip that checks go by, in amperes. */
  public double usualAmperes() {
    return usual * rating;
  }

  /** The range of times for a current. */
  public ClearingTime at(double amperes) {
    double multiple = amperes / rating;
    double most = Double.POSITIVE_INFINITY;
    String opens = isFuse() ? "opens" : "trips";
    String mostBound = standard + ": carries " + plain(hold) + " × its rating, and "
        + opens + " by " + plain(mustTrip.get(0).multiple) + " ×";
    for (Point point : mustTrip) {
      double seconds = point.seconds * Math.pow(point.multiple / multiple, 2);
      if (multiple >= point.multiple && seconds < most) {
        most = seconds;
        mostBound = standard + ": " + opens + " within " + plain(point.seconds) + " s at " + plain(point.multiple)
            + " × its rating, and for no more of I² × t above";
      }
    }
    if (multiple >= instantaneousMost && instantaneousSeconds < most) {
      most = instantaneousSeconds;
      mostBound = "trips at once by " + plain(instantaneousMost) + " × its rating";
    }
    return least(multiple, most, mostBound);
  }

  private ClearingTime least(double multiple, double most, String mostBound) {
    if (multiple <= hold) {
      return new ClearingTime(holdSeconds, standard + ": carries " + plain(hold) + " × its rating", most, mostBound);
    }
    if (notSooner.isPresent() && multiple <= notSooner.get().multiple) {
      Point point = notSooner.get();
      return new ClearingTime(
          Math.min(most, point.seconds),
          standard + ": not within " + plain(point.seconds) + " s at " + plain(point.multiple) + " × its rating",
          most, mostBound);
    }
    if (multiple < instantaneousLeast) {
      return new ClearingTime(
          Math.min(most, instantaneousSeconds), "does not trip at once below " + plain(instantaneousLeast) + " × its rating", most,
          mostBound);
    }
    if (isFuse()) {
      return new ClearingTime(0, standard + ": no least time", most, mostBound);
    }
    return new ClearingTime(0, "may trip at once from " + plain(instantaneousLeast) + " × its rating", most, mostBound);
  }

  /** Currents in amperes at which the bounds turn, rising: for drawing the band. */
  public List<Double> corners() {
    List<Double> corners = new ArrayList<>();
    corners.add(hold * rating);
    mustTrip.forEach(p -> corners.add(p.multiple * rating));
    notSooner.ifPresent(p -> corners.add(p.multiple * rating));
    corners.add(instantaneousLeast * rating);
    if (isFuse()) {
      corners.add(FUSE_SHOWN * rating);
    } else {
      corners.add(instantaneousMost * rating);
    }
    return corners.stream().distinct().sorted().toList();
  }

  private static String plain(double figure) {
    return wattle.quantity.Quantity.plain(figure, 4);
  }
}
