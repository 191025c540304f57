package wattle.conductors;

import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Section;
import wattle.quantity.Quantity;

/** How far a branch reaches. */
public final class BranchLengths {
  private BranchLengths() {}

  /** Meters of wire path from the panel to each point of a branch, in the order of its points; NaN where not known. */
  public static double[] toPoints(Branch branch) {
    double[] meters = new double[branch.points().size()];
    for (Section section : branch.sections()) {
      meters[section.to()] = meters[section.from()] + section.length().map(Quantity::si).orElse(Double.NaN);
    }
    return meters;
  }

  /** Meters of wire path to the farthest box; absent where a run on any way has no length. */
  public static Optional<Double> farthest(Branch branch) {
    double most = 0;
    for (double meters : toPoints(branch)) {
      if (Double.isNaN(meters)) {
        return Optional.empty();
      }
      most = Math.max(most, meters);
    }
    return Optional.of(most);
  }
}
