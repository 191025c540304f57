package wattle.emit.trialpicture;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import wattle.emit.drawing.Legend;
import wattle.emit.drawing.Plate;
import wattle.emit.drawing.Shape;
import wattle.emit.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.House;
import wattle.model.Section;
import wattle.trials.TrialResult;

/**
 * A branch with the figures of a trial on it: volts in each box, amperes and watts on each conductor of each run. A box is
 * as high as all that it feeds to its right, so that runs are straight and none crosses another; where a row would become
 * wider than the sheet, its rest begins a new row, with a mark at either end.
 */
public final class TrialPicture {
  /** As wide as a screen shows well. */
  public static final double USUAL_WIDTH = 1500;

  private static final double BETWEEN_BOXES = 14;
  private static final double BETWEEN_ROWS = 34;

  private final House house;
  private final Branch branch;
  private final TrialResult result;
  private final String title;
  private final double widest;
  private final BranchReadings readings;
  private final Sketch sketch = new Sketch();
  private final Deque<Row> rows = new ArrayDeque<>();
  private final Set<Sign> signs = EnumSet.noneOf(Sign.class);
  private int marks;

  private record Row(Section run, int mark, String from) {}

  private TrialPicture(House house, Branch branch, TrialResult result, String title, double widest) {
    this.house = house;
    this.branch = branch;
    this.result = result;
    this.title = title;
    this.widest = widest;
    readings = new BranchReadings(house, branch, result);
  }

  /**
   * Draws a branch in a trial.
   *
   * @param title of the trial
   * @param widest where rows break; a single box with its run may be wider
   */
  public static Plate of(House house, Branch branch, TrialResult result, String title, double widest) {
    return new TrialPicture(house, branch, result, title, widest).plate();
  }

  private Plate plate() {
    double bottom = branch.points().isEmpty() ? 0 : place(0, 0, 0, 0);
    while (!rows.isEmpty()) {
      Row row = rows.removeFirst();
      RunFigures run = readings.run(row.run);
      double x = run.stub(row.from);
      double top = bottom + BETWEEN_ROWS;
      run.coming(sketch, x, top, row.mark, row.from);
      bottom = place(row.run.to(), x, top, run.stubHeight());
    }
    return new Plate(sketch.shapes(), legend(), "Branch " + branch.name() + ": " + title, description());
  }

  private String name(int point) {
    return branch.points().get(point).box().orElse("panel " + branch.panel().orElse("?"));
  }

  /** Places a box with its upper left corner there, and all beyond it; its lower edge comes back. */
  private double place(int point, double x, double y, double least) {
    BoxFigures box = readings.box(point);
    box.lines().forEach(l -> signs.add(l.sign()));
    double right = x + box.width();
    double bottom = y + Math.max(least, box.height());
    double top = y;
    for (Section section : leaving(point)) {
      RunFigures run = readings.run(section);
      run.conductors().forEach(c -> signs.add(c.sign()));
      double next = right + run.width();
      double below;
      if (next + readings.box(section.to()).width() + onward(section.to()) > widest) {
        int mark = ++marks;
        run.leaving(sketch, right, top, mark, "to " + name(section.to()) + ", at " + mark);
        rows.addLast(new Row(section, mark, "from " + name(point)));
        below = top + run.stubHeight();
      } else {
        run.draw(sketch, right, next, top);
        below = place(section.to(), next, top, run.height());
      }
      bottom = Math.max(bottom, below);
      top = below + BETWEEN_BOXES;
    }
    box.draw(sketch, x, y, bottom - y);
    sketch.add(new Shape.Spot(x, y, box.width(), bottom - y, branch.points().get(point).box().or(branch::panel).orElse("")));
    return bottom;
  }

  private List<Section> leaving(int point) {
    return branch.sections().stream().filter(s -> s.from() == point).toList();
  }

  /** What a box needs to its right for runs that may not fit any more. */
  private double onward(int point) {
    return leaving(point).stream().mapToDouble(s -> readings.run(s).stub("to " + name(s.to()) + ", at 99")).max().orElse(0);
  }

  private Legend legend() {
    List<Legend.Item> items = new ArrayList<>();
    for (Sign sign : signs) {
      if (sign != Sign.NONE) {
        Sketch drawn = new Sketch();
        sign.draw(drawn, 0, 0);
        items.add(new Legend.Item(drawn.shapes(), Sign.WIDTH, sign.words()));
      }
    }
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    List<String> notes = new ArrayList<>(List.of(plan + ". Trial: " + title + ".", "Each conductor with its amperes and the watts that it loses in that run; each outlet with its volts and how far that is from nominal."));
    notes.addAll(result.notes());
    return new Legend(items, notes);
  }

  private String description() {
    return "Branch " + branch.name() + " box by box, with volts at each outlet, amperes and watts on each conductor. " + readings.summary();
  }
}
