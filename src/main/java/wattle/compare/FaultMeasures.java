package wattle.compare;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wattle.derivation.Derivation;
import wattle.faults.Fault;
import wattle.faults.FaultPoint;
import wattle.faults.Faults;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Panel;
import wattle.quantity.Units;

/** The most that a bolted fault can drive at each panel, and the least at the box where it is least. */
final class FaultMeasures {
  /** A figure behind more runs than this is kept without its sum, which nobody would read. */
  private static final int MOST_UNFOLDED = 100;

  private FaultMeasures() {}

  private record Far(Branch branch, int runs, FaultPoint point, Fault least) {}

  static void add(Plan plan, Measured to) {
    House house = plan.house();
    Faults faults = plan.figures().faults();
    for (Panel panel : house.panels().values()) {
      Measure measure = new Measure(Measure.Topic.FAULT, new Thing(Thing.Kind.PANEL, panel.name()), 0, "available fault current",
          Units.AMPERE, 0);
      faults.panel(panel.name()).faults().stream()
          .max(Comparator.comparingDouble(Fault::mostAmperes))
          .ifPresentOrElse(
              f -> to.known(measure, f.most(), f.kind().words()),
              () -> to.unknown(measure, "the source of the supply or a length on the path is not stated"));
    }
    Optional<Far> far = Optional.empty();
    for (Branch branch : house.branches().values()) {
      far = lesser(far, farthest(branch, faults));
    }
    Measure least = Measured.ofHouse(Measure.Topic.FAULT, 0, "least fault current", Units.AMPERE, 0);
    far.ifPresentOrElse(
        f -> to.known(least, unfolded(f), f.least.kind().words() + " at " + f.point.place() + " of " + f.branch.name()),
        () -> {
          if (!house.branches().isEmpty()) {
            to.unknown(least, "no source or no length of a branch is stated");
          }
        });
  }

  private static Optional<Far> farthest(Branch branch, Faults faults) {
    Optional<Far> far = Optional.empty();
    int point = 0;
    for (FaultPoint at : faults.branch(branch.name())) {
      int runs = point++;
      if (runs > 0) { // the first is the panel
        for (Fault fault : at.faults()) {
          far = lesser(far, Optional.of(new Far(branch, runs, at, fault)));
        }
      }
    }
    return far;
  }

  private static Optional<Far> lesser(Optional<Far> one, Optional<Far> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return one.or(() -> other);
    }
    double difference = one.get().least.leastAmperes() - other.get().least.leastAmperes();
    boolean first = difference != 0 ? difference < 0 : one.get().point.place().compareTo(other.get().point.place()) <= 0;
    return first ? one : other;
  }

  private static Derivation unfolded(Far far) {
    Derivation least = far.least.least();
    return far.runs <= MOST_UNFOLDED
        ? least
        : Derivation.computed(least.name(), least.symbol(), "", least.value(), List.of())
            .remarking("Behind " + far.runs + " runs; the table of faults has those nearer to the panel unfolded.");
  }
}
