package wattle.conductors;

import java.util.Optional;
import wattle.model.Branch;
import wattle.model.Section;
import wattle.quantity.Quantity;

/** How far a branch reaches. */
public final class BranchLengths {
  private BranchLengths() {}

  /** Metres of wire path from the panel to each point of a branch, in the order of its points; NaN where not known. */
  public static double[] toPoints(Branch branch) {
    double[] metres = new double[branch.points().size()];
    for (Section section : branch.sections()) {
      metres[section.to()] = metres[section.from()] + section.length().map(Quantity::si).orElse(Double.NaN);
    }
    return metres;
  }

  /** Metres of wire path to the farthest box; absent where a run on any way has no length. */
  public static Optional<Double> farthest(Branch branch) {
    double most = 0;
    for (double metres : toPoints(branch)) {
      if (Double.isNaN(metres)) {
        return Optional.empty();
      }
      most = Math.max(most, metres);
    }
    return Optional.of(most);
  }
}
