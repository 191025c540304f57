package wattle.cli;

import java.util.List;
import java.util.Optional;
import wattle.compiler.Compilation;
import wattle.emit.media.drawing.Plate;
import wattle.emit.view.plot.TripPlot;
import wattle.emit.view.plot.VoltagePlot;
import wattle.finding.NearNames;
import wattle.model.Branch;

/** The plots of one branch. */
final class BranchPlots {
  private BranchPlots() {}

  static Plate trip(Compilation plan, Optional<String> name) {
    Branch branch = branch(plan, name);
    return TripPlot.plate(
        plan.figures().timeCurrent(branch)
            .orElseThrow(
                () -> new Failure(
                    "branch '" + branch.name() + "' has no breaker with a rating whose curve is known; a fuse has its maker's")),
        plan.house().units());
  }

  static Plate voltage(Compilation plan, Optional<String> name) {
    Branch branch = branch(plan, name);
    return VoltagePlot.plate(
        plan.figures().voltageProfile(branch)
            .orElseThrow(() -> new Failure("branch '" + branch.name() + "' has no breaker with a rating, or no outlet that is connected")),
        plan.library(), plan.house().units());
  }

  /** The branch that a view is of. */
  static Branch branch(Compilation plan, Optional<String> name) {
    if (name.isEmpty()) {
      throw new Failure("this view is of one branch: name it with --of");
    }
    Branch branch = plan.house().branches().get(name.get());
    if (branch == null) {
      List<String> near = NearNames.of(name.get(), plan.house().branches().keySet());
      throw new Failure(
          "no branch is called '" + name.get() + "'"
              + (near.isEmpty()
                  ? "; branches are " + String.join(", ", plan.house().branches().keySet())
                  : "; did you mean " + String.join(" or ", near) + "?"));
    }
    return branch;
  }
}
