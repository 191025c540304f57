package wattle.emit.view.branchwiring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import wattle.emit.media.drawing.Legend;
import wattle.emit.media.drawing.Piece;
import wattle.emit.media.drawing.Plate;
import wattle.emit.media.drawing.Sketch;
import wattle.emit.media.drawing.View;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;

/**
 * The wiring of a branch. Boxes stand from left to right on the way from the panel, and those of a fork under each
 * other; a box that would come to lie beyond the width begins a new row, with a mark at either end of its cable.
 */
public final class BranchWiring implements View {
  /** As wide as a screen shows well. */
  public static final double USUAL_WIDTH = 1700;

  private static final double BETWEEN_ROWS = 44;

  private final House house;
  private final Branch branch;
  private final List<BoxCard> cards;

  private BranchWiring(House house, Branch branch, Spacing spacing) {
    this.house = house;
    this.branch = branch;
    BoxReader reader = new BoxReader(house, branch);
    List<Integer> points = IntStream.range(0, branch.points().size()).boxed().toList();
    cards = points.stream().map(p -> BoxCard.of(branch, reader.read(p), spacing)).toList();
  }

  /**
   * Draws a branch in one piece.
   *
   * @param widest where rows break; a single box may be wider
   */
  public static Plate of(House house, Branch branch, double widest) {
    BranchWiring wiring = new BranchWiring(house, branch, Spacing.USUAL);
    Sketch sketch = new Sketch();
    double top = 0;
    for (BranchRow row : wiring.rows(widest, Double.MAX_VALUE, false)) {
      sketch.add(row.sketch(), 0, top - row.top());
      top += row.bottom() - row.top() + BETWEEN_ROWS;
    }
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    return new Plate(sketch.shapes(), wiring.legend(), wiring.title(), plan, Plate.NO_SCALE, wiring.description());
  }

  /** The wiring of a branch for sheets: rows of boxes, as long as a sheet is wide. */
  public static View view(House house, Branch branch) {
    return new BranchWiring(house, branch, Spacing.CLOSE);
  }

  /** The signs of the pictures of several branches. */
  public static Legend legend(House house, List<Branch> branches) {
    List<BoxCard> cards = branches.stream().flatMap(b -> new BranchWiring(house, b, Spacing.USUAL).cards.stream()).toList();
    return BranchLegend.of(branches, cards);
  }

  @Override
  public String title() {
    return "Wiring of branch " + branch.name() + branch.label().map(l -> ", " + l).orElse("");
  }

  @Override
  public Legend legend() {
    return BranchLegend.of(List.of(branch), cards);
  }

  @Override
  public String scale() {
    return Plate.NO_SCALE;
  }

  @Override
  public List<Piece> pieces(double width, double height) {
    return rows(width, height, true).stream().map(r -> new Piece(r.name(), r.sketch().shapes())).toList();
  }

  /** @param onSheets whether what goes on elsewhere names the sheet */
  private List<BranchRow> rows(double widest, double tallest, boolean onSheets) {
    List<BranchRow> rows = new ArrayList<>();
    BranchRow.Waiting waiting = new BranchRow.Waiting();
    if (!branch.points().isEmpty()) {
      waiting.begin();
    }
    for (Optional<BranchRow.Start> start = waiting.next(); start.isPresent(); start = waiting.next()) {
      BranchRow row = new BranchRow(branch, cards, widest, tallest, onSheets, waiting);
      row.draw(start.get());
      rows.add(row);
    }
    return rows;
  }

  @Override
  public String description() {
    List<String> breakers = branch.hots().stream().map(BranchHot::breaker).distinct().map(Object::toString).toList();
    List<String> boxes = branch.points().stream().flatMap(p -> p.box().stream()).toList();
    return "Branch " + branch.name() + " from " + (breakers.isEmpty() ? "no breaker" : String.join(" and ", breakers)) + " through "
        + String.join(", ", boxes) + ". Each box shows its cables with every conductor named by color and by what it does,"
        + " the wire connectors, and the terminals of its devices.";
  }
}
