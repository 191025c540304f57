package wattle.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wattle.library.Library;
import wattle.library.Limit;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.Breaker;
import wattle.model.House;
import wattle.model.Panel;
import wattle.quantity.Quantity;

/**
 * What a time-current plot of a branch shows, as figures: the band that its breaker trips in, what its weakest conductor
 * stands, and the fault currents at its boxes.
 *
 * @param fastest lower edge of the band, by rising current; a time of 0 where it may trip at once
 * @param slowest upper edge; an infinite time where it need not trip
 * @param weakest the conductor that stands least; absent where no figure of it is known
 * @param adiabaticSeconds how long the equation of it holds
 * @param boxes the boxes with a known fault, in the order reached
 */
public record TimeCurrent(
    Branch branch,
    Breaker breaker,
    TripCurve curve,
    List<Point> fastest,
    List<Point> slowest,
    Optional<Withstand> weakest,
    double adiabaticSeconds,
    List<Box> boxes) {
  /** A point of a curve. */
  public record Point(double amperes, double seconds) {}

  /**
   * The least and the most that a bolted fault of any kind drives at a box.
   *
   * @param leastKind between what the least flows
   */
  public record Box(String name, double leastAmperes, double mostAmperes, FaultKind leastKind) {}

  public TimeCurrent {
    fastest = List.copyOf(fastest);
    slowest = List.copyOf(slowest);
    boxes = List.copyOf(boxes);
  }

  /** Absent where the branch is on no breaker whose curve is known, such as on a fuse. */
  public static Optional<TimeCurrent> of(Branch branch, House house, Library library, Faults faults) {
    Optional<Panel> panel = branch.panel().map(house.panels()::get);
    Optional<Breaker> breaker = branch.hots().stream().findFirst().map(BranchHot::breaker).flatMap(house::breaker);
    if (panel.isEmpty() || breaker.isEmpty()) {
      return Optional.empty();
    }
    double adiabatic = library.limit("adiabatic-time").map(Limit::value).map(Quantity::si).orElse(0.0);
    List<FaultPoint> points = faults.branch(branch.name()).stream().skip(1).filter(p -> !p.faults().isEmpty()).toList();
    return new TripCurves(library)
        .of(breaker.get(), panel.get().system())
        .map(
            curve -> new TimeCurrent(
                branch, breaker.get(), curve, edge(curve, true), edge(curve, false), weakest(points), adiabatic,
                points.stream().map(TimeCurrent::box).toList()));
  }

  private static Box box(FaultPoint point) {
    Fault least = point.faults().stream().min(java.util.Comparator.comparingDouble(Fault::leastAmperes)).orElseThrow();
    return new Box(point.place(), least.leastAmperes(), point.mostAmperes(), least.kind());
  }

  private static Optional<Withstand> weakest(List<FaultPoint> points) {
    return points.stream().flatMap(p -> p.faults().stream()).flatMap(f -> f.weakest().stream()).reduce(Withstand::lesser);
  }

  // Between two corners a bound is a power of the current, so that two points draw it on scales of logarithms.
  private static List<Point> edge(TripCurve curve, boolean fast) {
    List<Point> points = new ArrayList<>();
    for (double corner : curve.corners()) {
      for (double amperes : new double[]{corner * (1 - 1e-9), corner * (1 + 1e-9)}) {
        ClearingTime time = curve.at(amperes);
        points.add(new Point(corner, fast ? time.leastSeconds() : time.mostSeconds()));
      }
    }
    return points;
  }
}
