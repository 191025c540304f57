package wattle.emit.view.trialpicture;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Section;
import wattle.trials.TrialResult;

/**
 * A branch with the figures of a trial on it: volts in each box, amperes and watts on each conductor of each run. Runs are
 * straight and none crosses another; where a row would become wider than the sheet, its rest begins a new row, with a mark
 * at either end.
 */
public final class TrialPicture implements View {
  /** As wide as a screen shows well. */
  public static final double USUAL_WIDTH = 1500;

  private static final double BETWEEN_ROWS = 34;

  private final House house;
  private final Branch branch;
  private final TrialResult result;
  private final String trial;
  private final BranchReadings readings;

  /** @param trial its title */
  public TrialPicture(House house, Branch branch, TrialResult result, String trial) {
    this.house = house;
    this.branch = branch;
    this.result = result;
    this.trial = trial;
    readings = new BranchReadings(house, branch, result);
  }

  /**
   * All of it in one piece.
   *
   * @param widest where rows break; a single box with its run may be wider
   */
  public Plate plate(double widest) {
    Sketch sketch = new Sketch();
    double top = 0;
    for (TrialRow row : rows(widest, Double.MAX_VALUE, false)) {
      sketch.add(row.sketch(), 0, top);
      top += row.height() + BETWEEN_ROWS;
    }
    return new Plate(sketch.shapes(), legend(), title(), description());
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    return rows(width, height, true).stream().map(TrialRow::piece).toList();
  }

  private List<TrialRow> rows(double widest, double tallest, boolean onSheets) {
    List<TrialRow> rows = new ArrayList<>();
    if (branch.points().isEmpty()) {
      return rows;
    }
    TrialRow.Waiting waiting = new TrialRow.Waiting();
    for (Optional<TrialRow.Start> start = waiting.next(); start.isPresent(); start = waiting.next()) {
      rows.add(new TrialRow(branch, readings, widest, tallest, onSheets, waiting, start.get()));
    }
    return rows;
  }

  @Override
  public String title() {
    return "Branch " + branch.name() + ": " + trial;
  }

  @Override
  public String scale() {
    return Plate.NO_SCALE;
  }

  /** The signs that are used. */
  private Set<Sign> signs() {
    Set<Sign> signs = EnumSet.noneOf(Sign.class);
    for (int point = 0; point < branch.points().size(); point++) {
      readings.box(point).lines().forEach(l -> signs.add(l.sign()));
    }
    for (Section section : branch.sections()) {
      readings.run(section).conductors().forEach(c -> signs.add(c.sign()));
    }
    return signs;
  }

  @Override
  public Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    for (Sign sign : signs()) {
      if (sign != Sign.NONE) {
        Sketch drawn = new Sketch();
        sign.draw(drawn, 0, 0);
        items.add(new Legend.Item(drawn.shapes(), Sign.WIDTH, sign.words()));
      }
    }
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    List<String> notes = new ArrayList<>(List.of(plan + ". Trial: " + trial + ".",
        "Each conductor shows its amperes and the watts lost in that run; each outlet shows its volts and their difference from nominal."));
    notes.addAll(result.notes());
    return new Legend(items, notes);
  }

  @Override
  public String description() {
    return "Branch " + branch.name() + " box by box, with volts at each outlet, amperes and watts on each conductor. " + readings.summary();
  }
}
