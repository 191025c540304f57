package wattle.emit.branchwiring;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;
import wattle.emit.drawing.Plate;
import wattle.emit.drawing.Sketch;
import wattle.model.Branch;
import wattle.model.BranchHot;
import wattle.model.House;
import wattle.model.Section;

/**
 * The wiring of a branch. Boxes stand from left to right on the way from the panel, and those of a fork under each
 * other; a box that would come to lie beyond the width begins a new row, with a mark at either end of its cable.
 */
public final class BranchWiring {
  /** As wide as a screen shows well. */
  public static final double USUAL_WIDTH = 1700;

  private static final double BETWEEN_BOXES = 26;
  private static final double BETWEEN_ROWS = 44;
  private static final double BEND = 18;

  private final House house;
  private final Branch branch;
  private final double widest;
  private final List<BoxCard> cards;
  private final Sketch sketch = new Sketch();
  private final Deque<Row> rows = new ArrayDeque<>();
  private int marks;

  private record Row(Section cable, int mark, String from) {}

  private BranchWiring(House house, Branch branch, double widest) {
    this.house = house;
    this.branch = branch;
    this.widest = widest;
    BoxReader reader = new BoxReader(house, branch);
    List<Integer> points = IntStream.range(0, branch.points().size()).boxed().toList();
    cards = points.stream().map(p -> BoxCard.of(branch, reader.read(p))).toList();
  }

  /**
   * Draws a branch.
   *
   * @param widest where rows break; a single box may be wider
   */
  public static Plate of(House house, Branch branch, double widest) {
    return new BranchWiring(house, branch, widest).plate();
  }

  private Plate plate() {
    double bottom = branch.points().isEmpty() ? 0 : place(0, 0, 0);
    while (!rows.isEmpty()) {
      Row row = rows.removeFirst();
      int to = row.cable.to();
      double x = CableWay.stub(row.cable, row.from);
      double top = bottom + BETWEEN_ROWS;
      CableWay.coming(sketch, row.cable, x, top + cards.get(to).entry(), row.mark, row.from);
      bottom = place(to, x, top);
    }
    String title = "Wiring of branch " + branch.name() + branch.label().map(l -> ", " + l).orElse("");
    String plan = house.title().orElse("untitled plan") + house.revision().map(r -> ", revision " + r).orElse("");
    return new Plate(sketch.shapes(), BranchLegend.of(branch), title + ": " + plan, description());
  }

  private static String name(Branch branch, int point) {
    return branch.points().get(point).box().orElse("panel " + branch.panel().orElse("?"));
  }

  /** Places a box with its upper left corner there, and all boxes beyond it; their lower edge comes back. */
  private double place(int point, double x, double y) {
    BoxCard card = cards.get(point);
    sketch.add(card.sketch(), x, y);
    List<Section> cables = cards.get(point).leaving();
    double right = x + card.width();
    double gap = BEND * (cables.size() + 1) + cables.stream().mapToDouble(CableWay::words).max().orElse(0);
    double bandTop = y;
    double bottom = y + card.height();
    List<double[]> bends = new ArrayList<>();
    List<Section> bent = new ArrayList<>();
    for (int i = 0; i < cables.size(); i++) {
      Section cable = cables.get(i);
      BoxCard next = cards.get(cable.to());
      double exit = y + card.exits().get(i);
      if (right + gap + next.width() + onward(cable.to()) > widest) {
        int mark = ++marks;
        CableWay.leaving(sketch, cable, right, exit, mark, "continues at " + mark + ", to " + name(branch, cable.to()));
        rows.addLast(new Row(cable, mark, "from " + name(branch, point)));
        continue;
      }
      double top = Math.max(bandTop, exit - next.entry());
      bends.add(new double[] {exit, top + next.entry()});
      bent.add(cable);
      double below = place(cable.to(), right + gap, top);
      bottom = Math.max(bottom, below);
      bandTop = below + BETWEEN_BOXES;
    }
    // Those that go down farthest bend first, so that none crosses another.
    List<Integer> inOrder = IntStream.range(0, bent.size()).boxed().sorted(Comparator.reverseOrder()).toList();
    for (int i = 0; i < inOrder.size(); i++) {
      double[] ends = bends.get(inOrder.get(i));
      CableWay.draw(sketch, bent.get(inOrder.get(i)), right, ends[0], right + BEND * (i + 1), right + gap, ends[1]);
    }
    return bottom;
  }

  /** What a box needs to its right for the marks of cables that may not fit any more. */
  private double onward(int point) {
    return cards.get(point).leaving().stream()
        .mapToDouble(s -> CableWay.stub(s, "continues at " + 99 + ", to " + name(branch, s.to()))).max().orElse(0);
  }

  private String description() {
    List<String> breakers = branch.hots().stream().map(BranchHot::breaker).distinct().map(Object::toString).toList();
    List<String> boxes = branch.points().stream().flatMap(p -> p.box().stream()).toList();
    return "Branch " + branch.name() + " from " + (breakers.isEmpty() ? "no breaker" : String.join(" and ", breakers)) + " through "
        + String.join(", ", boxes) + ". Each box shows its cables with every conductor named by colour and by what it does,"
        + " the wire connectors, and the terminals of its devices.";
  }
}
