package wattle.emit.view.trialpicture;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Shape;
import wattle.emit.media.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.Section;

/**
 * A row of boxes. A box is as high as all that it feeds to its right; what would come to lie beyond the width or the height
 * begins a row of its own, which is added to those that are still to be drawn.
 */
final class TrialRow {
  private static final double BETWEEN_BOXES = 14;

  private final Branch branch;
  private final BranchReadings readings;
  private final double widest;
  private final double tallest;
  private final boolean onSheets;
  private final Waiting waiting;
  private final Sketch sketch = new Sketch();
  private final Start start;
  private final double height;

  /**
   * Where a row begins.
   *
   * @param run what comes to its first box; absent for the panel
   * @param mark the number at both ends of the run; the panel's row has 0
   * @param row mark of the row that the run leaves
   */
  record Start(Optional<Section> run, int mark, int row) {}

  /** Rows that are still to be drawn, and how many runs were broken off so far. */
  static final class Waiting {
    private final Deque<Start> starts = new ArrayDeque<>(List.of(new Start(Optional.empty(), 0, 0)));
    private int marks;

    Optional<Start> next() {
      return Optional.ofNullable(starts.pollFirst());
    }
  }

  /**
   * @param onSheets whether what goes on elsewhere names the sheet
   * @param waiting rows that are still to be drawn; those that this one breaks off are added
   */
  TrialRow(Branch branch, BranchReadings readings, double widest, double tallest, boolean onSheets, Waiting waiting, Start start) {
    this.branch = branch;
    this.readings = readings;
    this.widest = widest;
    this.tallest = tallest;
    this.onSheets = onSheets;
    this.waiting = waiting;
    this.start = start;
    height = start.run().isEmpty() ? place(0, 0, 0, 0) : goOn(start.run().get());
  }

  private double goOn(Section run) {
    RunFigures figures = readings.run(run);
    Elsewhere from = new Elsewhere("from " + name(run.from()), onSheets ? piece(start.row()) : "");
    double x = figures.stub(from);
    figures.coming(sketch, x, 0, start.mark(), from);
    return place(run.to(), x, 0, figures.stubHeight());
  }

  Sketch sketch() {
    return sketch;
  }

  double height() {
    return height;
  }

  Piece piece() {
    return new Piece(piece(start.mark()), sketch.shapes());
  }

  private static String piece(int mark) {
    return "row " + mark;
  }

  private String name(int point) {
    return branch.points().get(point).box().orElse("panel " + branch.panel().orElse("?"));
  }

  private Elsewhere onward(int mark, Section run) {
    return new Elsewhere("to " + name(run.to()) + ", at " + mark, onSheets ? piece(mark) : "");
  }

  /** Places a box with its upper left corner there, and all beyond it; its lower edge comes back. */
  private double place(int point, double x, double y, double least) {
    BoxFigures box = readings.box(point);
    double right = x + box.width();
    double bottom = y + Math.max(least, box.height());
    double top = y;
    for (Section section : leaving(point)) {
      RunFigures run = readings.run(section);
      double next = right + run.width();
      double below;
      if (isTooWide(section, next) || top > 0 && top + height(section, next) > tallest) {
        int mark = ++waiting.marks;
        run.leaving(sketch, right, top, mark, onward(mark, section));
        waiting.starts.addLast(new Start(Optional.of(section), mark, start.mark()));
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

  private boolean isTooWide(Section section, double next) {
    return next + readings.box(section.to()).width() + marks(section.to()) > widest;
  }

  /** Of a box and all beyond it in this row. */
  private double height(Section run, double x) {
    BoxFigures box = readings.box(run.to());
    double top = 0;
    double height = Math.max(readings.run(run).height(), box.height());
    for (Section section : leaving(run.to())) {
      RunFigures figures = readings.run(section);
      double next = x + box.width() + figures.width();
      top += isTooWide(section, next) ? figures.stubHeight() : height(section, next);
      height = Math.max(height, top);
      top += BETWEEN_BOXES;
    }
    return height;
  }

  private List<Section> leaving(int point) {
    return branch.sections().stream().filter(s -> s.from() == point).toList();
  }

  /** What a box needs to its right for runs that may not fit any more. */
  private double marks(int point) {
    return leaving(point).stream().mapToDouble(s -> readings.run(s).stub(onward(99, s))).max().orElse(0);
  }
}
