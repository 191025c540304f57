package wattle.balance;

import java.util.List;
import wattle.loads.LegLoads;
import wattle.model.Panel;

/**
 * A panel as it is, and as it could be.
 *
 * @param before connected loads as the plan stands
 * @param after the same with the moves made, here and in panels that it feeds; equal to {@code before} where there are none
 * @param movable how many breakers or pairs may move
 * @param fixed those that may not, and why
 * @param steps what 0, 1, 2 … moves can reach, up to the last one that gained something
 */
public record PanelBalance(
    Panel panel,
    LegLoads before,
    LegLoads after,
    List<Move> moves,
    int movable,
    List<Fixed> fixed,
    List<Step> steps,
    Proof proof) {
  public PanelBalance {
    moves = List.copyOf(moves);
    fixed = List.copyOf(fixed);
    steps = List.copyOf(steps);
  }

  /** The heaviest leg of this panel less the lightest, in volt-amperes. */
  public double difference(LegLoads load) {
    double most = panel.legs().stream().mapToDouble(load::on).max().orElse(0);
    return most - panel.legs().stream().mapToDouble(load::on).min().orElse(0);
  }
}
